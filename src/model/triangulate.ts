import earcut from 'earcut';

/**
 * Cuts a flat polygon with holes into triangles that use every corner, so that neighbours along an edge always meet.
 * @param loops  corner ids, first the outer loop
 * @param u,v    flat coordinates of a corner id; the outer loop runs counter-clockwise in them
 * @returns      ids, three a triangle, counter-clockwise in (u, v); null when the polygon cannot be cut cleanly
 */
export function triangulate(
  loops: readonly (readonly number[])[],
  u: (id: number) => number,
  v: (id: number) => number,
): number[] | null {
  const ids = loops.flat();
  const [first] = ids;
  if (first === undefined) return [];
  // Measured from a corner, since the library multiplies coordinates and far sites would lose digits.
  const [u0, v0] = [u(first), v(first)];
  const flat = new Float64Array(ids.length * 2);
  ids.forEach((id, k) => {
    flat[2 * k] = u(id) - u0;
    flat[2 * k + 1] = v(id) - v0;
  });
  const starts: number[] = [];
  let start = 0;
  for (const loop of loops.slice(0, -1)) starts.push((start += loop.length));
  const cut = earcut(flat, starts);
  const whole = ids.length - 2 + 2 * (loops.length - 1);
  const triangles = cut.length === 3 * whole ? cut : withDroppedCorners(cut, loops, flat);
  if (!triangles || !fills(triangles, loops, flat)) return null;
  return triangles.map((k) => ids[k] ?? 0);
}

const at = (flat: Float64Array, k: number): number => flat[k] ?? 0;

/** Twice the area of a triangle of positions. */
function twiceArea(flat: Float64Array, a: number, b: number, c: number): number {
  const [x, y] = [at(flat, 2 * a), at(flat, 2 * a + 1)];
  return (
    (at(flat, 2 * b) - x) * (at(flat, 2 * c + 1) - y) - (at(flat, 2 * c) - x) * (at(flat, 2 * b + 1) - y)
  );
}

/** Whether the triangles have the polygon's area: more when some overlap, less when one is missing. */
function fills(
  triangles: readonly number[],
  loops: readonly (readonly number[])[],
  flat: Float64Array,
): boolean {
  let covered = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    covered += Math.abs(twiceArea(flat, triangles[t] ?? 0, triangles[t + 1] ?? 0, triangles[t + 2] ?? 0));
  }
  let asked = 0;
  let start = 0;
  for (const loop of loops) {
    for (let k = 1; k + 1 < loop.length; k++) asked += twiceArea(flat, start, start + k, start + k + 1);
    start += loop.length;
  }
  return Math.abs(covered - asked) <= 1e-9 * Math.abs(asked) + 1e-12;
}

const edgeKey = (a: number, b: number): number => a * 0x4000000 + b;

/**
 * The library leaves out corners on a straight run. Each triangle edge that skips some is split at them:
 * such an edge has no partner, neither in another triangle nor in the polygon.
 */
function withDroppedCorners(
  cut: readonly number[],
  loops: readonly (readonly number[])[],
  flat: Float64Array,
): number[] | null {
  const wanted = new Set<number>();
  let start = 0;
  for (const loop of loops) {
    for (let k = 0; k < loop.length; k++) wanted.add(edgeKey(start + k, start + ((k + 1) % loop.length)));
    start += loop.length;
  }
  let triangles = [...cut];
  for (let round = 0; round <= start; round++) {
    const edges = new Set<number>();
    const each = (visit: (a: number, b: number, t: number, side: number) => void): void => {
      for (let t = 0; t < triangles.length; t += 3) {
        for (let side = 0; side < 3; side++) {
          visit(triangles[t + side] ?? 0, triangles[t + ((side + 1) % 3)] ?? 0, t, side);
        }
      }
    };
    each((a, b) => edges.add(edgeKey(a, b)));
    const loose: { a: number; b: number; t: number; side: number }[] = [];
    const free = new Set<number>();
    each((a, b, t, side) => {
      if (edges.has(edgeKey(b, a)) || wanted.has(edgeKey(a, b))) return;
      loose.push({ a, b, t, side });
      free.add(a).add(b);
    });
    for (const edge of wanted) {
      if (!edges.has(edge)) free.add(Math.floor(edge / 0x4000000)).add(edge % 0x4000000);
    }
    if (loose.length === 0) return triangles;
    const split = splitOne(triangles, loose, free, flat);
    if (!split) return null;
    triangles = split;
  }
  return null;
}

function splitOne(
  triangles: readonly number[],
  loose: readonly { a: number; b: number; t: number; side: number }[],
  free: ReadonlySet<number>,
  flat: Float64Array,
): number[] | null {
  for (const { a, b, t, side } of loose) {
    const x = at(flat, 2 * b) - at(flat, 2 * a);
    const y = at(flat, 2 * b + 1) - at(flat, 2 * a + 1);
    const size = x * x + y * y;
    const share = (k: number): number =>
      ((at(flat, 2 * k) - at(flat, 2 * a)) * x + (at(flat, 2 * k + 1) - at(flat, 2 * a + 1)) * y) / size;
    const between = [...free]
      .filter((k) => k !== a && k !== b && share(k) > 0 && share(k) < 1)
      .filter((k) => Math.abs(twiceArea(flat, a, b, k)) <= 1e-9 * size)
      .sort((k, l) => share(k) - share(l));
    if (between.length === 0) continue;
    const apex = triangles[t + ((side + 2) % 3)] ?? 0;
    const run = [a, ...between, b];
    const fan = run.slice(1).flatMap((k, i) => [run[i] ?? 0, k, apex]);
    return [...triangles.slice(0, t), ...fan, ...triangles.slice(t + 3)];
  }
  return null;
}
