import type { Vec2 } from '../base/vector.ts';
import { less, type Area } from '../coverage/area.ts';
import { cutArea, cutTriangles } from '../coverage/cut.ts';
import { insideMask, ringMask } from '../coverage/mask.ts';
import { boardGrid } from '../coverage/boardGrid.ts';
import type { Within } from '../coverage/areas.ts';
import { INSIDE, OUT_OF_FRAME } from '../coverage/state.ts';
import { areaOf, tally } from '../coverage/tally.ts';
import { convexParts } from '../sight/convexParts.ts';
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

/** Facets of a scene and rays over them. */
export interface Obstacles {
  readonly facets: Facets;
  readonly segments: Segments;
}

export function obstaclesOf({ solids }: Pick<Scene, 'solids'>): Obstacles {
  const facets = facetsOf(solids);
  return { facets, segments: new Segments(facets, treeOf(facets)) };
}

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
  const cut = cutTriangles(scene.solids, plane.origin[2]);
  const total = exactArea(scene.boundary ?? window);
  const covered = cut === null ? areaOf(byInside, 1, grid) : cutArea(cut, parts);
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
      cut,
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
