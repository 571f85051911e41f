import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { windingNumber } from '../../src/model/inside.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Barrier } from '../../src/model/structure.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { barrierWith, openingWith } from './sampleStructures.ts';

const made = (change: Partial<Barrier>) => {
  const { solids, faults } = solidsOf(barrierWith({ height: 1, ...change }));
  expect(solids.flatMap((solid) => meshFaults(solid))).toEqual([]);
  return { solids, volume: solids[0] ? volumeOf(solids[0]) : 0, faults };
};
const told = (change: Partial<Barrier>) =>
  made(change).faults.map(({ code, path, given }) => [code, path, given]);

describe('a barrier', () => {
  test('ends square at its first and last corner', () => {
    expect(
      made({
        line: [
          [0, 0],
          [3, 4],
        ],
      }).volume,
    ).toBeCloseTo(5 * 0.2, 12);
  });
  test('keeps its thickness through a mitre, so that its volume is that of its line', () => {
    // What the outer side gains at a turn, the inner side loses.
    const line: Vec2[] = [
      [0, 0],
      [4, 0],
      [6, 3],
      [9, 3],
      [9, -2],
    ];
    const length = 4 + Math.hypot(2, 3) + 3 + 5;
    expect(made({ line }).volume).toBeCloseTo(length * 0.2, 9);
  });
  test('bevels a turn whose mitre would reach further than twice its thickness', () => {
    const reach = (degrees: number): number => {
      const rad = (degrees * Math.PI) / 180;
      const line: Vec2[] = [
        [-5, 0],
        [0, 0],
        [5 * Math.cos(rad), 5 * Math.sin(rad)],
      ];
      const { solids } = made({ line });
      const xs = [...(solids[0]?.positions ?? [])].filter((_, k) => k % 3 === 0);
      return Math.max(...xs);
    };
    // Half the turn α: the mitre stands out 0.1 / cos(α) from the corner, to the limit of 0.4.
    expect(reach(150)).toBeCloseTo(
      (0.1 / Math.cos((75 * Math.PI) / 180)) * Math.sin((75 * Math.PI) / 180),
      9,
    );
    expect(reach(160)).toBeLessThan(0.11);
  });
  const hairpin: Vec2[] = [
    [0, 0],
    [3, 0],
    [3, 0.2],
    [0, 0.2],
  ];
  test('too thick for its turns is the union of its runs', () => {
    const { volume, faults } = made({ line: hairpin, thickness: 1 });
    expect(faults).toEqual([]);
    expect(volume).toBeCloseTo(3.5 * 1.2, 6);
  });
  test('too thick for its turns keeps its full gates, and says which low ones it lost', () => {
    const openings = [
      openingWith({ id: 'a', name: 'Tall', along: 1, height: 1 }),
      openingWith({ id: 'b', name: 'Low', face: 2, along: 1.5, height: 0.5 }),
    ];
    const { solids, faults, volume } = made({ line: hairpin, thickness: 1, openings });
    expect(solids.map(({ id }) => id)).toEqual(['fence', 'fence.a']);
    expect(faults).toMatchObject([
      { code: 'opening.corner', subject: 'Low', path: ['openings', 1, 'along'] },
    ]);
    // The other arm stands across all but the lower 0.2 m of the gate's gap over ground.
    expect(volume).toBeCloseTo(3.5 * 1.2 - 0.2, 6);
  });
  test('runs parted by a gate that overlap count once', () => {
    // The end comes back to within half a metre of the first run, which is 0.8 m thick.
    const line: Vec2[] = [
      [0, 0],
      [10, 0],
      [10, 3],
      [2, 0.5],
    ];
    const gate = openingWith({ kind: 'archway', along: 4, width: 2, height: 1 });
    const { volume, solids } = made({ line, thickness: 0.8, openings: [gate] });
    const apart = (10 - 2 + 3 + Math.hypot(8, 2.5)) * 0.8;
    expect(volume).toBeLessThan(apart - 0.1);
    expect(volume).toBeGreaterThan(apart - 1);
    expect(solids[0] && windingNumber(solids[0], [2, 0.3, 0.5])).toBeCloseTo(1, 9);
  });
  test('a run that lies wholly within another counts once', () => {
    // Parted by a gate, the last bit of the line stands within the thickness of the first stretch.
    const line: Vec2[] = [
      [0, 0],
      [10, 0],
      [10, 3],
      [5, 3],
      [5, 0.15],
    ];
    const gate = openingWith({ kind: 'archway', face: 3, along: 1, width: 1.65, height: 1 });
    const { solids } = made({ line, thickness: 0.8, openings: [gate] });
    expect(solids[0] && windingNumber(solids[0], [5, 0.25, 0.5])).toBeCloseTo(1, 9);
  });
  test('names the corners between which its line crosses or touches itself', () => {
    expect(
      told({
        line: [
          [0, 0],
          [4, 0],
          [4, 3],
          [2, -3],
        ],
      }),
    ).toEqual([['barrier.crosses', ['line', 0], 'corners 1 to 2 and corners 3 to 4']]);
    expect(
      told({
        line: [
          [0, 0],
          [4, 0],
          [4, 3],
          [2, 0],
        ],
      }),
    ).toEqual([['barrier.touches', ['line', 3], 'corner 4 and corners 1 to 2']]);
    expect(
      told({
        line: [
          [0, 0],
          [4, 0],
          [2, 0],
        ],
      }),
    ).toEqual([['barrier.touches', ['line', 2], 'corner 3 and corners 1 to 2']]);
  });
  test('names a first corner that its second stretch runs back over', () => {
    const line: Vec2[] = [
      [2, 0],
      [4, 0],
      [0, 0],
    ];
    expect(told({ line })).toEqual([['barrier.touches', ['line', 0], 'corner 1 and corners 2 to 3']]);
  });
  test('drops a repeated corner with a note, and keeps the numbers of its stretches', () => {
    const line: Vec2[] = [
      [0, 0],
      [8, 0],
      [8, 0],
      [8, 5],
    ];
    const openings = [openingWith({ face: 2, along: 1, kind: 'archway', height: 1 })];
    const { faults, volume } = made({ line, openings });
    expect(faults).toMatchObject([{ code: 'barrier.repeated', path: ['line', 2], given: 'corner 3' }]);
    expect(volume).toBeCloseTo(12 * 0.2, 9);
  });
  test('needs two corners, or three to close', () => {
    expect(told({ line: [[0, 0]] })).toEqual([['barrier.corners', ['line'], 1]]);
    expect(
      told({
        line: [
          [0, 0],
          [1, 0],
        ],
        closed: true,
      }),
    ).toEqual([['barrier.corners', ['line'], 2]]);
  });
});
