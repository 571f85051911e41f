import { expect, test } from 'vitest';
import { structureBox } from '../../src/model/structureBox.ts';
import { barrierWith, buildingWith, flat, rectangle, treeWith } from './sampleStructures.ts';

test('the box of a building holds its overhang', () => {
  const box = structureBox(buildingWith({ roof: { ...flat, kind: 'hip', overhang: 0.5 } }));
  expect(box).toEqual({ left: -0.5, bottom: -0.5, right: 10.5, top: 6.5 });
});

test('the box of a tree holds its crown', () => {
  const box = structureBox(treeWith());
  expect(box?.left).toBeGreaterThanOrEqual(1);
  expect(box?.left).toBeLessThan(1.2);
  expect(box?.top).toBeLessThanOrEqual(6);
});

test('a structure that cannot be built has the box of its corners', () => {
  expect(structureBox(buildingWith({ outline: rectangle(3, 0) }))).toEqual({
    left: 0,
    bottom: 0,
    right: 3,
    top: 0,
  });
  expect(structureBox(barrierWith({ line: [[1, 2]] }))).toEqual({ left: 1, bottom: 2, right: 1, top: 2 });
  expect(structureBox(treeWith({ at: [Number.NaN, 0] }))).toBeNull();
});
