import type { DrillFacts, Spot } from '../../assess/card/drillFacts.ts';
import { cos, sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { placeLabels } from '../labelPlaces.ts';
import { holeItems } from './elevation.ts';
import { LANE, upLane, witness } from './lanes.ts';
import { circle, GREY, INK, path, plated, rect, SAFFRON, SIZE, text, through, WALL, WHITE } from './pen.ts';
import { scaleFor } from './scale.ts';
import { courses, tape } from './tape.ts';
import type { Reading } from './tapedWords.ts';

type Pole = Extract<Spot, { kind: 'pole' }>;

/** The post from the side with the height of the bracket, true to scale. */
export function poleElevation(
  spot: Pole,
  height: number,
  box: PageBox,
  reading: Reading,
): { readonly items: readonly PageItem[]; readonly scale: number } {
  const region: PageBox = { ...box, width: box.width - LANE };
  const scale = scaleFor([Math.max(1, 2 * spot.reach), height + 0.5], [region.width, region.height - 1]);
  const one = 1000 / scale;
  const foot = box.y + box.height - 3;
  const middle = region.x + region.width * 0.4;
  const top = foot - (height + 0.2) * one;
  const half = Math.max(0.35, (spot.diameter / 2) * one);
  const y = foot - height * one;
  const lens = middle + spot.reach * one;
  const lane: PageBox = { x: region.x + region.width, y: box.y, width: LANE, height: box.height };
  const brick = reading.courses ? ` = ${courses(height, reading.units)}` : '';
  return {
    items: [
      rect(
        { x: middle - half, y: top, width: 2 * half, height: foot - top },
        { fill: WHITE, line: INK, width: 0.4 },
      ),
      path(
        through([
          [region.x, foot],
          [region.x + region.width, foot],
        ]),
        { line: INK, width: 0.6 },
      ),
      path(
        through([
          [middle, y],
          [lens, y],
        ]),
        { line: INK, width: 0.7 },
      ),
      path(circle([lens, y], 1), { fill: WHITE, line: INK, width: 0.3 }),
      witness([lens + 1, y], [lane.x + LANE - 0.6, y]),
      ...upLane(foot, y, `${tape(height, reading.units)}${brick} above ground to the lens`, lane),
      ...holeItems([middle, y], 1.4),
    ],
    scale,
  };
}

/** Where the post stands, from above with north at the top: two corners, and which way its bracket points. */
export function polePlan(
  { spot, camera }: { readonly spot: Pole; readonly camera: DrillFacts['camera'] },
  box: PageBox,
  units: LengthUnit,
): { readonly items: readonly PageItem[]; readonly scale: number } {
  const foot: Vec2 = [spot.foot[0], spot.foot[1]];
  const rows = Math.max(1, spot.corners.length);
  const region: PageBox = { ...box, height: box.height - 3.4 * rows - 2 };
  const places = [foot, ...spot.corners.map(({ at }) => at)];
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, right, low, high] = [
    Math.min(...xs) - 1,
    Math.max(...xs) + 1,
    Math.min(...ys) - 1,
    Math.max(...ys) + 1,
  ];
  const scale = scaleFor([right - left, high - low], [region.width, region.height]);
  const one = 1000 / scale;
  const place = ([x, y]: Vec2): Vec2 => [
    region.x + region.width / 2 + (x - (left + right) / 2) * one,
    region.y + region.height / 2 - (y - (low + high) / 2) * one,
  ];
  const at = place(foot);
  const letters = ['A', 'B'] as const;
  const labels = placeLabels(
    spot.corners.map(({ at: corner }, index) => {
      const [x, y] = place(corner);
      return {
        label: letters[index] ?? '',
        places: [
          [2.6, -1.6],
          [-2.6, -1.6],
          [2.6, 2],
          [-2.6, 2],
        ].map(([dx = 0, dy = 0]) => ({ x: x + dx, y: y + dy, width: 2.6, height: 2.8, angle: 0 })),
      };
    }),
    [{ x: at[0], y: at[1], width: 5, height: 5, angle: 0 }],
    0,
  );
  const far: Vec2 = [at[0] + 9 * sin(camera.pan), at[1] - 9 * cos(camera.pan)];
  const arm: Vec2 = [at[0] + 4.5 * sin(spot.facing), at[1] - 4.5 * cos(spot.facing)];
  return {
    items: [
      ...spot.outlines.map((ring) =>
        path(through(ring.map(place), true), { fill: WALL, line: INK, width: 0.4, clip: region }),
      ),
      ...spot.corners.map(({ at: corner }) =>
        path(through([at, place(corner)]), { line: GREY, width: 0.2, dash: [1.2, 0.8] }),
      ),
      ...spot.corners.map(({ at: corner }) => path(circle(place(corner), 0.7), { fill: INK })),
      path(through([at, far]), { line: INK, width: 0.3, dash: [2, 0.8, 0.4, 0.8] }),
      path(through([at, arm]), { line: INK, width: 0.8 }),
      path(circle(at, 1.5), { fill: SAFFRON, line: INK, width: 0.35 }),
      ...labels.flatMap(({ label, place: spotAt }) =>
        plated(text(spotAt.x, spotAt.y + 0.95, label, { bold: true, anchor: 'middle' })),
      ),
      ...spot.corners.map(({ name, distance, got }, index) =>
        text(
          box.x,
          box.y + box.height - 3.4 * (rows - index) + 2.2,
          `${letters[index] ?? ''}  ${tape(distance, units)} from ${name}${got === 'measured' ? '' : ` (${got})`}`,
          { bold: true, size: SIZE.small },
        ),
      ),
      ...(spot.corners.length > 0
        ? []
        : [
            text(box.x, box.y + box.height - 1.2, 'No corner within reach of a tape: set it out by map.', {
              size: SIZE.small,
            }),
          ]),
    ],
    scale,
  };
}
