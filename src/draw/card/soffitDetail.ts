import type { Spot } from '../../assess/card/drillFacts.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { holeItems } from './elevation.ts';
import { LANE, upLane, witness } from './lanes.ts';
import { GREY, hatch, INK, path, rect, SIZE, text, through, WALL, WHITE } from './pen.ts';
import { scaleFor } from './scale.ts';
import { tape } from './tape.ts';

/** So much of the soffit is drawn to either side of the hole, m. */
const BESIDE = 0.3;
/** Thickness of the wall's strip on paper, mm. */
const STRIP = 3;

/**
 * The soffit from above, as a map with the wall at its upper edge: left and right are those of whoever faces the wall. Under a
 * canopy it is the edge that one stands before, which is then at the foot.
 */
export function soffitDetail(
  { inset, beyond, plate, under }: Extract<Spot, { kind: 'soffit' }>,
  box: PageBox,
  units: LengthUnit,
): { readonly items: readonly PageItem[]; readonly scale: number } {
  const isCanopy = under === 'canopy';
  const depth = inset + beyond;
  const region: PageBox = {
    x: box.x,
    y: box.y + STRIP,
    width: box.width - 2 * LANE,
    height: box.height - STRIP - 4.2,
  };
  const scale = scaleFor([2 * BESIDE, depth + 0.02], [region.width, region.height]);
  const one = 1000 / scale;
  const top = region.y;
  const bottom = top + depth * one;
  const half = Math.min(region.width / 2, BESIDE * one * 1.6);
  const middle = region.x + region.width / 2;
  const [x0, x1] = [middle - half, middle + half];
  // From the wall downwards; a canopy's edge is at the foot, and insets count from there.
  const y = isCanopy ? bottom - inset * one : top + inset * one;
  const hole: Vec2 = [middle, y];
  // A plate's own up runs outwards from the wall, which is down this page; under a canopy in from its edge, which is up.
  const up = isCanopy ? -plate.up : plate.up;
  const plateAt = {
    x: middle + (plate.right - plate.width / 2) * one,
    y: y + (up - plate.height / 2) * one,
    width: plate.width * one,
    height: plate.height * one,
  };
  const strip: PageBox = { x: x0, y: box.y, width: x1 - x0, height: STRIP };
  const lane = (row: number): PageBox => ({
    x: region.x + region.width + row * LANE,
    y: box.y,
    width: LANE,
    height: box.height - 4.2,
  });
  const [wall, edge] = isCanopy
    ? ['far edge', 'this edge']
    : ['wall', under === 'ceiling' ? 'far side' : 'outer edge'];
  const fromWall = isCanopy ? beyond : inset;
  const fromEdge = isCanopy ? inset : beyond;
  const end = (row: number): number => lane(row).x + LANE - 0.6;
  return {
    items: [
      rect({ x: x0, y: top, width: x1 - x0, height: bottom - top }, { fill: WALL, line: INK, width: 0.3 }),
      ...(isCanopy ? [] : [rect(strip, { fill: WHITE, line: INK, width: 0.35 }), hatch(strip)]),
      path(
        through([
          [x0, bottom],
          [x1, bottom],
        ]),
        { line: INK, width: 0.5 },
      ),
      rect(plateAt, { fill: WHITE, line: INK, width: 0.3, clip: { ...region, height: region.height + 2 } }),
      witness([x1, top], [end(0), top]),
      witness(hole, [end(1), y]),
      witness([x1, bottom], [end(1), bottom]),
      ...upLane(top, y, `${tape(fromWall, units)} from ${wall}`, lane(0)),
      ...upLane(bottom, y, `${tape(fromEdge, units)} from ${edge}`, lane(1)),
      ...holeItems(hole, 1.3),
      text(box.x, box.y + box.height - 0.6, isCanopy ? 'Edge at the foot' : 'Wall at the top, left is left', {
        size: SIZE.small,
        ink: GREY,
      }),
    ],
    scale,
  };
}
