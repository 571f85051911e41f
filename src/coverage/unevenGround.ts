import type { Terrain } from '../model/terrain.ts';
import type { Grid } from '../sight/grid.ts';
import { tileLevels, type TileLevel } from './unevenTiles.ts';

/**
 * A target on the ground itself is taken this far above it, m: then whatever ground lies before it is met well before it,
 * in spite of rounding, also on a slope that is turned away.
 */
const LIFT = 1e-5;

/** Targets a height above uneven ground, one a cell; all cameras share them. */
export interface UnevenGround {
  readonly terrain: Terrain;
  /** Cells over the site's x and y: of its plane only those two coordinates count. */
  readonly grid: Grid;
  /** Height of the targets above the ground, m. */
  readonly height: number;
  /** z of the target at the centre of each cell, m. */
  readonly targets: Float64Array;
  /** Boxes around ever more of them, smallest first. */
  readonly levels: readonly TileLevel[];
}

/** Lays targets out over a terrain. Cost: linear in cells. */
export function unevenGround(terrain: Terrain, height: number, grid: Grid): UnevenGround {
  const { left, bottom, cell, columns, rows } = grid;
  const targets = new Float64Array(columns * rows);
  const above = Math.max(height, LIFT);
  for (let row = 0, at = 0; row < rows; row += 1) {
    const y = bottom + (row + 0.5) * cell;
    for (let column = 0; column < columns; column += 1, at += 1)
      targets[at] = terrain.heightAt(left + (column + 0.5) * cell, y) + above;
  }
  return { terrain, grid, height, targets, levels: tileLevels(grid, targets) };
}
