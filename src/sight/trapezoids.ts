/**
 * The inside of rings by strips between the heights of their corners: six numbers a triangle, a and b of its corners. More
 * triangles than need be, but right whatever rings touch whatever others. Rings must not cross.
 * Cost: strips × edges.
 */
export function trapezoids(rings: readonly Float64Array[]): Float64Array {
  const edges = edgesOf(rings);
  const heights = [...new Set(edges.flatMap(({ b0, b1 }) => [b0, b1]))].sort((one, two) => one - two);
  const triangles: number[] = [];
  for (let at = 0; at + 1 < heights.length; at += 1) {
    const [low, high] = [heights[at] ?? 0, heights[at + 1] ?? 0];
    const middle = (low + high) / 2;
    const met = edges
      .filter(({ b0, b1 }) => b0 <= low && b1 >= high)
      .sort((one, two) => across(one, middle) - across(two, middle));
    for (let pair = 0; pair + 1 < met.length; pair += 2) {
      const [left, right] = [met[pair], met[pair + 1]];
      if (left === undefined || right === undefined) continue;
      const [l0, l1, r0, r1] = [
        across(left, low),
        across(left, high),
        across(right, low),
        across(right, high),
      ];
      if (r0 > l0) triangles.push(l0, low, r0, low, r1, high);
      if (r1 > l1) triangles.push(l0, low, r1, high, l1, high);
    }
  }
  return Float64Array.from(triangles);
}

/** An edge from its lower to its higher end. */
interface Edge {
  readonly a0: number;
  readonly b0: number;
  readonly a1: number;
  readonly b1: number;
}

/** Where an edge is at a height. */
const across = ({ a0, b0, a1, b1 }: Edge, b: number): number =>
  b === b0 ? a0 : b === b1 ? a1 : a0 + ((b - b0) / (b1 - b0)) * (a1 - a0);

function edgesOf(rings: readonly Float64Array[]): readonly Edge[] {
  return rings.flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, at): Edge => {
      const next = (2 * at + 2) % ring.length;
      const [a0, b0, a1, b1] = [
        ring[2 * at] ?? 0,
        ring[2 * at + 1] ?? 0,
        ring[next] ?? 0,
        ring[next + 1] ?? 0,
      ];
      return b0 <= b1 ? { a0, b0, a1, b1 } : { a0: a1, b0: b1, a1: a0, b1: b0 };
    }).filter(({ b0, b1 }) => b1 > b0),
  );
}
