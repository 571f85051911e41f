import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Building, Opening } from '../../src/model/structure.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { barrierWith, buildingWith, flat, openingWith, rectangle } from './sampleStructures.ts';

const withOpenings = (openings: readonly Partial<Opening>[], change: Partial<Building> = {}) => {
  const list = openings.map((opening, k) =>
    openingWith({ id: `o${k}`, name: `Opening ${k + 1}`, ...opening }),
  );
  const { solids, faults } = solidsOf(buildingWith({ openings: list, ...change }));
  expect(solids.flatMap((solid) => meshFaults(solid))).toEqual([]);
  const [body] = solids;
  return {
    solids,
    volume: body ? volumeOf(body) : 0,
    told: faults.map(({ code, path, subject }) => [code, path, subject]),
    faults,
  };
};

describe('openings on a block', () => {
  test('one that fits leaves a recess of its depth, and no solid of its own', () => {
    const { volume, told, solids } = withOpenings([{ setBack: 0.25 }]);
    expect(told).toEqual([]);
    expect(solids).toHaveLength(1);
    expect(volume).toBeCloseTo(180 - 1 * 2 * 0.25, 9);
  });
  test('one flush with the wall leaves it whole', () => {
    expect(withOpenings([{ setBack: 0 }])).toMatchObject({ told: [] });
    expect(withOpenings([{ setBack: 0 }]).volume).toBeCloseTo(180, 9);
  });
  test('one beside its wall is left out, and the fault says where it would fit', () => {
    const { volume, faults } = withOpenings([{ along: 9.5 }]);
    expect(faults).toEqual([
      {
        code: 'opening.outside',
        path: ['openings', 0, 'along'],
        subject: 'Opening 1',
        given: 9.5,
        allowed: 'from 0.01 m to 8.99 m along its wall',
      },
    ]);
    expect(volume).toBeCloseTo(180, 9);
    expect(withOpenings([{ along: -0.5 }]).told).toEqual([
      ['opening.outside', ['openings', 0, 'along'], 'Opening 1'],
    ]);
    expect(withOpenings([{ width: 11 }]).faults[0]?.allowed).toBe('a width of at most 9.98 m');
  });
  test('one higher than its wall is left out', () => {
    expect(withOpenings([{ height: 3.2 }]).told).toEqual([
      ['opening.high', ['openings', 0, 'height'], 'Opening 1'],
    ]);
    expect(withOpenings([{ sill: 1.5 }]).told).toEqual([
      ['opening.high', ['openings', 0, 'height'], 'Opening 1'],
    ]);
  });
  test('one may reach up into a gable, as far as its slope', () => {
    const roof = { ...flat, kind: 'gable', pitch: 45 } as const;
    const loft = { face: 1, along: 2.5, sill: 3.2, height: 1, setBack: 0.1 };
    const { told, volume } = withOpenings([loft], { roof });
    expect(told).toEqual([]);
    expect(volume).toBeCloseTo(180 + 10 * 9 - 0.1, 9);
    expect(withOpenings([{ ...loft, along: 1 }], { roof }).told).toMatchObject([
      ['opening.high', {}, 'Opening 1'],
    ]);
  });
  test('of two that overlap the second is left out', () => {
    const { told, volume, faults } = withOpenings([{}, { along: 2.5 }]);
    expect(told).toEqual([['opening.overlaps', ['openings', 1, 'along'], 'Opening 2']]);
    expect(faults[0]?.given).toBe('Opening 1');
    expect(volume).toBeCloseTo(180 - 0.2, 9);
    expect(withOpenings([{}, { along: 3.02 }]).told).toEqual([]);
  });
  test('one above another is no overlap', () => {
    expect(withOpenings([{}, { sill: 2.2, height: 0.5 }]).told).toEqual([]);
  });
  test('one so deep that it would come out elsewhere is left out', () => {
    expect(withOpenings([{ setBack: 6 }]).told).toEqual([
      ['opening.deep', ['openings', 0, 'setBack'], 'Opening 1'],
    ]);
    expect(withOpenings([{ setBack: 5.9 }]).told).toEqual([]);
    // Two recesses around a corner that would meet inside.
    const corner = [
      { along: 9.2, width: 0.7, setBack: 0.5 },
      { face: 1, along: 0.2, width: 0.7, setBack: 0.9 },
    ];
    expect(withOpenings(corner).told).toEqual([['opening.deep', ['openings', 1, 'setBack'], 'Opening 2']]);
    const courtyard = withOpenings([{ setBack: 2.5 }], { holes: [rectangle(2, 2, [2, 2])] });
    expect(courtyard.told).toEqual([['opening.deep', ['openings', 0, 'setBack'], 'Opening 1']]);
  });
  test('one that would swallow a courtyard, or cross a notch between two wings, is left out', () => {
    const wide = { along: 1, width: 8, setBack: 5 };
    const told = [['opening.deep', ['openings', 0, 'setBack'], 'Opening 1']];
    expect(withOpenings([wide]).told).toEqual([]);
    expect(withOpenings([wide], { holes: [rectangle(1, 1, [4, 2])] }).told).toEqual(told);
    const wings: Vec2[] = [
      [0, 0],
      [10, 0],
      [10, 8],
      [6, 8],
      [6, 4],
      [4, 4],
      [4, 8],
      [0, 8],
    ];
    expect(withOpenings([wide], { outline: wings }).told).toEqual(told);
    expect(withOpenings([{ ...wide, setBack: 3 }], { outline: wings }).told).toEqual([]);
  });
  test('one on a wall that is not there, or with a size that is none, is left out', () => {
    expect(withOpenings([{ face: 9 }]).told).toEqual([
      ['opening.face', ['openings', 0, 'face'], 'Opening 1'],
    ]);
    expect(withOpenings([{ width: 0 }]).told).toEqual([
      ['opening.size', ['openings', 0, 'width'], 'Opening 1'],
    ]);
    expect(withOpenings([{ setBack: -1 }]).told).toEqual([
      ['opening.size', ['openings', 0, 'setBack'], 'Opening 1'],
    ]);
    expect(withOpenings([{ sill: Number.NaN }]).told).toEqual([
      ['size.number', ['openings', 0, 'sill'], 'Opening 1'],
    ]);
  });
  test('is measured from the corner as drawn, on an outline drawn clockwise too', () => {
    const outline = [...rectangle(10, 6)].reverse();
    // Edge 2 runs from (10, 0) to (0, 0)… drawn the other way, so 2 m from its start is x = 8.
    const { solids, told } = withOpenings([{ face: 2 }], { outline });
    expect(told).toEqual([]);
    const xs = [...(solids[0]?.positions ?? [])].filter((_, k, all) => k % 3 === 0 && all[k + 1] === 0.1);
    expect(new Set(xs.map((x) => Math.round(x * 1e9) / 1e9))).toEqual(new Set([7, 8]));
  });
});

describe('openings of a hollow building', () => {
  const hollow = { wallThickness: 0.3 };
  const rooms = 9.4 * 5.4 * 2.8;
  test('go through, and a closed leaf stands in them at its set-back', () => {
    const { solids, volume, told } = withOpenings([{ setBack: 0.1, passage: 'screen' }], hollow);
    expect(told).toEqual([]);
    expect(volume).toBeCloseTo(180 - rooms - 2 * 0.3, 6);
    const leaf = solids[1];
    expect(leaf).toMatchObject({
      id: 'house.o0',
      structure: 'house',
      name: 'House, Opening 1',
      passage: 'screen',
    });
    const ys = [...(leaf?.positions ?? [])].filter((_, k) => k % 3 === 1);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.15, 9)]);
  });
  test('are free with an open leaf or as an archway, and glass with a glazed one', () => {
    expect(withOpenings([{ leaf: 'open' }], hollow).solids).toHaveLength(1);
    expect(withOpenings([{ kind: 'archway' }], hollow).solids).toHaveLength(1);
    expect(withOpenings([{ leaf: 'glazed' }], hollow).solids[1]?.passage).toBe('clear');
  });
  test('are left out near a corner, where there is no plain wall behind', () => {
    expect(withOpenings([{ along: 0.2 }], hollow).told).toEqual([
      ['opening.corner', ['openings', 0, 'along'], 'Opening 1'],
    ]);
    expect(withOpenings([{ along: 0.32 }], hollow).told).toEqual([]);
  });
  test('end below the ceiling', () => {
    expect(withOpenings([{ height: 2.85 }], hollow).told).toMatchObject([['opening.high', {}, 'Opening 1']]);
  });
  test('pull a leaf set back too far to the inner face, with a note', () => {
    const { told, solids } = withOpenings([{ setBack: 0.4 }], hollow);
    expect(told).toEqual([['opening.set-back', ['openings', 0, 'setBack'], 'Opening 1']]);
    expect(solids).toHaveLength(2);
  });
  test('are recesses where the walls leave no room, with a note', () => {
    const { told, volume } = withOpenings([{ setBack: 0.1 }], { wallThickness: 4 });
    expect(told).toEqual([['building.block-instead', ['wallThickness'], 'House']]);
    expect(volume).toBeCloseTo(180 - 0.2, 9);
    expect(withOpenings([], { wallThickness: 0 }).told).toMatchObject([
      ['building.block-instead', {}, 'House'],
    ]);
    expect(withOpenings([], { wallThickness: 0.2, height: 0.2 }).told).toMatchObject([
      ['building.block-instead', ['height'], 'House'],
    ]);
  });
});

describe('openings of a barrier', () => {
  const gate = (change: Partial<Opening> = {}) =>
    openingWith({ id: 'gate', name: 'Gate', kind: 'gate', height: 1.8, ...change });
  const made = (...openings: Opening[]) => {
    const { solids, faults } = solidsOf(barrierWith({ openings }));
    expect(solids.flatMap((solid) => meshFaults(solid))).toEqual([]);
    return { solids, told: faults.map(({ code, path, subject }) => [code, path, subject]) };
  };
  const bounds = (positions: Float64Array | undefined, axis: number) => {
    const values = [...(positions ?? [])].filter((_, k) => k % 3 === axis);
    return [Math.min(...values), Math.max(...values)].map((v) => Math.round(v * 1e9) / 1e9);
  };
  test('a closed leaf fills its gap, 0.05 m thick on the line', () => {
    const leaf = made(gate()).solids[1];
    expect([0, 1, 2].map((axis) => bounds(leaf?.positions, axis))).toEqual([
      [2, 3],
      [-0.025, 0.025],
      [0, 1.8],
    ]);
  });
  test('an open leaf stands a quarter turn to the left of its first jamb', () => {
    const leaf = made(gate({ leaf: 'open' })).solids[1];
    expect([0, 1, 2].map((axis) => bounds(leaf?.positions, axis))).toEqual([
      [2, 2.05],
      [0, 1],
      [0, 1.8],
    ]);
  });
  test('a glazed leaf is clear; an archway has none', () => {
    expect(made(gate({ leaf: 'glazed' })).solids[1]?.passage).toBe('clear');
    expect(made(gate({ kind: 'archway' })).solids).toHaveLength(1);
  });
  test('two gates side by side make one gap with two leaves', () => {
    const { solids, told } = made(gate(), gate({ id: 'other', name: 'Other gate', along: 3 }));
    expect(told).toEqual([]);
    expect(solids.map(({ id }) => id)).toEqual(['fence', 'fence.gate', 'fence.other']);
  });
  test('a gate may take a whole stretch, or begin at a corner', () => {
    const whole = made(gate({ along: 0, width: 8 }));
    expect(whole.told).toEqual([]);
    expect(bounds(whole.solids[0]?.positions, 0)).toEqual([7.9, 8.1]);
    expect(made(gate({ face: 1, along: 0 })).told).toEqual([]);
  });
  test('an opening lower than the barrier needs plain wall around it', () => {
    const low = { height: 1, width: 1 };
    expect(made(gate({ ...low, face: 1, along: 0.02 })).told).toEqual([
      ['opening.corner', ['openings', 0, 'along'], 'Gate'],
    ]);
    expect(made(gate({ ...low, face: 1, along: 0.02 })).solids).toHaveLength(1);
    expect(made(gate({ ...low, face: 1, along: 0.12 })).told).toEqual([]);
  });
  test('openings that overlap, or lie beside their stretch, are left out', () => {
    expect(made(gate(), gate({ name: 'Second', along: 2.5 })).told).toEqual([
      ['opening.overlaps', ['openings', 1, 'along'], 'Second'],
    ]);
    expect(made(gate(), gate({ name: 'Low', along: 2.5, height: 1 })).told).toEqual([
      ['opening.overlaps', ['openings', 1, 'along'], 'Low'],
    ]);
    expect(made(gate({ along: 7.5 })).told).toEqual([['opening.outside', ['openings', 0, 'along'], 'Gate']]);
    expect(made(gate({ face: 2 })).told).toEqual([['opening.face', ['openings', 0, 'face'], 'Gate']]);
  });
  test('openings may take a barrier away altogether, and leave its leaves', () => {
    const { solids, told } = made(
      gate({ along: 0, width: 8 }),
      gate({ id: 'b', face: 1, along: 0, width: 5 }),
    );
    expect(told).toEqual([]);
    expect(solids.map(({ id }) => id)).toEqual(['fence.gate', 'fence.b']);
  });
});
