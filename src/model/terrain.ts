import type { Fault } from '../base/fault.ts';
import type { Ground } from './ground.ts';
import type { Solid } from './solid.ts';
import { terrainOfGrid } from './terrainGrid.ts';
import { terrainOfSpots } from './terrainSpots.ts';

/** Uneven ground: triangles over the whole board, closed below into a solid. Site frame, m. */
export interface Terrain {
  /** Height of the ground, on its triangles to the last few bits; beyond them, of about the nearest edge. */
  heightAt(x: number, y: number): number;
  /** The solid below it, id `ground`. */
  readonly solid: Solid;
  /** How many triangles of the solid, from its first on, are the ground itself; the rest closes it at the sides and below. */
  readonly surface: number;
  /** Least and greatest height of the ground. */
  readonly least: number;
  readonly most: number;
}

/** A terrain, and what of its heights was mended or could not be used. Paths run from the ground. */
export interface MadeTerrain {
  readonly terrain: Terrain;
  readonly faults: readonly Fault[];
}

/** The rectangle over ground that a terrain must reach across, m. */
export interface TerrainBoard {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The terrain of a ground across a board; null of flat ground, which needs none. */
export function terrainOf(ground: Ground, board: TerrainBoard): MadeTerrain | null {
  if (ground.kind === 'flat') return null;
  return ground.kind === 'spots' ? terrainOfSpots(ground.spots, board) : terrainOfGrid(ground, board);
}
