import { expect, test } from 'vitest';
import { clumpsOf } from '../../src/sight/clumps.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { treeOf, treeOfBoxes, type Tree } from '../../src/sight/tree.ts';
import { ballSolid } from '../bench/shapes.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { boxSolid, randomYard } from './boxSolid.ts';

/** Random boxes, some of them in one place. */
function randomBoxes(seed: number, many: number): Float64Array {
  const chance = chanceFrom(seed);
  const boxes = new Float64Array(many * 6);
  for (let one = 0; one < many; one += 1)
    for (let axis = 0; axis < 3; axis += 1) {
      const low = chance.next() < 0.2 ? 5 : chance.between(0, axis === 0 ? 100 : 30);
      boxes[one * 6 + axis] = low;
      boxes[one * 6 + 3 + axis] = low + chance.between(0, 2);
    }
  return boxes;
}

/** What a leaf or branch holds; throws where a box does not lie in the boxes above it. */
function below(tree: Tree, boxes: Float64Array, node: number): number[] {
  const { first, amount, order } = tree;
  const [start, many] = [first[node] ?? -1, amount[node] ?? -1];
  const all =
    many > 0
      ? [...order.subarray(start, start + many)]
      : [...below(tree, boxes, start), ...below(tree, boxes, start + 1)];
  for (let axis = 0; axis < 3; axis += 1) {
    const lows = all.map((one) => boxes[one * 6 + axis] ?? NaN);
    const highs = all.map((one) => boxes[one * 6 + 3 + axis] ?? NaN);
    expect(tree.boxes[node * 6 + axis]).toBe(Math.min(...lows));
    expect(tree.boxes[node * 6 + 3 + axis]).toBe(Math.max(...highs));
  }
  return all;
}

test('each box is in one leaf, and each node is just as large as what it holds', () => {
  for (const many of [1, 4, 5, 6, 40, 333]) {
    const boxes = randomBoxes(many, many);
    const found = below(treeOfBoxes(boxes), boxes, 0);
    expect(found.sort((a, b) => a - b)).toEqual(Array.from({ length: many }, (_, one) => one));
  }
});

test('boxes around one middle are halved, though no plane parts them', () => {
  const boxes = Float64Array.from(
    { length: 60 },
    (_, at) => (at % 6 < 3 ? -1 : 1) * (1 + Math.floor(at / 6)),
  );
  expect(below(treeOfBoxes(boxes), boxes, 0).length).toBe(10);
});

test('of nothing there is one empty node', () => {
  const tree = treeOfBoxes(new Float64Array(0));
  expect([tree.order.length, [...tree.amount]]).toEqual([0, [0]]);
});

test('a small box asks few leaves: the cuts lie where they part most', () => {
  const boxes = randomBoxes(7, 2000);
  const tree = treeOfBoxes(boxes);
  const chance = chanceFrom(8);
  let asked = 0;
  for (let trial = 0; trial < 200; trial += 1) {
    const place = [chance.between(0, 100), chance.between(0, 30), chance.between(0, 30)];
    const open = [0];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      const at = node * 6;
      if (place.some((n, axis) => n < (tree.boxes[at + axis] ?? 0) || n > (tree.boxes[at + 3 + axis] ?? 0)))
        continue;
      const [start, many] = [tree.first[node] ?? 0, tree.amount[node] ?? 0];
      asked += many;
      if (many === 0) open.push(start, start + 1);
    }
  }
  // Of 2000; 0.86 when this was written.
  expect(asked / 200).toBeLessThan(1.5);
});

test('facets lie in boxes of their own', () => {
  const { count, corners } = facetsOf([
    boxSolid('a', [1, 2, 3], [1, 4, 2], 20),
    boxSolid('b', [-9, 2, 0], [1, 1, 1]),
  ]);
  const boxes = Float64Array.from({ length: count * 6 }, (_, at) => {
    const [facet, axis] = [Math.floor(at / 6), at % 3];
    const of = [0, 3, 6].map((corner) => corners[facet * 9 + corner + axis] ?? NaN);
    return at % 6 < 3 ? Math.min(...of) : Math.max(...of);
  });
  expect(below(treeOf({ count, corners }), boxes, 0).length).toBe(24);
});

test('clumps are runs of at most 64 faces of one solid, each in a box just as large', () => {
  const chance = chanceFrom(9);
  for (let trial = 0; trial < trials(20, 200); trial += 1) {
    const ball = ballSolid('ball', [4, 0, 2], 1, { meridians: 30, bands: 20, bump: 0.1 });
    const { faces } = facetsOf([...randomYard(chance.next, 3), ball, ...randomYard(chance.next, 2)]);
    const { starts, group, boxes } = clumpsOf(faces.starts, faces.sides, faces.corners);
    expect([starts[0], starts.at(-1), starts.length]).toEqual([0, faces.count, group.length + 1]);
    for (let clump = 0; clump < group.length; clump += 1) {
      const [from, to] = [starts[clump] ?? 0, starts[clump + 1] ?? 0];
      expect(to - from).toBeGreaterThan(0);
      expect(to - from).toBeLessThanOrEqual(64);
      const own = group[clump] ?? -1;
      expect([(faces.starts[own] ?? NaN) <= from, to <= (faces.starts[own + 1] ?? NaN)]).toEqual([
        true,
        true,
      ]);
      for (let axis = 0; axis < 3; axis += 1) {
        const all: number[] = [];
        for (let face = from; face < to; face += 1)
          for (let corner = 0; corner < (faces.sides[face] ?? 0); corner += 1)
            all.push(faces.corners[face * 12 + corner * 3 + axis] ?? NaN);
        expect(boxes[clump * 6 + axis]).toBe(Math.min(...all));
        expect(boxes[clump * 6 + 3 + axis]).toBe(Math.max(...all));
      }
    }
    // As few as may be: all but the last of a solid are full.
    expect(group.length).toBe(
      [...faces.starts.subarray(1)].reduce(
        (sum, end, at) => sum + Math.ceil((end - (faces.starts[at] ?? 0)) / 64),
        0,
      ),
    );
  }
});
