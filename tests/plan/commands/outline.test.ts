import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { ribbon } from '../../../src/model/ribbon.ts';
import type { Building } from '../../../src/model/structure.ts';
import { joinCorner } from '../../../src/plan/commands/joinCorner.ts';
import { setCorner } from '../../../src/plan/commands/setCorner.ts';
import { setOutline } from '../../../src/plan/commands/setOutline.ts';
import { splitEdge } from '../../../src/plan/commands/splitEdge.ts';
import { resizeStructure } from '../../../src/plan/commands/setStructure.ts';
import { faultText } from '../../../src/plan/faultText.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { barrierWith, buildingWith, openingWith, rectangle } from '../../model/sampleStructures.ts';
import { bodyOf, eyesOf, randomPlan, troubleOf } from '../randomPlan.ts';
import { bare, cameraOn, wholePlan } from '../wholePlan.ts';
import { codesOf, cornersAt, edgesOf, openingAt, planWith, valueOf } from './outlines.ts';

const seeds = Array.from({ length: trials(200, 3000) }, (_, index) => 52_000 + index);

describe('a corner put into an edge and taken out again', () => {
  // The oracle is the scene itself: a corner on a straight run changes nothing that can be seen.
  test.each(seeds)('leaves every wall, opening and camera where it was (seed %i)', (seed) => {
    const chance = chanceFrom(seed);
    const plan = randomPlan(chance);
    const [structure] = Object.values(plan.structures);
    if (!structure || edgesOf(structure) === 0) return;
    const edge = chance.whole(0, edgesOf(structure) - 1);
    const split = splitEdge(plan, structure.id, edge, chance.between(0.05, 0.95));
    expect(codesOf(split).filter((code) => !code.startsWith('edit.'))).toEqual([]);
    if (!split.ok) return;
    const next = split.value.structures[structure.id] ?? structure;
    // A fence too thick for its turns has other sides once it is cut elsewhere.
    const isThick = [structure, next].some(
      (s) => s.kind === 'barrier' && ribbon(s.line, s.closed, s.thickness) === null,
    );
    if (isThick) return;
    expect(bodyOf(next)).toHaveLength(bodyOf(structure).length);
    // Posts of a canopy stand at its first corners, of which there is one more.
    expect(structure.kind === 'canopy' ? 0 : unlike(bodyOf(next), bodyOf(structure))).toBeLessThan(1e-5);
    expectEyes(split.value, plan);
    expect(troubleOf(split.value)).toEqual(troubleOf(plan));
    const back = valueOf(joinCorner(split.value, structure.id, edge + 1));
    expect(cornersAt(back, structure.id)).toEqual(cornersAt(plan, structure.id));
    expectEyes(back, plan);
  });
});

/** The greatest difference between two bodies, in shares of what is large. */
const unlike = (a: readonly number[], b: readonly number[]): number =>
  Math.max(0, ...a.map((value, k) => Math.abs(value - (b[k] ?? Infinity)) / Math.max(1, Math.abs(value))));

function expectEyes(plan: Plan, before: Plan): void {
  const [was, is] = [eyesOf(before), eyesOf(plan)];
  expect(Object.keys(is)).toEqual(Object.keys(was));
  for (const [id, eye] of Object.entries(was))
    eye.forEach((value, axis) => expect(is[id]?.[axis]).toBeCloseTo(value, 6));
}

describe('splitEdge', () => {
  test('numbers openings, points, pictures and mounts after the new corner anew', () => {
    const plan = wholePlan();
    const next = valueOf(splitEdge(plan, 'house', 0, 0.5));
    expect(cornersAt(next, 'house')).toHaveLength(5);
    expect(openingAt(next)).toMatchObject({ face: 0, along: 2 });
    expect(next.structures['house']).toMatchObject({ services: [{ face: 1, along: 2 }] });
    // C1 is 2 m from the end of the south wall, and is so still.
    expect(next.cameras['C1']?.mount).toMatchObject({ face: 1, corner: 'end', distance: 2 });
    expect(next.pictures['face']?.use).toMatchObject({ face: 0, along: 0 });
  });

  test('a camera whose corner is gone from its face is measured from the other', () => {
    const mount = { kind: 'flush', ...bare, host: 'house', face: 0, height: 2.5, standOff: 0.1 } as const;
    const plan = planWith(buildingWith({}), {
      C1: cameraOn('C1', { ...mount, corner: 'end', distance: 8 }),
      C2: cameraOn('C2', { ...mount, corner: 'start', distance: 9 }),
    });
    const next = valueOf(splitEdge(plan, 'house', 0, 0.5));
    expect(next.cameras['C1']?.mount).toMatchObject({ face: 0, corner: 'start', distance: 2 });
    expect(next.cameras['C2']?.mount).toMatchObject({ face: 1, corner: 'end', distance: 1 });
  });

  test('refuses a corner in an opening, and one near another', () => {
    expect(codesOf(splitEdge(wholePlan(), 'house', 0, 0.3))).toEqual(['edit.cornerThere']);
    expect(codesOf(splitEdge(wholePlan(), 'house', 0, 0.001))).toEqual(['edit.splitEnd']);
    expect(codesOf(splitEdge(wholePlan(), 'house', 0, Number.NaN))).toEqual(['edit.splitEnd']);
  });

  test('the right-hand sides of a fence count on behind its edges', () => {
    const fence = barrierWith({});
    const mount = {
      kind: 'flush',
      ...bare,
      host: 'fence',
      corner: 'start',
      distance: 1,
      height: 1,
      standOff: 0.1,
    } as const;
    const plan = planWith(fence, { C1: cameraOn('C1', { ...mount, face: 3 }) });
    const next = valueOf(splitEdge(plan, 'fence', 0, 0.5));
    expect(next.cameras['C1']?.mount).toMatchObject({ face: 5, distance: 1 });
  });

  test('an unknown edge is a mistake of the program', () => {
    expect(() => splitEdge(wholePlan(), 'house', 4, 0.5)).toThrow(RangeError);
    expect(() => splitEdge(wholePlan(), 'nothing', 0, 0.5)).toThrow(RangeError);
  });
});

describe('joinCorner', () => {
  test('keeps three corners of an outline and two of a line', () => {
    const triangle = planWith(
      buildingWith({
        outline: [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
      }),
    );
    expect(codesOf(joinCorner(triangle, 'house', 0))).toEqual(['edit.corners']);
    expect(codesOf(joinCorner(wholePlan(), 'hedge', 1))).toEqual(['edit.corners']);
  });

  test('an opening keeps its distance to the corner that stays', () => {
    const outline: Vec2[] = [
      [0, 0],
      [5, 0],
      [8, 0.5],
      [8, 6],
      [0, 6],
    ];
    const plan = planWith(buildingWith({ outline, openings: [openingWith({ face: 1, along: 1 })] }));
    const next = valueOf(joinCorner(plan, 'house', 1));
    const [edge, whole] = [Math.hypot(3, 0.5), Math.hypot(8, 0.5)];
    expect(openingAt(next)?.face).toBe(0);
    expect(whole - (openingAt(next)?.along ?? 0)).toBeCloseTo(edge - 1, 9);
  });

  test('refuses where a camera is mounted around the corner, or the outline would cross itself', () => {
    const mount = { kind: 'corner', ...bare, host: 'house', face: 2, height: 2.5, reach: 0.2 } as const;
    const plan = planWith(buildingWith({}), { C1: cameraOn('C1', mount) });
    const refused = joinCorner(plan, 'house', 2);
    expect(codesOf(refused)).toEqual(['edit.cornerCamera']);
    expect(refused.ok ? '' : faultText(refused.faults[0] ?? { code: '', path: [] })).toBe(
      'The camera “C1” is mounted around this corner. Fix it to a wall first.',
    );
    expect(valueOf(joinCorner(plan, 'house', 0)).cameras['C1']?.mount).toMatchObject({ face: 1 });
  });
});

describe('setCorner', () => {
  test('moves one corner; the door keeps its distance to the first corner of its wall', () => {
    const next = valueOf(setCorner(wholePlan(), 'house', 0, [-1, 0]));
    expect(cornersAt(next, 'house')[0]).toEqual([-1, 0]);
    expect(openingAt(next)).toMatchObject({ face: 0, along: 2 });
  });

  test('the place that it has already is no change, and a mark is one', () => {
    const plan = wholePlan();
    expect(valueOf(setCorner(plan, 'house', 0, [0, 0]))).toBe(plan);
    expect(valueOf(setCorner(plan, 'house', 0, [0, 0], 'mapped')).structures['house']?.got).toMatchObject({
      outline: 'mapped',
    });
  });

  test('on its neighbour it is taken out', () => {
    const next = valueOf(setCorner(wholePlan(), 'house', 2, [8, 0]));
    expect(cornersAt(next, 'house')).toEqual([
      [0, 0],
      [8, 0],
      [0, 6],
    ]);
  });

  test('refuses an outline that crosses itself, and says which corners', () => {
    const refused = setCorner(wholePlan(), 'house', 2, [4, -3]);
    expect(codesOf(refused)).toEqual(['edit.crosses']);
    expect(refused.ok ? '' : faultText(refused.faults[0] ?? { code: '', path: [] })).toMatch(
      /^“House” would cross itself: corners 1 to 2 and corners \d to \d\. Move the corner elsewhere/,
    );
  });

  test('stops where the door needs its wall, and says how much', () => {
    const refused = setCorner(wholePlan(), 'house', 1, [2.7, 0]);
    expect(codesOf(refused)).toContain('edit.stopsShort');
    expect(refused.ok ? [] : refused.faults.map(faultText)).toContain(
      'Stops here: “Door” needs 2.91 m of wall. Narrow it or move it first.',
    );
  });

  test('a triangle turned over keeps its door and its camera on the same wall', () => {
    const outline: Vec2[] = [
      [0, 0],
      [8, 0],
      [4, 5],
    ];
    const mount = {
      kind: 'flush',
      ...bare,
      host: 'house',
      face: 0,
      corner: 'end',
      distance: 2,
      height: 2,
      standOff: 0.1,
    } as const;
    const plan = planWith(buildingWith({ outline, openings: [openingWith({ face: 0, along: 2 })] }), {
      C1: cameraOn('C1', mount),
    });
    const next = valueOf(setCorner(plan, 'house', 2, [4, -5]));
    expect(cornersAt(next, 'house')).toEqual([
      [0, 0],
      [4, -5],
      [8, 0],
    ]);
    expect(openingAt(next)).toMatchObject({ face: 2, along: 5 });
    // Still 2 m from (8, 0), now on the north.
    expect(eyesOf(next)['C1']?.[0]).toBeCloseTo(6, 9);
    expect(eyesOf(next)['C1']?.[1]).toBeCloseTo(0.1, 9);
  });

  test('works on patches, whose plane stays, and on the boundary', () => {
    const plan: Plan = { ...wholePlan(), boundary: rectangle(10, 5) };
    expect(valueOf(setCorner(plan, 'boundary', 2, [12, 7])).boundary?.[2]).toEqual([12, 7]);
    const moved = valueOf(setCorner(plan, 'drive', 0, [9, -6])).patches['drive'];
    // Its plane rises 6° to the north: 1 m south it is tan 6° lower.
    expect(moved?.base).toBeCloseTo(-Math.tan(Math.PI / 30), 12);
    expect(codesOf(setCorner(plan, 'boundary', 0, [200_000, 0]))).toContain('coordinate.far');
  });
});

describe('setOutline', () => {
  test('with as many corners what is on the walls goes along', () => {
    const next = valueOf(setOutline(wholePlan(), 'house', rectangle(9, 5, [1, 1]), 'mapped'));
    expect(openingAt(next)).toMatchObject({ face: 0, along: 2 });
    expect(next.structures['house']?.got).toMatchObject({ outline: 'mapped' });
  });

  test('with other corners walls are found again where both their corners stand', () => {
    const next = valueOf(
      setOutline(wholePlan(), 'house', [
        [-1, 3],
        [0, 0],
        [8, 0],
        [8, 6],
        [0, 6],
      ]),
    );
    expect(openingAt(next)).toMatchObject({ face: 1, along: 2 });
    expect(next.cameras['C1']?.mount).toMatchObject({ face: 1, corner: 'end', distance: 2 });
    const gone = setOutline(wholePlan(), 'house', [
      [0, 1],
      [8, 1],
      [8, 6],
      [4, 7],
      [0, 6],
    ]);
    expect(codesOf(gone)).toEqual(['edit.wallGone', 'edit.wallGone', 'edit.wallGone', 'edit.wallGone']);
  });
});

describe('resizeStructure', () => {
  test('stops where the door needs its height, and where a camera would stand over the wall', () => {
    const low = resizeStructure(wholePlan(), 'house', { height: 1.9, roof: { kind: 'flat', overhang: 0 } });
    expect(codesOf(low)).toEqual(expect.arrayContaining(['edit.stopsLow', 'edit.cameraHeight']));
    const house = valueOf(resizeStructure(wholePlan(), 'house', { height: 3.4 })).structures['house'];
    expect((house as Building).height).toBe(3.4);
  });
});
