import type { Vec2 } from '../base/vector.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import { less, NO_AREA, plus, type Area } from '../coverage/area.ts';
import { countedGround, insideBetween } from '../coverage/countedGround.ts';
import { cutArea, cutTriangles } from '../coverage/cut.ts';
import { insideMask, ringsMask } from '../coverage/mask.ts';
import { boardGrid, cellFor, FINE_CELL } from '../coverage/boardGrid.ts';
import type { LitGround } from '../coverage/litGround.ts';
import type { Within } from '../coverage/within.ts';
import { INSIDE, OUT_OF_FRAME } from '../coverage/state.ts';
import type { UnevenGround } from '../coverage/unevenGround.ts';
import { convexParts } from '../sight/convexParts.ts';
import type { Solid } from '../model/solid.ts';
import type { FlatSurface } from '../model/surface.ts';
import { facetsOf, type Facets } from '../sight/facets.ts';
import type { Grid } from '../sight/grid.ts';
import { ringArea } from '../sight/rings.ts';
import { horizontalPlane, type Plane } from '../base/plane.ts';
import { Segments } from '../sight/segment.ts';
import type { Window } from '../sight/sight.ts';
import { treeOf } from '../sight/tree.ts';
import type { Board, Scene } from './scene.ts';

/** What all cameras of a scene share for one target surface. */
export interface Ground {
  readonly plane: Plane;
  /** The level plane that rays end on in the picture: of a wall or a slope the ground below it. */
  readonly floor: Plane;
  readonly grid: Grid;
  readonly window: Window;
  /** Targets over uneven ground, of whose plane only x and y count; null on a flat surface. */
  readonly uneven: UnevenGround | null;
  /** The state of each cell before any camera looks. */
  readonly bare: Uint8Array;
  /** 1 on open ground that counts, and the area of that. */
  readonly counted: Uint8Array;
  readonly open: Area;
  readonly within: Within;
  /** What lights it at night; null by day. */
  readonly lit: LitGround | null;
}

/** Facets of a scene and rays over them, each laid out when first asked for: a town without a camera needs neither. */
export class Obstacles {
  private readonly solids: readonly Solid[];
  private readonly closing: number | undefined;
  private laidOut: Facets | null = null;
  private rays: Segments | null = null;
  /** How many there are. */
  readonly triangles: number;

  /** @param closing angle to its face below which a screen closes up, ° */
  constructor(solids: readonly Solid[], closing?: number) {
    this.solids = solids;
    this.closing = closing;
    this.triangles = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  }

  get facets(): Facets {
    this.laidOut ??= facetsOf(this.solids, this.closing);
    return this.laidOut;
  }

  get segments(): Segments {
    this.rays ??= new Segments(this.facets, treeOf(this.facets));
    return this.rays;
  }
}

/** Above so many triangles in the cut of the plane, what lies inside solids is told between bounds. */
const MOST_CUT = 4000;

/** A level target surface of a scene: cells, what of it lies inside solids, and where areas are counted. */
export function groundOf(scene: Scene, height: number, cell?: number): Ground {
  const plane = horizontalPlane(scene.ground + height);
  const floor = plane;
  const rings = scene.boundary === null ? null : [scene.boundary];
  return laidOut(scene.solids, { plane, floor, board: scene.board, rings, above: 0 }, cell);
}

/** The same of a wall, a roof face or a patch. */
export function surfaceGround(
  { solids, ground }: Pick<Scene, 'solids' | 'ground'>,
  { plane, rings }: FlatSurface,
  cell = surfaceCell(boardAround(rings)),
): Ground {
  const floor = horizontalPlane(ground);
  return laidOut(solids, { plane, floor, board: boardAround(rings), rings, above: SAME_POINT }, cell);
}

interface Sheet {
  readonly plane: Plane;
  readonly floor: Plane;
  readonly board: Board;
  /** Where areas are counted; null: the whole board. */
  readonly rings: readonly (readonly Vec2[])[] | null;
  /** How far above the plane it is asked what lies inside solids, m. */
  readonly above: number;
}

function laidOut(
  solids: readonly Solid[],
  { plane, floor, board, rings, above }: Sheet,
  cell?: number,
): Ground {
  const grid = boardGrid(plane, board, cell);
  const window = boardCorners(board);
  const inside = insideMask(solids, grid, above);
  const mask = ringsMask(rings ?? [window], grid);
  const parts = rings?.flatMap(convexParts) ?? [window];
  const exact = cutTriangles(solids, plane, above, MOST_CUT);
  const total = ringsArea(rings ?? [window]);
  const covered =
    exact === null
      ? insideBetween(solids, plane, countedGround(parts, rings === null))
      : cutArea(exact, parts);
  const bare = new Uint8Array(inside.length);
  const counted = new Uint8Array(inside.length);
  for (let cell = 0; cell < inside.length; cell += 1) {
    const within = inside[cell] === 1;
    bare[cell] = within ? INSIDE : OUT_OF_FRAME;
    counted[cell] = mask[cell] === 1 && !within ? 1 : 0;
  }
  return {
    plane,
    floor,
    lit: null,
    uneven: null,
    grid,
    window,
    bare,
    counted,
    open: less(total, covered),
    within: {
      mask,
      total,
      inside: covered,
      cut: exact,
      glazed: cutTriangles(solids.filter(isGlass), plane, above, MOST_CUT) ?? new Float64Array(0),
      parts,
      whole: rings === null,
    },
  };
}

const isGlass = ({ passage }: Solid): boolean => passage === 'clear';

/** Cells of a wall are finer than those of the ground, m. */
const SURFACE_CELL = 0.05;

const surfaceCell = ({ left, bottom, right, top }: Board): number => {
  const fair = cellFor(right - left, top - bottom);
  return fair > FINE_CELL ? fair : SURFACE_CELL;
};

/** The rectangle around rings of a plane, in its coordinates. */
export function boardAround(rings: readonly (readonly Vec2[])[]): Board {
  const [all, most] = [rings.flat(), (sum: number, one: number) => Math.max(sum, one)];
  const least = (sum: number, one: number) => Math.min(sum, one);
  return {
    left: all.map(([a]) => a).reduce(least, Infinity),
    bottom: all.map(([, b]) => b).reduce(least, Infinity),
    right: all.map(([a]) => a).reduce(most, -Infinity),
    top: all.map(([, b]) => b).reduce(most, -Infinity),
  };
}

/** The area of rings that do not overlap. */
export const ringsArea = (rings: readonly (readonly Vec2[])[]): Area =>
  rings.map(exactArea).reduce(plus, NO_AREA);

const exactArea = (ring: readonly Vec2[]): Area => ({
  value: Math.abs(ringArea(Float64Array.from(ring.flat()))),
  bound: 0,
  how: 'exact',
});

/** The corners of a board, counter-clockwise. */
export const boardCorners = ({ left, bottom, right, top }: Board): Window => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
