import { insideMask, ringMask } from '../coverage/mask.ts';
import { boardGrid } from '../coverage/boardGrid.ts';
import type { Within } from '../coverage/areas.ts';
import { convexParts } from '../sight/convexParts.ts';
import { facetsOf, type Facets } from '../sight/facets.ts';
import type { Grid } from '../sight/grid.ts';
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
  readonly inside: Uint8Array;
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
  const total = grid.columns * grid.rows;
  return {
    plane,
    grid,
    window,
    inside: insideMask(scene.solids, grid),
    within: {
      mask: scene.boundary === null ? new Uint8Array(total).fill(1) : ringMask(scene.boundary, grid),
      parts: scene.boundary === null ? [window] : convexParts(scene.boundary),
      whole: scene.boundary === null,
    },
  };
}

const corners = ({ left, bottom, right, top }: Board): Window => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
