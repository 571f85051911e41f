/**
 * Areas by how many polygons cover them, by slabs: between all heights at which a corner lies or two edges cross, edges run
 * in one order, and the width at the middle times the height is the area. Coincident edges leave no width, so ties need no
 * rule. Slow and plain: for tests.
 */
export function areasBySlabs(polygons: readonly (readonly (readonly (readonly number[])[])[])[]): number[] {
  const edges = polygons.flatMap((rings, owner) =>
    rings.flatMap((ring) =>
      ring.map((from, at) => ({ owner, from, to: ring[(at + 1) % ring.length] ?? from })),
    ),
  );
  const heights = new Set<number>();
  const [x, y] = [(p: readonly number[]) => p[0] ?? 0, (p: readonly number[]) => p[1] ?? 0];
  for (const { from } of edges) heights.add(y(from));
  edges.forEach((one, at) => {
    for (const two of edges.slice(at + 1)) {
      const [ux, uy] = [x(one.to) - x(one.from), y(one.to) - y(one.from)];
      const [vx, vy] = [x(two.to) - x(two.from), y(two.to) - y(two.from)];
      const det = ux * vy - uy * vx;
      if (det === 0) continue;
      const t = ((x(two.from) - x(one.from)) * vy - (y(two.from) - y(one.from)) * vx) / det;
      if (t > -1e-9 && t < 1 + 1e-9) heights.add(y(one.from) + t * uy);
    }
  });
  const sorted = [...heights].sort((one, two) => one - two);
  const areas = new Array<number>(polygons.length).fill(0);
  for (let at = 0; at + 1 < sorted.length; at += 1) {
    const [low, high] = [sorted[at] ?? 0, sorted[at + 1] ?? 0];
    const middle = (low + high) / 2;
    const met = edges
      .filter(({ from, to }) => y(from) > middle !== y(to) > middle)
      .map(({ owner, from, to }) => ({
        owner,
        at: x(from) + ((middle - y(from)) / (y(to) - y(from))) * (x(to) - x(from)),
      }))
      .sort((one, two) => one.at - two.at);
    const inside = new Set<number>();
    met.forEach(({ owner, at: here }, index) => {
      if (inside.has(owner)) inside.delete(owner);
      else inside.add(owner);
      const width = (met[index + 1]?.at ?? here) - here;
      for (let count = 0; count < inside.size; count += 1)
        areas[count] = (areas[count] ?? 0) + width * (high - low);
    });
  }
  return areas;
}
