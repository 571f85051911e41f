import type { Vec2 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';
import type { Facets } from '../../src/sight/facets.ts';
import { footingOf } from '../../src/sight/footing.ts';
import { frameHalfPlanes } from '../../src/sight/frame.ts';
import type { Grid } from '../../src/sight/grid.ts';
import type { HalfPlanes } from '../../src/sight/halfPlanes.ts';
import { OwnerRows } from '../../src/sight/ownerRows.ts';
import { fillOwners, type RowSpans } from '../../src/sight/raster.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { shadowsOf } from '../../src/sight/shadows.ts';

export interface Filled {
  readonly rows: RowSpans;
  /** Index of the nearest solid or screen over each cell within the rows, or −1. */
  readonly solids: Int32Array;
  readonly screens: Int32Array;
}

/** Our way for the same question: the nearest solid and screen over each cell of a grid by shadows and row spans, no more. */
export function rowFill(facets: Facets): (camera: Camera, grid: Grid) => Filled {
  const scratch = new OwnerRows();
  const hasScreens = facets.groups.some(({ passage }) => passage === 'screen');
  let into = { solids: new Int32Array(0), screens: new Int32Array(0) };
  return (camera, grid) => {
    const cells = grid.columns * grid.rows;
    if (into.solids.length < cells)
      into = { solids: new Int32Array(cells), screens: new Int32Array(hasScreens ? cells : 0) };
    const footing = footingOf(camera.eye, grid.plane);
    const frame = frameHalfPlanes(camera, footing);
    const rows = rowSpansOf(grid, footing.foot, frame);
    const bounds = [...(frame ?? []), ...windowOf(grid, footing.foot)];
    const reach = Math.hypot(grid.columns, grid.rows) * grid.cell + Math.abs(footing.delta);
    const fill = (passage: 'solid' | 'screen', owners: Int32Array): void => {
      const shadows = shadowsOf(facets, footing, bounds, reach, passage);
      fillOwners(shadows, grid, footing.foot, rows, owners, scratch);
    };
    fill('solid', into.solids);
    if (hasScreens) fill('screen', into.screens);
    return { rows, ...into };
  };
}

/** The half-planes of a grid's own rectangle. */
function windowOf({ left, bottom, cell, columns, rows }: Grid, [a, b]: Vec2): HalfPlanes {
  return [
    [1, 0, a - left],
    [0, 1, b - bottom],
    [-1, 0, left + columns * cell - a],
    [0, -1, bottom + rows * cell - b],
  ];
}
