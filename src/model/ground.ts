import type { Vec2 } from '../base/vector.ts';
import type { Got } from './structure.ts';

/** A height of the ground taken at a place, m above z = 0. */
export interface Spot {
  readonly at: Vec2;
  readonly height: number;
  readonly got: Got;
}

/** Ground of one height, m above z = 0. */
interface FlatGround {
  readonly kind: 'flat';
  readonly height: number;
}

/** Ground between spot heights; fewer than three, or all in one line, leave it flat at their mean. */
interface SpotGround {
  readonly kind: 'spots';
  readonly spots: readonly Spot[];
}

/** Ground by square cells, `cell` m a side: heights at their centres row by row from the south-west; null is unknown. */
export interface GridGround {
  readonly kind: 'grid';
  readonly left: number;
  readonly bottom: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly heights: readonly (number | null)[];
  readonly got: Got;
}

export type Ground = FlatGround | SpotGround | GridGround;

/** The datum of a ground, m above z = 0: the height of flat ground, the least height of any other. */
export function groundHeight(ground: Ground): number {
  if (ground.kind === 'flat') return ground.height;
  let least = Infinity;
  if (ground.kind === 'spots') for (const { height } of ground.spots) least = Math.min(least, height);
  else for (const height of ground.heights) if (height !== null && height < least) least = height;
  return least === Infinity ? 0 : least;
}

/** Places that a ground reaches to: its spots, or two corners of its grid; none of flat ground. */
export function groundCorners(ground: Ground): readonly Vec2[] {
  if (ground.kind === 'flat') return [];
  if (ground.kind === 'spots') return ground.spots.map(({ at }) => at);
  const { left, bottom, cell, columns, rows } = ground;
  return [
    [left, bottom],
    [left + columns * cell, bottom + rows * cell],
  ];
}
