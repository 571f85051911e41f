import type { Vec2 } from '../base/vector.ts';
import { less, type Area } from '../coverage/area.ts';
import { cutArea, cutTriangles } from '../coverage/cut.ts';
import { insideMask, ringMask } from '../coverage/mask.ts';
import { boardGrid } from '../coverage/boardGrid.ts';
import type { Within } from '../coverage/areas.ts';
import { INSIDE, OUT_OF_FRAME } from '../coverage/state.ts';
import { areaOf, tally } from '../coverage/tally.ts';
import { convexParts } from '../sight/convexParts.ts';
import type { Solid } from '../model/solid.ts';
import { facetsOf, type Facets } from '../sight/facets.ts';
import type { Grid } from '../sight/grid.ts';
import { ringArea } from '../sight/rings.ts';
import { horizontalPlane, type TargetPlane } from '../sight/plane.ts';
import { Segments } from '../sight/segment.ts';
import type { Window } from '../sight/sight.ts';
import { treeOf } from '../sight/tree.ts';
import type { Board, Scene } from './scene.ts';

/** What all cameras of a scene share for one target surface. */
export interface Ground {
  readonly plane: TargetPlane;
  readonly grid: Grid;
  readonly window: Window;
  /** The state of each cell before any camera looks. */
  readonly bare: Uint8Array;
  /** 1 on open ground that counts, and the area of that. */
  readonly counted: Uint8Array;
  readonly open: Area;
  readonly within: Within;
}

/** Facets of a scene and rays over them, each laid out when first asked for: a town without a camera needs neither. */
export class Obstacles {
  private readonly solids: readonly Solid[];
  private laidOut: Facets | null = null;
  private rays: Segments | null = null;
  /** How many there are. */
  readonly triangles: number;

  constructor(solids: readonly Solid[]) {
    this.solids = solids;
    this.triangles = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  }

  get facets(): Facets {
    this.laidOut ??= facetsOf(this.solids);
    return this.laidOut;
  }

  get segments(): Segments {
    this.rays ??= new Segments(this.facets, treeOf(this.facets));
    return this.rays;
  }
}

/** Above so many triangles in the cut of the plane, what lies inside solids is counted from cells. */
const MOST_CUT = 4000;

/** The target surface of a scene: cells, what of it lies inside solids, and where areas are counted. */
export function groundOf(scene: Scene, height: number, cell?: number): Ground {
  const plane = horizontalPlane(scene.ground + height);
  const grid = boardGrid(plane, scene.board, cell);
  const window = corners(scene.board);
  const cells = grid.columns * grid.rows;
  const inside = insideMask(scene.solids, grid);
  const mask = scene.boundary === null ? new Uint8Array(cells).fill(1) : ringMask(scene.boundary, grid);
  const byInside = tally(grid, inside, mask, 2);
  const parts = scene.boundary === null ? [window] : convexParts(scene.boundary);
  const exact = cutTriangles(scene.solids, plane.origin[2], MOST_CUT);
  const total = exactArea(scene.boundary ?? window);
  const covered = exact === null ? areaOf(byInside, 1, grid) : cutArea(exact, parts);
  return {
    plane,
    grid,
    window,
    bare: inside.map((within) => (within === 1 ? INSIDE : OUT_OF_FRAME)),
    counted: mask.map((within, cell) => (within === 1 && inside[cell] !== 1 ? 1 : 0)),
    open: less(total, covered),
    within: {
      mask,
      total,
      inside: covered,
      cut: exact,
      parts,
      whole: scene.boundary === null,
    },
  };
}

const exactArea = (ring: readonly Vec2[]): Area => ({
  value: Math.abs(ringArea(Float64Array.from(ring.flat()))),
  bound: 0,
  how: 'exact',
});

const corners = ({ left, bottom, right, top }: Board): Window => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
