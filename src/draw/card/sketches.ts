import type { DrillFacts } from '../../assess/card/drillFacts.ts';
import type { Section } from '../../assess/section/section.ts';
import { cos, sin } from '../../base/angle.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { frameEdges } from '../../optics/frameEdges.ts';
import { anglesOf } from '../../optics/setting.ts';
import { placeLabels, type Wish } from '../labelPlaces.ts';
import { textWidth } from './letters.ts';
import {
  arc,
  circle,
  GREY,
  hatch,
  INK,
  OPENING,
  path,
  plated,
  SAFFRON,
  SIZE,
  text,
  through,
  WHITE,
} from './pen.ts';
import { tapeWithUnit } from './tape.ts';
import { downWords, turnedWords } from './cardWords.ts';

const STRIP = 3.4;

/**
 * How far the camera is turned, from above: the wall at the top, so that whoever stands with the back to it looks down the page
 * and has the right hand on the page's left.
 */
export function panSketch(facts: DrillFacts, box: PageBox): readonly PageItem[] {
  const { turned, camera } = facts;
  const eye: Vec2 = [box.x + box.width / 2, box.y + STRIP + 3.4];
  const long = box.height - STRIP - 6;
  const to = (angle: number, by: number): Vec2 => [eye[0] - sin(angle) * by, eye[1] + cos(angle) * by];
  const { horizontal, vertical } = anglesOf(camera);
  const across = Math.round(camera.roll / 90) % 2 === 0 ? horizontal : vertical;
  const half = Math.min(89, (across ?? 180) / 2);
  const radius = Math.min(11, long * 0.5);
  // On the page bearings run clockwise from straight right; down the page is 90.
  const drawn = 90 + turned;
  const label = turnedWords(turned);
  const wide = textWidth(label, SIZE.body, true);
  const middle = turned / 2;
  const spots: Vec2[] = [
    to(middle, radius + 4.5),
    to(middle, radius + 8),
    to(turned >= 0 ? -14 : 14, radius + 6),
    [box.x + wide / 2 + 0.5, box.y + box.height - 2.4],
    [box.x + box.width - wide / 2 - 0.5, box.y + box.height - 2.4],
  ];
  return [
    path(
      `${through([eye, to(turned - half, long)])}A${long} ${long} 0 0 1 ${to(turned + half, long).join(' ')}Z`,
      { fill: OPENING, clip: { ...box, y: box.y + STRIP, height: box.height - STRIP } },
    ),
    ...backItems(facts, box, eye),
    path(through([eye, to(0, long)]), { line: INK, width: 0.25, dash: [0.5, 0.7] }),
    path(through([eye, to(turned, Math.min(long, reachIn(box, eye, to(turned, 1))))]), {
      line: INK,
      width: 0.6,
    }),
    path(arc(eye, radius, 90, drawn), { line: INK, width: 0.25 }),
    path(circle(eye, 1.5), { fill: SAFFRON, line: INK, width: 0.35 }),
    ...placed(label, spots, box, [{ at: eye, size: 4 }]),
  ];
}

/** How far a way from a place stays in a box. */
function reachIn(box: PageBox, [x, y]: Vec2, [nx, ny]: Vec2): number {
  const [dx, dy] = [nx - x, ny - y];
  const side = dx > 0 ? (box.x + box.width - x) / dx : dx < 0 ? (box.x - x) / dx : Infinity;
  const ends = dy > 0 ? (box.y + box.height - y) / dy : dy < 0 ? (box.y - y) / dy : Infinity;
  return Math.max(0, Math.min(side, ends));
}

/** What the camera is fixed to, from above. */
function backItems({ spot }: DrillFacts, box: PageBox, eye: Vec2): readonly PageItem[] {
  if (spot.kind === 'pole')
    return [
      path(circle([eye[0], eye[1] - 3.4], 1.6), { fill: WHITE, line: INK, width: 0.4 }),
      path(through([[eye[0], eye[1] - 1.8], eye]), { line: INK, width: 0.5 }),
    ];
  if (spot.kind === 'corner') {
    // Two walls that meet in a point towards the viewer.
    const foot = eye[1] - 1.6;
    const side = box.width / 2 - 2;
    return [
      path(
        through([
          [eye[0] - side, box.y],
          [eye[0], foot],
          [eye[0] + side, box.y],
        ]),
        { line: INK, width: 0.6 },
      ),
    ];
  }
  // Under a canopy there is no wall to stand against.
  if (spot.kind === 'soffit' && spot.under === 'canopy') return [];
  const strip: PageBox = { x: box.x, y: box.y, width: box.width, height: STRIP };
  return [
    hatch(strip),
    path(
      through([
        [box.x, box.y + STRIP],
        [box.x + box.width, box.y + STRIP],
      ]),
      { line: INK, width: 0.5 },
    ),
  ];
}

/** How far the camera looks down, from the side: the wall on the left. */
export function tiltSketch(
  facts: DrillFacts,
  section: Section | null,
  box: PageBox,
  units: LengthUnit,
): readonly PageItem[] {
  const { camera, spot, lens } = facts;
  const foot = box.y + box.height - 4.4;
  const eye: Vec2 = [box.x + STRIP + 4.5, box.y + 4];
  const one = (foot - eye[1]) / Math.max(0.5, lens.height);
  const edges = frameEdges(camera);
  const clip: PageBox = { ...box, height: foot - box.y };
  const ray = (down: number, by: number): Vec2 => [eye[0] + cos(down) * by, eye[1] + sin(down) * by];
  const far = 200;
  const right = box.x + box.width;
  const radius = Math.min(15, (right - eye[0]) * 0.4);
  const near = section?.lines.find(({ target }) => target.height === 0)?.nearest ?? null;
  const nearX = near === null ? null : eye[0] + near * one;
  const label = downWords(camera.tilt);
  const spots: Vec2[] = [
    [eye[0] + radius + 7.5, eye[1] + sin(camera.tilt / 2) * (radius + 4) + 0.9],
    ray(camera.tilt / 2, radius + 9),
    [right - textWidth(label, SIZE.body, true) / 2 - 0.5, box.y + 1.6],
  ];
  return [
    path(through([eye, ray(edges.top, far), ray(edges.bottom, far)], true), { fill: OPENING, clip }),
    ...sideItems(spot, box, foot, eye),
    path(
      through([
        [box.x, foot],
        [right, foot],
      ]),
      { line: INK, width: 0.6 },
    ),
    path(through([eye, ray(0, far)]), { line: INK, width: 0.25, dash: [0.5, 0.7], clip }),
    path(through([eye, ray(camera.tilt, far)]), { line: INK, width: 0.4, dash: [2, 0.8, 0.4, 0.8], clip }),
    path(arc(eye, radius, 0, camera.tilt), { line: INK, width: 0.25, clip }),
    path(circle(eye, 1.5), { fill: SAFFRON, line: INK, width: 0.35 }),
    ...placed(label, spots, box, [{ at: eye, size: 4 }]),
    ...(near === null
      ? []
      : [
          ...(nearX !== null && nearX < right
            ? [
                path(
                  through([
                    [eye[0], foot + 0.9],
                    [nearX, foot + 0.9],
                  ]) +
                    through([
                      [nearX, foot],
                      [nearX, foot + 1.8],
                    ]),
                  { line: INK, width: 0.25 },
                ),
              ]
            : []),
          text(box.x, box.y + box.height - 0.7, `Nothing seen nearer than ${tapeWithUnit(near, units)}`, {
            size: SIZE.small,
            ink: GREY,
          }),
        ]),
  ];
}

/** What the camera is fixed to, from the side: a wall or a post on the left, or a board above. */
function sideItems(spot: DrillFacts['spot'], box: PageBox, foot: number, eye: Vec2): readonly PageItem[] {
  const side = box.x + STRIP;
  const isUnder = spot.kind === 'soffit';
  const board = box.y + 0.4;
  const upright = path(
    through([
      [side, box.y],
      [side, foot],
    ]),
    { line: INK, width: spot.kind === 'pole' ? 1.2 : 0.5 },
  );
  return [
    ...(spot.kind === 'pole' || (isUnder && spot.under === 'canopy')
      ? []
      : [hatch({ x: box.x, y: box.y, width: STRIP, height: foot - box.y })]),
    ...(isUnder && spot.under === 'canopy' ? [] : [upright]),
    ...(isUnder
      ? [
          path(
            through([
              [side, board],
              [eye[0] + 4, board],
            ]),
            { line: INK, width: 0.5 },
          ),
          path(through([[eye[0], board], eye]), { line: INK, width: 0.5 }),
        ]
      : [path(through([[side, eye[1]], eye]), { line: INK, width: 0.5 })]),
  ];
}

/** A label at the first of its places that is free and within the box; at the last, moved in, where none is. */
function placed(
  label: string,
  spots: readonly Vec2[],
  box: PageBox,
  taken: readonly { readonly at: Vec2; readonly size: number }[],
): readonly PageItem[] {
  const width = textWidth(label, SIZE.body, true);
  const plates = spots
    .filter(
      ([x, y]) =>
        x - width / 2 >= box.x &&
        x + width / 2 <= box.x + box.width &&
        y - 2 >= box.y &&
        y + 1 <= box.y + box.height,
    )
    .map(([x, y]) => ({ x, y: y - 1, width: width + 0.8, height: 3, angle: 0 }));
  const wish: Wish<string> = { label, places: plates };
  const [found] = placeLabels(
    [wish],
    taken.map(({ at: [x, y], size }) => ({ x, y, width: size, height: size, angle: 0 })),
    0.3,
  );
  const at = found?.place ?? { x: box.x + width / 2, y: box.y + box.height - 3 };
  return plated(text(at.x, at.y + 1, label, { bold: true, anchor: 'middle' }));
}
