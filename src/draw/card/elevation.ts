import type { OnWall, Spot } from '../../assess/card/drillFacts.ts';
import type { Taped } from '../../assess/card/taped.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { acrossLane, LANE, upLane, witness } from './lanes.ts';
import { circle, INK, path, rect, SAFFRON, through } from './pen.ts';
import { scaleFor } from './scale.ts';
import { tapedWords, type Reading } from './tapedWords.ts';
import { wallItems, wallLabels } from './wallItems.ts';

/** What an elevation came to. */
export interface Elevation {
  readonly items: readonly PageItem[];
  /** 1 to so much. */
  readonly scale: number;
  /** Whether the wall goes on beyond what is drawn. */
  readonly isPart: boolean;
  /** What the letters beside points on the wall mean: "S1 Socket, inside". */
  readonly legend: readonly string[];
}

/** A wall beside others on one drawing: its x begins at `offset`. */
export interface WallPart {
  readonly wall: OnWall;
  readonly offset: number;
}

/** The walls of a spot, unfolded, with hole and dimensions in their common frame. */
interface Unfolded {
  readonly parts: readonly WallPart[];
  readonly hole: Vec2;
  readonly taped: readonly Taped[];
  readonly ground: number;
}

/** So much is drawn of a roof above the top of its wall, m: less where the wall can then be larger. */
const ROOF_SHOWN = [1.1, 0.6, 0.25] as const;
/** Below the ground and beside what is drawn, m. */
const MARGIN = 0.2;
/** A wall that would be drawn smaller than this is drawn in part. */
const SMALLEST = 100;

export function unfolded(spot: Extract<Spot, { kind: 'wall' | 'soffit' | 'corner' }>): Unfolded {
  if (spot.kind !== 'corner') {
    const { wall } = spot;
    return {
      parts: [{ wall, offset: 0 }],
      hole: wall.hole,
      taped: wall.taped,
      ground: wall.groundAtHole,
    };
  }
  const [left, right] = spot.walls;
  const offset = left.view.width;
  return {
    parts: [
      { wall: left, offset: 0 },
      { wall: right, offset },
    ],
    hole: [offset, right.hole[1]],
    taped: right.taped
      .filter(({ axis }) => axis === 'up')
      .map((one) => ({
        ...one,
        from: one.from + offset,
        to: one.to + offset,
      })),
    ground: right.groundAtHole,
  };
}

/** The wall seen square on from outside, true to scale, with the hole taped from two edges each way. */
export function elevation(
  spot: Extract<Spot, { kind: 'wall' | 'soffit' | 'corner' }>,
  box: PageBox,
  reading: Reading,
): Elevation {
  const all = unfolded(spot);
  const { parts, hole, taped } = all;
  const [across, up] = [
    taped.filter(({ axis }) => axis === 'across'),
    taped.filter(({ axis }) => axis === 'up'),
  ];
  const room: PageBox = {
    ...box,
    width: box.width - up.length * LANE,
    height: box.height - across.length * LANE,
  };
  const views = ROOF_SHOWN.map((roof) => shownOf(all, extentOf(all, roof), room));
  const extent = views.reduce((best, one) => (one.scale < best.scale ? one : best));
  const lanesLeft = hole[0] < (extent.left + extent.right) / 2;
  const region: PageBox = { ...room, x: lanesLeft ? box.x + up.length * LANE : box.x };
  const { scale } = extent;
  const blank = region.height - ((extent.top - extent.bottom) * 1000) / scale;
  const foot = region.y + region.height - Math.max(0, blank) / 2;
  const place = ([x, y]: Vec2): Vec2 => [
    region.x + region.width / 2 + ((x - extent.middle) * 1000) / scale,
    foot - ((y - extent.bottom) * 1000) / scale,
  ];
  const at = place(hole);
  const plate = plateBox(spot.plate, spot.kind === 'wall' ? at : null, scale);
  const labels = wallLabels(parts, place, region, hole);
  // Lanes lie as near to the drawing as they can.
  const below = Math.min(region.y + region.height, place([0, extent.bottom])[1] + 0.5);
  const beside = lanesLeft
    ? Math.max(region.x, place([extent.left, 0])[0] - 1)
    : Math.min(region.x + region.width, place([extent.right, 0])[0] + 1);
  // Words of a lane below keep off the lanes at the side.
  const [from, to] = lanesLeft ? [beside + 1, box.x + box.width] : [box.x, beside - 1];
  const beneath = { x: from, width: to - from, height: LANE };
  const lanes = [
    ...across.flatMap((one, row) => {
      const lane: PageBox = { ...beneath, y: below + row * LANE };
      const edge = place([one.at, 0])[0];
      return [
        witness(
          [edge, place([0, Math.min(one.to, Math.max(one.from, hole[1]))])[1]],
          [edge, lane.y + LANE - 0.6],
        ),
        witness(at, [at[0], lane.y + LANE - 0.6]),
        ...acrossLane(edge, at[0], tapedWords(one, reading), lane),
      ];
    }),
    ...up.flatMap((one, row) => {
      const x = lanesLeft ? beside - (row + 1) * LANE : beside + row * LANE;
      const lane: PageBox = { x, y: box.y, width: LANE, height: box.height };
      const edge = place([0, one.at])[1];
      const to = x + LANE - 0.6;
      const near = place([Math.min(one.to, Math.max(one.from, hole[0])), 0])[0];
      return [
        witness([near, edge], [to, edge]),
        witness(at, [to, at[1]]),
        ...upLane(edge, at[1], tapedWords(one, reading), lane),
      ];
    }),
  ];
  return {
    items: [
      ...wallItems(parts, place, region, extent),
      ...lanes,
      ...(plate === null ? [] : [rect(plate, { line: INK, width: 0.2, fill: '#FFFFFF' })]),
      ...holeItems(at),
      ...labels.items,
    ],
    scale,
    isPart: extent.isPart,
    legend: labels.legend,
  };
}

/** The plate where it lies on the wall, to scale; seen from outside. */
function plateBox(
  { width, height, right, up }: { width: number; height: number; right: number; up: number },
  at: Vec2 | null,
  scale: number,
): PageBox | null {
  if (at === null) return null;
  const one = 1000 / scale;
  return {
    x: at[0] + (right - width / 2) * one,
    y: at[1] - (up + height / 2) * one,
    width: width * one,
    height: height * one,
  };
}

/** The hole: a saffron disc with a cross, the one mark that is coloured. */
export const holeItems = ([x, y]: Vec2, radius = 1.7): readonly PageItem[] => [
  path(circle([x, y], radius), { fill: SAFFRON, line: INK, width: 0.35 }),
  path(
    through([
      [x - radius * 1.9, y],
      [x + radius * 1.9, y],
    ]) +
      through([
        [x, y - radius * 1.9],
        [x, y + radius * 1.9],
      ]),
    { line: INK, width: 0.25 },
  ),
];

interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function extentOf({ parts, hole, ground }: Unfolded, roofShown: number): Extent {
  const walls = parts.map(({ wall: { view }, offset }) => ({
    left: offset,
    right: offset + view.width,
    top: view.topLine.reduce((most, [, y]) => Math.max(most, y), view.foot),
    roof: view.roof.flat(),
    offset,
  }));
  const top = Math.max(hole[1] + 0.15, ...walls.map((wall) => wall.top));
  const roof = walls.flatMap((wall) => wall.roof.map(([x, y]): Vec2 => [x + wall.offset, y]));
  const grounds = parts.flatMap(({ wall }) => wall.ground.map(([, y]) => y));
  // Of a corner each wall shows its own half of the roof only.
  const isOne = parts.length === 1;
  return {
    left: Math.min(...walls.map(({ left }) => left), ...(isOne ? roof.map(([x]) => x) : [])) - MARGIN,
    right: Math.max(...walls.map(({ right }) => right), ...(isOne ? roof.map(([x]) => x) : [])) + MARGIN,
    bottom: Math.min(ground, ...grounds) - MARGIN,
    top: Math.min(Math.max(top, ...roof.map(([, y]) => y)), top + roofShown) + 0.1,
  };
}

/** What of the walls is drawn, and how large. */
export interface Shown extends Extent {
  readonly middle: number;
  readonly scale: number;
  readonly isPart: boolean;
}

function shownOf({ taped, hole }: Unfolded, extent: Extent, region: PageBox): Shown {
  const high = extent.top - extent.bottom;
  const room = [region.width, region.height] as const;
  const whole = scaleFor([extent.right - extent.left, high], room);
  if (whole <= SMALLEST)
    return { ...extent, middle: (extent.left + extent.right) / 2, scale: whole, isPart: false };
  // A long wall: around the hole, with every edge that is taped from.
  const needed = taped.flatMap(({ axis, at, from, to }) =>
    axis === 'across' ? [at] : [Math.min(to, Math.max(from, hole[0]))],
  );
  const [least, most] = [Math.min(hole[0], ...needed) - 0.6, Math.max(hole[0], ...needed) + 0.6];
  const scale = Math.max(scaleFor([most - least, high], room), SMALLEST);
  if (scale >= whole)
    return { ...extent, middle: (extent.left + extent.right) / 2, scale: whole, isPart: false };
  const half = (region.width * scale) / 2000;
  const middle = Math.max(extent.left + half, Math.min(extent.right - half, (least + most) / 2));
  return {
    ...extent,
    left: Math.max(extent.left, middle - half),
    right: Math.min(extent.right, middle + half),
    middle,
    scale,
    isPart: true,
  };
}
