import { describe, expect, test } from 'vitest';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import {
  barrierWith,
  blockWith,
  buildingWith,
  canopyWith,
  flat,
  openingWith,
  treeWith,
  vehicleWith,
} from './sampleStructures.ts';

const built = (structure: Structure) => {
  const { solids, faults } = solidsOf(structure);
  expect(solids.flatMap((solid) => meshFaults(solid).map((wrong) => `${solid.id}: ${wrong}`))).toEqual([]);
  return { solids, faults, volume: solids.reduce((sum, solid) => sum + volumeOf(solid), 0) };
};

describe('a building', () => {
  test('is a box under a flat roof', () => {
    const { solids, faults, volume } = built(buildingWith());
    expect(faults).toEqual([]);
    expect(solids.map(({ id, name, passage }) => [id, name, passage])).toEqual([['house', 'House', 'solid']]);
    expect(volume).toBeCloseTo(180, 9);
  });
  test('carries a deck of 0.2 m over its overhang', () => {
    const { faults, volume } = built(buildingWith({ roof: { ...flat, overhang: 0.5 } }));
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(180 + 11 * 7 * 0.2, 6);
  });
  test('has a parapet of 0.2 m around its roof', () => {
    const { faults, volume } = built(buildingWith({ roof: { ...flat, kind: 'parapet', parapet: 0.4 } }));
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(180 + (60 - 9.6 * 5.6) * 0.4, 6);
  });
  test.each(['gable', 'hip', 'monopitch'] as const)(
    'closes under a %s roof with and without overhang',
    (kind) => {
      for (const overhang of [0, 0.4]) {
        for (const ridge of [null, 0, 90, 181, 270]) {
          const { faults } = built(buildingWith({ roof: { ...flat, kind, overhang, ridge } }));
          expect(faults).toEqual([]);
        }
      }
    },
  );
  test('loses the volume of its recesses', () => {
    const openings = [
      openingWith({ setBack: 0.2 }),
      openingWith({
        id: 'window',
        name: 'Window',
        kind: 'window',
        face: 2,
        sill: 0.9,
        height: 1.2,
        setBack: 0.1,
      }),
    ];
    const { faults, volume } = built(buildingWith({ openings }));
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(180 - 1 * 2 * 0.2 - 1 * 1.2 * 0.1, 9);
  });
  test('is hollow with a wall thickness, and its openings go through', () => {
    const openings = [
      openingWith({ leaf: 'open' }),
      openingWith({ id: 'window', name: 'Window', face: 2, sill: 0.9, height: 1.2, leaf: 'glazed' }),
    ];
    const { solids, faults, volume } = built(buildingWith({ wallThickness: 0.3, openings }));
    expect(faults).toEqual([]);
    expect(solids.map(({ id, passage }) => [id, passage])).toEqual([
      ['house', 'solid'],
      ['house.window', 'clear'],
    ]);
    const rooms = 9.4 * 5.4 * 2.8;
    expect(volume).toBeCloseTo(180 - rooms - (1 * 2 + 1 * 1.2) * 0.3 + 1 * 1.2 * 0.05, 6);
  });
});

describe('a barrier', () => {
  test('is a mitred ribbon', () => {
    const { faults, volume } = built(barrierWith());
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(13 * 0.2 * 1.8, 9);
  });
  test('parts at a gate as high as itself, which has a solid of its own', () => {
    const gate = openingWith({ id: 'gate', name: 'Gate', kind: 'gate', height: 1.8, passage: 'screen' });
    const { solids, faults, volume } = built(barrierWith({ openings: [gate] }));
    expect(faults).toEqual([]);
    expect(solids.map(({ id, name, passage }) => [id, name, passage])).toEqual([
      ['fence', 'Fence', 'solid'],
      ['fence.gate', 'Fence, Gate', 'screen'],
    ]);
    expect(volume).toBeCloseTo(12 * 0.2 * 1.8 + 1 * 1.8 * 0.05, 9);
  });
  test('goes on over a lower gate', () => {
    const gate = openingWith({ id: 'gate', name: 'Gate', kind: 'gate', height: 1.2, leaf: 'open' });
    const { faults, volume } = built(barrierWith({ openings: [gate] }));
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(13 * 0.2 * 1.8 - 1.2 * 0.2 + 1.2 * 0.05, 9);
  });
  test('closes around a ring, with or without a gap', () => {
    const line = [
      [0, 0],
      [8, 0],
      [8, 5],
      [0, 5],
    ] as const;
    expect(built(barrierWith({ line, closed: true })).volume).toBeCloseTo((8.2 * 5.2 - 7.8 * 4.8) * 1.8, 9);
    const arch = openingWith({ kind: 'archway', height: 3 });
    const { faults, volume } = built(barrierWith({ line, closed: true, openings: [arch] }));
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo((8.2 * 5.2 - 7.8 * 4.8 - 0.2) * 1.8, 9);
  });
});

test('other kinds close', () => {
  for (const structure of [
    canopyWith(),
    treeWith(),
    vehicleWith(),
    vehicleWith({ sort: 'van' }),
    blockWith(),
  ]) {
    expect(built(structure).faults).toEqual([]);
  }
  expect(built(treeWith()).solids.map(({ id, name }) => [id, name])).toEqual([
    ['tree.trunk', 'Lime, trunk'],
    ['tree.crown', 'Lime, crown'],
  ]);
  expect(built(treeWith()).solids[1]?.triangles.length).toBe(240);
  expect(built(blockWith()).volume).toBeCloseTo(2.4, 12);
  expect(built(canopyWith()).volume).toBeCloseTo(15 * 0.15 + 4 * 0.01 * 2.45, 9);
});
