import type { Solid } from '../model/solid.ts';

/** Least x, y, z, then greatest, m. */
export type Box = readonly [number, number, number, number, number, number];

/** What differs between two lists of solids. */
export interface SolidsChange {
  /** Around each solid that went or came. */
  readonly boxes: readonly Box[];
  /** The index now of each solid of the former list, −1 where it went; null where those that stayed kept theirs. */
  readonly indices: Int32Array | null;
}

/**
 * What differs between two lists of solids, told apart by identity.
 * @returns null where those that stayed are in another order: then what hides a place on equal depth may change anywhere
 */
export function solidsChange(before: readonly Solid[], after: readonly Solid[]): SolidsChange | null {
  const now = new Map(after.map((solid, index) => [solid, index]));
  const indices = Int32Array.from(before, (solid) => now.get(solid) ?? -1);
  let last = -1;
  for (const index of indices) {
    if (index < 0) continue;
    if (index < last) return null;
    last = index;
  }
  const former = new Set(before);
  const changed = [
    ...before.filter((_, index) => indices[index] === -1),
    ...after.filter((solid) => !former.has(solid)),
  ];
  const stayed = indices.every((index, at) => index === at || index < 0);
  return { boxes: changed.map(boxAround), indices: stayed ? null : indices };
}

function boxAround({ positions }: Solid): Box {
  let [x0, y0, z0, x1, y1, z1] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    const [x, y, z] = [positions[at] ?? 0, positions[at + 1] ?? 0, positions[at + 2] ?? 0];
    [x0, y0, z0] = [Math.min(x0, x), Math.min(y0, y), Math.min(z0, z)];
    [x1, y1, z1] = [Math.max(x1, x), Math.max(y1, y), Math.max(z1, z)];
  }
  return [x0, y0, z0, x1, y1, z1];
}
