import type { Camera } from '../optics/camera.ts';
import type { Footing } from '../sight/footing.ts';
import { frameAngle, sureHalfPlanes } from '../sight/frame.ts';
import type { Grid } from '../sight/grid.ts';
import type { RowSpans } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';

/** The columns of each row that are sure to lie in a bent frame: what lies between them and its ends has to be asked. */
export interface SureRows {
  /** Two numbers a row; first > last where none. */
  readonly spans: RowSpans;
  /** The greatest angle off the axis in the frame, rad. */
  readonly angleRad: number;
}

/** Null for a rectilinear frame, to which rows are cut. */
export function sureRows(camera: Camera, footing: Footing, grid: Grid): SureRows | null {
  if (camera.k === 1) return null;
  const spans = rowSpansOf(grid, footing.foot, sureHalfPlanes(camera, footing));
  // Within a cell of an end rounding could decide.
  for (let at = 0; at < spans.length; at += 2) {
    spans[at] = (spans[at] ?? 0) + 1;
    spans[at + 1] = (spans[at + 1] ?? -1) - 1;
  }
  return { spans, angleRad: frameAngle(camera) };
}
