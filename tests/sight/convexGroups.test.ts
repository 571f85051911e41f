import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { ballSolid, gableSolid } from '../bench/shapes.ts';
import { boxSolid } from './boxSolid.ts';

/** The faces of a mesh in another order: from the given triangle on. */
const turned = (solid: Solid, from: number): Solid => ({
  ...solid,
  triangles: Uint32Array.from([...solid.triangles.slice(from * 3), ...solid.triangles.slice(0, from * 3)]),
});

/** Four corners, of which the last is drawn in towards the first three: each of its three faces lies behind the other two. */
const dented: Solid = {
  ...boxSolid('dented', [0, 0, 0], [1, 1, 1]),
  positions: Float64Array.from([0, 0, 0, 4, 0, 0, 0, 4, 0, 0, 0, 4, 0.5, 0.5, 0.5]),
  // A tetrahedron whose slanted face is pushed in to a fourth point within.
  triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 4, 2, 3, 4, 3, 1, 4]),
};

test('boxes, gables and balls are convex, whichever face comes first', () => {
  const ball = ballSolid('ball', [0, 0, 2], 1, { meridians: 6, bands: 4, bump: 0 });
  for (const solid of [
    boxSolid('box', [1, 2, 0], [3, 4, 5], 33),
    gableSolid('roof', [0, 0, 3], [6, 4, 2]),
    ball,
  ])
    for (const from of [0, 1, 5]) expect([...facetsOf([turned(solid, from)]).faces.convex]).toEqual([1]);
});

test('a dent is noticed, whichever faces are its own', () => {
  for (let from = 0; from < 6; from += 1)
    expect([...facetsOf([turned(dented, from)]).faces.convex], `${from}`).toEqual([0]);
  // Only the dent's own faces have corners before them.
  const order = [3, 0, 4, 1, 5, 2];
  for (const list of [order, order.toReversed()])
    expect([
      ...facetsOf([
        {
          ...dented,
          triangles: Uint32Array.from(
            list.flatMap((triangle) => Array.from(dented.triangles.slice(triangle * 3, triangle * 3 + 3))),
          ),
        },
      ]).faces.convex,
    ]).toEqual([0]);
});

test('a mesh that is open, or of two pieces, is not convex', () => {
  const box = boxSolid('box', [0, 0, 0], [1, 1, 1]);
  expect([...facetsOf([{ ...box, triangles: box.triangles.slice(6) }]).faces.convex]).toEqual([0]);
  const other = boxSolid('box', [3, 0, 0], [1, 1, 1]);
  const both: Solid = {
    ...box,
    positions: Float64Array.of(...box.positions, ...other.positions),
    triangles: Uint32Array.of(...box.triangles, ...other.triangles.map((corner) => corner + 8)),
  };
  expect([...facetsOf([both]).faces.convex]).toEqual([0]);
});
