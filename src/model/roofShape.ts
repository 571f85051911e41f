import type { Fault } from '../base/fault.ts';
import type { Vec3 } from '../base/vector.ts';
import { cornerAt } from './ring.ts';
import { dotOf, heading } from './segment.ts';
import type { Ring, RoofKind } from './structure.ts';

/** A closed line of corners in space. */
export type Loop = readonly Vec3[];

/** A roof on its walls: what the walls end in, and the faces above. Heights above z = 0. */
export interface RoofShape {
  /** The kind that is built, which may be flat instead of what was asked for. */
  readonly kind: RoofKind;
  /** The top line of the wall on an edge of the outline, from above its end back to above its start. */
  readonly topOf: (edge: number) => Loop;
  /** The same of the wall on an edge of a hole. */
  readonly holeTopOf: (hole: number, edge: number) => Loop;
  /** Flat faces: the outer loop, counter-clockwise seen from outside, then its holes, clockwise. */
  readonly faces: readonly (readonly Loop[])[];
  /** Level faces that close what is then open. */
  readonly caps: readonly { readonly z: number; readonly outside: 'up' | 'down' }[];
  /** How far the soffit stands out over the wall on an edge, m; 0 where there is none. */
  readonly soffitDepth: (edge: number) => number;
  readonly notes: readonly Fault[];
}

/** Height above z = 0 of the top of the wall on an edge, `s` metres from the edge's start. */
export function topAt(roof: RoofShape, outline: Ring, edge: number, s: number): number {
  const a = cornerAt(outline, edge);
  const along = heading(a, cornerAt(outline, edge + 1));
  const line = roof.topOf(edge).map(([x, y, z]) => [dotOf([x - a[0], y - a[1]], along), z] as const);
  // Rounding may put an end of the wall a hair outside its own line.
  const ends = line.map(([x]) => x);
  const at = Math.min(Math.max(...ends), Math.max(Math.min(...ends), s));
  let highest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k + 1 < line.length; k++) {
    const [p, q] = [line[k], line[k + 1]];
    if (!p || !q) continue;
    const [[s0, z0], [s1, z1]] = p[0] <= q[0] ? [p, q] : [q, p];
    if (at < s0 || at > s1 || s1 === s0) continue;
    highest = Math.max(highest, z0 + ((z1 - z0) * (at - s0)) / (s1 - s0));
  }
  return highest;
}
