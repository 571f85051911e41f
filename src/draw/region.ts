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
