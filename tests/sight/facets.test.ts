import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { ballSolid } from '../bench/shapes.ts';
import { boxSolid } from './boxSolid.ts';

const ball = ballSolid('ball', [5, -3, 8], 2, { meridians: 9, bands: 7, bump: 0 });
const box = boxSolid('box', [-4, 1, -6], [1, 2, 3], 25);
const facets = facetsOf([ball, box]);
const corner = (facet: number, k: number): number[] => [
  ...facets.corners.subarray(facet * 9 + k * 3, facet * 9 + k * 3 + 3),
];

test('each group is the facets of its solid, in a box just as large', () => {
  expect(facets.groups.map(({ solid, from, to }) => [solid, from, to])).toEqual([
    [0, 0, ball.triangles.length / 3],
    [1, ball.triangles.length / 3, facets.count],
  ]);
  [ball, box].forEach(({ positions }, at) => {
    const ends = [Math.min, Math.max].flatMap((end) =>
      [0, 1, 2].map((axis) => end(...positions.filter((_, n) => n % 3 === axis))),
    );
    expect([...(facets.groups[at]?.box ?? [])]).toEqual(ends);
  });
  expect([...facets.solid]).toEqual([
    ...new Array<number>(ball.triangles.length / 3).fill(0),
    ...new Array<number>(12).fill(1),
  ]);
});

test('normals point away from the middle of a ball and have twice the area of their facets as length', () => {
  for (let facet = 0; facet < ball.triangles.length / 3; facet += 1) {
    const normal = [...facets.normals.subarray(facet * 3, facet * 3 + 3)];
    const out = corner(facet, 0).map((n, axis) => n - ([5, -3, 8][axis] ?? 0));
    expect(normal.reduce((sum, n, axis) => sum + n * (out[axis] ?? 0), 0)).toBeGreaterThan(0);
    // Heron's formula.
    const side = (i: number, j: number) =>
      Math.hypot(...corner(facet, i).map((n, axis) => n - (corner(facet, j)[axis] ?? 0)));
    const [a, b, c] = [side(0, 1), side(1, 2), side(2, 0)];
    const s = (a + b + c) / 2;
    expect(Math.hypot(...normal)).toBeCloseTo(2 * Math.sqrt(s * (s - a) * (s - b) * (s - c)), 9);
  }
});

test('beyond each edge lies the facet that has it the other way round, or none where the mesh is open', () => {
  for (let facet = 0; facet < facets.count; facet += 1)
    for (let k = 0; k < 3; k += 1) {
      const beyond = facets.neighbours[facet * 3 + k] ?? -1;
      const [from, to] = [corner(facet, k), corner(facet, (k + 1) % 3)];
      const back = [0, 1, 2].some((other) => {
        const [start, end] = [corner(beyond, other), corner(beyond, (other + 1) % 3)];
        return start.join() === to.join() && end.join() === from.join();
      });
      expect(back, `${facet}, ${k}`).toBe(true);
    }
  const open: Solid = { ...box, triangles: box.triangles.slice(0, 6) };
  expect([...facetsOf([open]).neighbours].filter((beyond) => beyond === -1).length).toBe(4);
});

test('sheets stand at the facets of their own solid, 0 at all others', () => {
  const sheets = Float64Array.from(box.triangles, (_, at) => (at % 3 === 1 ? 1 : 0));
  const found = facetsOf([ball, { ...box, sheets }], 40);
  expect([...(found.sheets ?? [])]).toEqual([...new Array<number>(ball.triangles.length).fill(0), ...sheets]);
  expect(found.closing).toBeCloseTo(Math.sin((40 * Math.PI) / 180), 12);
  expect([facets.sheets, facets.closing]).toEqual([null, expect.closeTo(0.5, 12)]);
});
