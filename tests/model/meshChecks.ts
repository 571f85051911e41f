import type { Mesh } from '../../src/model/shell.ts';

/** Six times the signed volume of the tetrahedron from the origin of measuring to triangle t. */
const tetra = ({ positions, triangles }: Mesh, t: number, origin: readonly number[]): number => {
  const p = (side: number, axis: number): number =>
    (positions[3 * (triangles[3 * t + side] ?? 0) + axis] ?? Number.NaN) - (origin[axis] ?? Number.NaN);
  return (
    p(0, 0) * (p(1, 1) * p(2, 2) - p(1, 2) * p(2, 1)) -
    p(0, 1) * (p(1, 0) * p(2, 2) - p(1, 2) * p(2, 0)) +
    p(0, 2) * (p(1, 0) * p(2, 1) - p(1, 1) * p(2, 0))
  );
};

/** Signed volume, m³: sum of tetrahedra on the triangles, measured from the first corner. */
export function volumeOf(mesh: Mesh, only: (triangle: number) => boolean = () => true): number {
  const origin = [...mesh.positions.subarray(0, 3)];
  let six = 0;
  for (let t = 0; t < mesh.triangles.length / 3; t++) if (only(t)) six += tetra(mesh, t, origin);
  return six / 6;
}

/** What is wrong with a mesh as a closed outward surface; empty when nothing is. */
export function meshFaults(mesh: Mesh): string[] {
  const wrong: string[] = [];
  const { positions, triangles } = mesh;
  if (triangles.length === 0) wrong.push('no triangles');
  if (!positions.every(Number.isFinite)) wrong.push('a coordinate is no number');
  const count = new Map<string, number>();
  const part = Array.from({ length: positions.length / 3 }, (_, k) => k);
  const rootOf = (k: number): number => {
    let root = k;
    while (part[root] !== root) root = part[root] ?? root;
    return root;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const ids = [triangles[t] ?? -1, triangles[t + 1] ?? -1, triangles[t + 2] ?? -1];
    if (new Set(ids).size < 3) wrong.push(`triangle ${t / 3} has a corner twice`);
    ids.forEach((a, k) => {
      const b = ids[(k + 1) % 3] ?? -1;
      count.set(`${a}>${b}`, (count.get(`${a}>${b}`) ?? 0) + 1);
      part[rootOf(a)] = rootOf(b);
    });
  }
  for (const [edge, times] of count) {
    const [a, b] = edge.split('>');
    if (times !== 1) wrong.push(`edge ${edge} is there ${times} times`);
    if (!count.has(`${b}>${a}`)) wrong.push(`edge ${edge} has no other side`);
  }
  const roots = new Set([...triangles].map((id) => rootOf(id)));
  for (const root of roots) {
    const volume = volumeOf(mesh, (t) => rootOf(triangles[3 * t] ?? -1) === root);
    if (!(volume > 0)) wrong.push(`the part of corner ${root} has volume ${volume}`);
  }
  return wrong;
}
