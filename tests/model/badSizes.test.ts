import { expect, test } from 'vitest';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import {
  barrierWith,
  blockWith,
  buildingWith,
  canopyWith,
  treeWith,
  vehicleWith,
} from './sampleStructures.ts';

const sizes: readonly (readonly [name: string, make: (value: number) => Structure, path: string])[] = [
  ['building height', (height) => buildingWith({ height }), 'height'],
  ['barrier height', (height) => barrierWith({ height }), 'height'],
  ['barrier thickness', (thickness) => barrierWith({ thickness }), 'thickness'],
  ['canopy thickness', (thickness) => canopyWith({ thickness }), 'thickness'],
  ['canopy top', (top) => canopyWith({ top }), 'top'],
  ['tree height', (height) => treeWith({ height }), 'height'],
  ['crown radius', (crownRadius) => treeWith({ crownRadius }), 'crownRadius'],
  ['trunk diameter', (trunkDiameter) => treeWith({ trunkDiameter }), 'trunkDiameter'],
  ['vehicle length', (length) => vehicleWith({ length }), 'length'],
  ['vehicle width', (width) => vehicleWith({ width }), 'width'],
  ['vehicle height', (height) => vehicleWith({ height }), 'height'],
  ['block height', (height) => blockWith({ height }), 'height'],
];

test.each(sizes)('%s of nothing, below nothing or no number is refused by its name', (_, make, path) => {
  for (const value of [0, -2, Number.NaN, Number.POSITIVE_INFINITY, 1e9]) {
    const structure = make(value);
    const { solids, faults } = solidsOf(structure);
    const isFar = value === 1e9;
    expect({ value, solids: solids.length }).toEqual({ value, solids: 0 });
    expect(faults).toMatchObject([{ path: [path], subject: structure.name }]);
    expect(faults[0]?.code).toBe(isFar ? 'size.far' : Number.isFinite(value) ? 'size.small' : 'size.number');
  }
});

test('a base or place that is no number is refused', () => {
  const bad = Number.NaN;
  const structures = [
    [buildingWith({ base: bad }), ['base']],
    [blockWith({ base: bad }), ['base']],
    [barrierWith({ base: bad }), ['base']],
    [treeWith({ at: [0, bad] }), ['at']],
    [vehicleWith({ at: [bad, 0] }), ['at']],
    [vehicleWith({ heading: bad }), ['heading']],
    [
      barrierWith({
        line: [
          [0, 0],
          [1, bad],
        ],
      }),
      ['line', 1],
    ],
    [
      canopyWith({
        outline: [
          [0, 0],
          [1, 0],
          [bad, 1],
        ],
      }),
      ['outline', 2],
    ],
  ] as const;
  for (const [structure, path] of structures) {
    expect(solidsOf(structure)).toMatchObject({ solids: [], faults: [{ code: 'size.number', path }] });
  }
});

test('a crown that begins above its tree, or below the ground, is refused', () => {
  expect(solidsOf(treeWith({ clear: 7 }))).toMatchObject({
    solids: [],
    faults: [{ code: 'tree.clear', path: ['clear'] }],
  });
  expect(solidsOf(treeWith({ clear: -1 }))).toMatchObject({ solids: [], faults: [{ code: 'tree.clear' }] });
});

test('more posts than corners are refused', () => {
  expect(solidsOf(canopyWith({ posts: 5 }))).toMatchObject({
    solids: [],
    faults: [{ code: 'canopy.posts', path: ['posts'] }],
  });
  expect(solidsOf(canopyWith({ posts: 1.5 })).solids).toEqual([]);
});

test('a canopy below the ground on which its posts would stand is refused', () => {
  expect(solidsOf(canopyWith(), 3)).toMatchObject({
    solids: [],
    faults: [{ code: 'size.small', path: ['top'] }],
  });
});
