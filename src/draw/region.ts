import type { Vec2 } from '../base/vector.ts';

/** Whether a point lies within rings (a, b of each corner; holes by the even-odd rule). */
export function withinRings(rings: readonly Float64Array[], a: number, b: number): boolean {
  let inside = false;
  for (const ring of rings) {
    const { length } = ring;
    for (let i = 0, j = length - 2; i < length; j = i, i += 2) {
      const [bi, bj] = [ring[i + 1] ?? 0, ring[j + 1] ?? 0];
      if (bi > b === bj > b) continue;
      const [ai, aj] = [ring[i] ?? 0, ring[j] ?? 0];
      if (a < ((aj - ai) * (b - bi)) / (bj - bi) + ai) inside = !inside;
    }
  }
  return inside;
}

/** The parts of a segment that lie within rings, from the first point on. */
export function partsWithin(rings: readonly Float64Array[], from: Vec2, to: Vec2): [Vec2, Vec2][] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const cuts = [0, 1];
  for (const ring of rings) {
    const { length } = ring;
    for (let i = 0, j = length - 2; i < length; j = i, i += 2) {
      const [ex, ey] = [(ring[i] ?? 0) - (ring[j] ?? 0), (ring[i + 1] ?? 0) - (ring[j + 1] ?? 0)];
      const across = dx * ey - dy * ex;
      if (across === 0) continue;
      const [px, py] = [(ring[j] ?? 0) - from[0], (ring[j + 1] ?? 0) - from[1]];
      const t = (px * ey - py * ex) / across;
      const s = (px * dy - py * dx) / across;
      if (t > 0 && t < 1 && s >= 0 && s <= 1) cuts.push(t);
    }
  }
  cuts.sort((a, b) => a - b);
  const at = (t: number): Vec2 => [from[0] + dx * t, from[1] + dy * t];
  return cuts.flatMap((end, i): [Vec2, Vec2][] => {
    const start = cuts[i - 1];
    if (start === undefined || end <= start) return [];
    return withinRings(rings, ...at((start + end) / 2)) ? [[at(start), at(end)]] : [];
  });
}
