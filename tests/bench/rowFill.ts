import type { Vec2 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';
import type { Facets } from '../../src/sight/facets.ts';
import { footingOf } from '../../src/sight/footing.ts';
import { frameHalfPlanes } from '../../src/sight/frame.ts';
import type { Grid } from '../../src/sight/grid.ts';
import type { HalfPlanes } from '../../src/sight/halfPlanes.ts';
import {
  clearNearest,
  fillNearest,
  nothingNearest,
  type Nearest,
  type RowSpans,
} from '../../src/sight/raster.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { shadowsOf } from '../../src/sight/shadows.ts';

export interface Filled {
  readonly rows: RowSpans;
  readonly solids: Nearest;
  readonly screens: Nearest;
}

/** Our way for the same question: the nearest solid and screen over each cell of a grid by shadows and row spans, no more. */
export function rowFill(facets: Facets): (camera: Camera, grid: Grid) => Filled {
  let into = { solids: nothingNearest(0), screens: nothingNearest(0) };
  const hasScreens = facets.groups.some(({ passage }) => passage === 'screen');
  return (camera, grid) => {
    const cells = grid.columns * grid.rows;
    if (into.solids.solid.length < cells)
      into = { solids: nothingNearest(cells), screens: nothingNearest(hasScreens ? cells : 0) };
    const footing = footingOf(camera.eye, grid.plane);
    const frame = frameHalfPlanes(camera, footing);
    const rows = rowSpansOf(grid, footing.foot, frame);
    const window = windowOf(grid, footing.foot);
    const reach = Math.hypot(grid.columns, grid.rows) * grid.cell + Math.abs(footing.delta);
    const bounds = [...(frame ?? []), ...window];
    const fill = (passage: 'solid' | 'screen', nearest: Nearest): void => {
      clearNearest(nearest);
      fillNearest(shadowsOf(facets, footing, bounds, reach, passage), grid, footing.foot, rows, nearest);
    };
    fill('solid', into.solids);
    if (hasScreens) fill('screen', into.screens);
    return { rows, ...into };
  };
}

/** The half-planes of a grid's own rectangle. */
export function windowOf({ left, bottom, cell, columns, rows }: Grid, [a, b]: Vec2): HalfPlanes {
  return [
    [1, 0, a - left],
    [0, 1, b - bottom],
    [-1, 0, left + columns * cell - a],
    [0, -1, bottom + rows * cell - b],
  ];
}
