import type { OutlinePiece } from './sight.ts';

/** End points nearer than this are one corner. */
const JOIN = 1e-6;

/**
 * Chains outline pieces, each with the seen side on its left, into rings.
 * @returns corners as a, b in turn, outer rings counter-clockwise and holes clockwise; `closed` false where a ring found
 *          no way on
 */
export function chain(all: readonly OutlinePiece[]): { rings: Float64Array[]; closed: boolean } {
  const starts = new Corners();
  const pieces = all.filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > JOIN);
  pieces.forEach(({ from }, piece) => starts.add(from[0], from[1], piece));
  const used = new Uint8Array(pieces.length);
  const rings: Float64Array[] = [];
  let closed = true;
  pieces.forEach((first, index) => {
    if (used[index]) return;
    const corners: number[] = [];
    let piece = first;
    used[index] = 1;
    corners.push(first.from[0], first.from[1]);
    for (;;) {
      const next = starts.leftmost(piece, pieces, used, index);
      const onward = pieces[next];
      if (onward === undefined || next === index) break;
      used[next] = 1;
      corners.push(onward.from[0], onward.from[1]);
      piece = onward;
    }
    const gap = Math.hypot(piece.to[0] - first.from[0], piece.to[1] - first.from[1]);
    if (gap > 2 * JOIN) closed = false;
    if (corners.length >= 6) rings.push(Float64Array.from(corners));
  });
  return { rings, closed };
}

/** Pieces by the corner at which they begin, hashed on a lattice of JOIN. */
class Corners {
  private readonly at = new Map<number, number[]>();

  add(a: number, b: number, piece: number): void {
    const key = this.key(Math.round(a / JOIN), Math.round(b / JOIN));
    const here = this.at.get(key);
    if (here) here.push(piece);
    else this.at.set(key, [piece]);
  }

  /** The piece, unused or the ring's first, that begins where `piece` ends and turns most sharply left; −1 where none does. */
  leftmost(
    { from, to }: OutlinePiece,
    pieces: readonly OutlinePiece[],
    used: Uint8Array,
    first: number,
  ): number {
    let best = -1;
    let bestTurn = -Infinity;
    const [i, j] = [Math.round(to[0] / JOIN), Math.round(to[1] / JOIN)];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    for (let di = -1; di <= 1; di += 1)
      for (let dj = -1; dj <= 1; dj += 1)
        for (const index of this.at.get(this.key(i + di, j + dj)) ?? []) {
          const next = pieces[index];
          if (next === undefined || (used[index] && index !== first)) continue;
          if (Math.hypot(next.from[0] - to[0], next.from[1] - to[1]) > 2 * JOIN) continue;
          const [ex, ey] = [next.to[0] - next.from[0], next.to[1] - next.from[1]];
          const turn = Math.atan2(dx * ey - dy * ex, dx * ex + dy * ey);
          if (turn > bestTurn) [best, bestTurn] = [index, turn];
        }
    return best;
  }

  /** A number for a place of the lattice; two places may share one, so who looks up checks the distance. */
  private key(i: number, j: number): number {
    return i * 33_554_467 + j;
  }
}

/** Signed area of a ring of a, b corners: positive counter-clockwise. */
export function ringArea(ring: Float64Array): number {
  let twice = 0;
  for (let at = 0; at < ring.length; at += 2) {
    const next = (at + 2) % ring.length;
    twice += (ring[at] ?? 0) * (ring[next + 1] ?? 0) - (ring[next] ?? 0) * (ring[at + 1] ?? 0);
  }
  return twice / 2;
}
