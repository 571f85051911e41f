import { dot, type Vec3 } from '../base/vector.ts';
import type { Facets } from './facets.ts';
import type { Footing } from './footing.ts';
import { STRIDE, type Shadows } from './shadows.ts';

/**
 * The shadows of one sheet of a screen. It closes up where (n·X)² < sin² · X² for the target X from the lens: where it is
 * seen at less than that angle to its face.
 */
export interface SheetShadows {
  /** Index of the solid. */
  readonly solid: number;
  /** Unit normal of the sheet. */
  readonly normal: Vec3;
  readonly shadows: Shadows;
}

/** Normals nearer than this are of one sheet. */
const SAME_WAY = 1e-9;

/** The shadows of screens by solid and sheet; those of a screen without sheets, such as a bare crown, are left out. */
export function sheetsOf(screens: Shadows, { sheets }: Facets): readonly SheetShadows[] {
  if (sheets === null || screens.count === 0) return [];
  const groups: { readonly solid: number; readonly normal: Vec3; readonly members: number[] }[] = [];
  for (let shadow = 0; shadow < screens.count; shadow += 1) {
    const at = (screens.facet[shadow] ?? 0) * 3;
    const normal: Vec3 = [sheets[at] ?? 0, sheets[at + 1] ?? 0, sheets[at + 2] ?? 0];
    if (!(dot(normal, normal) > 0)) continue;
    const solid = screens.solid[shadow] ?? -1;
    const known = groups.find(
      (group) => group.solid === solid && Math.abs(dot(group.normal, normal)) > 1 - SAME_WAY,
    );
    if (known) known.members.push(shadow);
    else groups.push({ solid, normal, members: [shadow] });
  }
  return groups.map(({ solid, normal, members }) => ({ solid, normal, shadows: picked(screens, members) }));
}

/** Some of the shadows, in their order. Edges between two of one sheet stay inner edges. */
function picked(from: Shadows, members: readonly number[]): Shadows {
  const numbers = new Float64Array(members.length * STRIDE);
  members.forEach((shadow, at) =>
    numbers.set(from.numbers.subarray(shadow * STRIDE, (shadow + 1) * STRIDE), at * STRIDE),
  );
  return {
    count: members.length,
    numbers,
    sides: Uint8Array.from(members, (shadow) => from.sides[shadow] ?? 0),
    // Beyond an edge to another sheet of the same solid nothing of this one goes on: every side may be an outline.
    outline: Uint8Array.from(members, (shadow) => (1 << (from.sides[shadow] ?? 0)) - 1),
    solid: Int32Array.from(members, (shadow) => from.solid[shadow] ?? -1),
    facet: Int32Array.from(members, (shadow) => from.facet[shadow] ?? -1),
    dark: null,
  };
}

/** How far a sheet is closed at a target from the lens: ≥ 0 where it is, smooth. @param sine of the angle below which it closes */
export function closedAt(
  normal: Vec3,
  sine: number,
  { plane, delta }: Footing,
  p: number,
  q: number,
): number {
  const along = p * dot(normal, plane.u) + q * dot(normal, plane.v) + delta * dot(normal, plane.normal);
  const far2 = p * p + q * q + delta * delta;
  return sine * sine - (along * along) / far2;
}
