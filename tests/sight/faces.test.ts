import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { ballSolid } from '../bench/shapes.ts';
import { boxSolid } from './boxSolid.ts';

test('a box has six faces of four corners, each beside four others', () => {
  const { faces } = facetsOf([boxSolid('box', [1, 2, 0], [3, 4, 5], 33)]);
  expect(faces.count).toBe(6);
  expect([...faces.sides]).toEqual([4, 4, 4, 4, 4, 4]);
  for (let face = 0; face < 6; face += 1) {
    const around = new Set(faces.neighbours.subarray(face * 4, face * 4 + 4));
    expect(around.size).toBe(4);
    expect(around.has(face)).toBe(false);
    expect(around.has(-1)).toBe(false);
  }
});

test('facets that are not flat together stay triangles', () => {
  const { faces, count } = facetsOf([
    ballSolid('lump', [0, 0, 2], 1, { meridians: 11, bands: 9, bump: 0.1 }),
  ]);
  expect(faces.count).toBe(count);
  expect([...faces.sides].every((sides) => sides === 3)).toBe(true);
});

test('two facets whose outline has a dent stay apart', () => {
  // A flat arrowhead, open, of two triangles along its axis; the dent comes first or last of the edge between them.
  const dart = (triangles: readonly number[]): Solid => ({
    id: 'dart',
    structure: 'dart',
    name: 'dart',
    passage: 'solid',
    positions: Float64Array.from([0, 0, 1, 2, -1, 1, 1, 0, 1, 2, 1, 1]),
    triangles: Uint32Array.from(triangles),
  });
  expect(facetsOf([dart([0, 1, 2, 0, 2, 3])]).faces.count).toBe(2);
  expect(facetsOf([dart([2, 3, 0, 2, 0, 1])]).faces.count).toBe(2);
});

test('faces of the groups follow one another and name their first facets', () => {
  const facets = facetsOf([
    boxSolid('one', [0, 0, 0], [1, 1, 1]),
    ballSolid('ball', [4, 0, 2], 1, { meridians: 8, bands: 6, bump: 0 }),
    boxSolid('two', [9, 0, 0], [1, 1, 1]),
  ]);
  const { faces, groups } = facets;
  expect([...faces.starts]).toEqual([0, 6, faces.count - 6, faces.count]);
  groups.forEach(({ from, to }, at) => {
    for (let face = faces.starts[at] ?? 0; face < (faces.starts[at + 1] ?? 0); face += 1) {
      const facet = faces.facet[face] ?? -1;
      expect(facet).toBeGreaterThanOrEqual(from);
      expect(facet).toBeLessThan(to);
    }
  });
});

test('two halves of a square are one face, at whichever corner either begins', () => {
  const turned = (triangle: readonly number[], by: number) => [
    ...triangle.slice(by),
    ...triangle.slice(0, by),
  ];
  for (let one = 0; one < 3; one += 1)
    for (let two = 0; two < 3; two += 1) {
      const { faces } = facetsOf([
        {
          id: 'sheet',
          structure: 'sheet',
          name: 'sheet',
          passage: 'solid',
          positions: Float64Array.from([0, 0, 1, 2, 0, 1, 2, 2, 1, 0, 2, 1]),
          triangles: Uint32Array.from([...turned([0, 1, 2], one), ...turned([0, 2, 3], two)]),
        },
      ]);
      expect([faces.count, faces.sides[0]]).toEqual([1, 4]);
      // Its four corners in turn: opposite ones are twice the root of two apart, neighbours 2.
      const corner = (k: number) => [...faces.corners.subarray((k % 4) * 3, (k % 4) * 3 + 3)];
      const apart = (i: number, j: number) =>
        Math.hypot(...corner(i).map((n, axis) => n - (corner(j)[axis] ?? 0)));
      for (let k = 0; k < 4; k += 1) expect([apart(k, k + 1), apart(k, k + 2)]).toEqual([2, Math.sqrt(8)]);
    }
});

test('the fourth number of a normal is its length', () => {
  const { faces } = facetsOf([boxSolid('box', [1, 2, 0], [3, 4, 5], 33)]);
  for (let face = 0; face < faces.count; face += 1) {
    const [x = 0, y = 0, z = 0, size] = faces.normals.subarray(face * 4, face * 4 + 4);
    expect(size).toBeCloseTo(Math.hypot(x, y, z), 9);
  }
});

test('an upright outline with a dent stays apart too, at any height and whichever way it looks', () => {
  for (const height of [-10, 0.5, 10])
    for (const sense of [1, -1])
      for (const order of [
        [0, 1, 2, 0, 2, 3],
        [2, 3, 0, 2, 0, 1],
      ]) {
        const corners = [
          [0, 0],
          [2, -1],
          [1, 0],
          [2, 1],
        ] as const;
        const dart: Solid = {
          id: 'dart',
          structure: 'dart',
          name: 'dart',
          passage: 'solid',
          positions: Float64Array.from(corners.flatMap(([x, z]) => [sense * x, 3, height + z])),
          triangles: Uint32Array.from(order),
        };
        expect(facetsOf([dart]).faces.count, `${height}, ${sense}`).toBe(2);
      }
});
