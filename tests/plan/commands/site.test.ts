import { describe, expect, test } from 'vitest';
import { groundHeight, type Ground } from '../../../src/model/ground.ts';
import { addLamp, newLamp } from '../../../src/plan/commands/addLamp.ts';
import { addPatch, newPatch } from '../../../src/plan/commands/addPatch.ts';
import { deleteThing } from '../../../src/plan/commands/deleteThing.ts';
import { renameThing } from '../../../src/plan/commands/renameThing.ts';
import { setExposure } from '../../../src/plan/commands/setExposure.ts';
import { setGround } from '../../../src/plan/commands/setGround.ts';
import { setInfrared } from '../../../src/plan/commands/setInfrared.ts';
import { setLamp } from '../../../src/plan/commands/setLamp.ts';
import { setPatch } from '../../../src/plan/commands/setPatch.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { wholePlan } from '../wholePlan.ts';

const opens = (plan: ReturnType<typeof wholePlan>) =>
  expect(readPlan(planText(plan))).toEqual({ ok: true, value: plan, notes: [] });

describe('a lamp', () => {
  test('is added last in order, with a free name', () => {
    const plan = wholePlan();
    const next = addLamp(plan, newLamp(plan, [1, 2]));
    expect(next.lampOrder).toEqual(['porch-lamp', 'L1']);
    expect(next.lamps['L1']).toMatchObject({ name: 'L1', at: [1, 2], light: { kind: 'range' } });
    expect(newLamp(next, [0, 0]).id).toBe('L2');
    expect(() => addLamp(next, newLamp(plan, [1, 2]))).toThrow('L1 is taken');
    opens(next);
  });

  test('moves, and gets another light', () => {
    const light = { kind: 'range', range: 9 } as const;
    const next = setLamp(wholePlan(), 'porch-lamp', { at: [5, 5], height: 4, light });
    expect(next.lamps['porch-lamp']).toMatchObject({ at: [5, 5], height: 4, light, name: 'Porch lamp' });
    expect(setLamp(next, 'porch-lamp', { height: 4 })).toBe(next);
    expect(() => setLamp(next, 'L9', { height: 4 })).toThrow(RangeError);
    expect(() => setLamp(next, 'porch-lamp', { height: NaN })).toThrow(RangeError);
  });

  test('is renamed and deleted', () => {
    const thing = { kind: 'lamp', id: 'porch-lamp' } as const;
    expect(renameThing(wholePlan(), thing, 'Light').lamps['porch-lamp']?.name).toBe('Light');
    const without = deleteThing(wholePlan(), thing, {});
    expect([without.lamps, without.lampOrder]).toEqual([{}, []]);
    expect(() => deleteThing(without, thing, {})).toThrow(RangeError);
  });
});

describe('a patch', () => {
  const ring = [
    [0, 0],
    [4, 0],
    [4, 3],
  ] as const;

  test('begins level with the ground', () => {
    const plan = setGround(wholePlan(), { kind: 'flat', height: 0.2 });
    const next = addPatch(plan, newPatch(plan, ring));
    expect(next.patches['P1']).toMatchObject({ outline: ring, base: 0.2, pitch: 0 });
    expect(next.patchOrder).toEqual(['drive', 'P1']);
    expect(() => addPatch(next, newPatch(plan, ring))).toThrow('P1 is taken');
    opens(next);
  });

  test('is tilted, renamed and deleted', () => {
    const next = setPatch(wholePlan(), 'drive', { pitch: 9, rises: 45 });
    expect(next.patches['drive']).toMatchObject({ pitch: 9, rises: 45, base: 0 });
    expect(() => setPatch(next, 'ramp', { pitch: 9 })).toThrow(RangeError);
    const thing = { kind: 'patch', id: 'drive' } as const;
    expect(renameThing(next, thing, 'Ramp').patches['drive']?.name).toBe('Ramp');
    expect(deleteThing(next, thing, {})).toMatchObject({ patches: {}, patchOrder: [] });
  });
});

describe('infrared and exposure', () => {
  test('are given and taken away', () => {
    const lit = setInfrared(wholePlan(), 'C1', { range: 15, beam: 90 });
    expect(lit.cameras['C1']?.infrared).toEqual({ range: 15, beam: 90 });
    expect(setInfrared(lit, 'C1', { range: 15, beam: 90 })).toBe(lit);
    expect(setInfrared(lit, 'C1', null).cameras['C1']).toEqual(wholePlan().cameras['C1']);
    const slow = setExposure(lit, 'C1', { day: 4, night: 33 });
    expect(slow.cameras['C1']?.exposure).toEqual({ day: 4, night: 33 });
    expect(setExposure(slow, 'C1', { day: 4, night: 33 })).toBe(slow);
    opens(slow);
  });

  test('lie above 0, on cameras that are there', () => {
    const plan = wholePlan();
    expect(() => setInfrared(plan, 'C1', { range: 0, beam: 90 })).toThrow(RangeError);
    expect(() => setInfrared(plan, 'C1', { range: 9, beam: NaN })).toThrow(RangeError);
    expect(() => setExposure(plan, 'C1', { day: 4, night: -1 })).toThrow(RangeError);
    expect(() => setExposure(plan, 'C9', null)).toThrow(RangeError);
  });
});

describe('ground', () => {
  const spots: Ground = {
    kind: 'spots',
    spots: [
      { at: [0, 0], height: 3, got: 'measured' },
      { at: [9, 0], height: 2.5, got: 'mapped' },
      { at: [0, 9], height: 4, got: 'guessed' },
    ],
  };
  const grid: Ground = {
    kind: 'grid',
    left: 0,
    bottom: 0,
    cell: 2,
    columns: 2,
    rows: 2,
    heights: [null, -1, 7, null],
    got: 'mapped',
  };

  test.each([
    [{ kind: 'flat', height: 1.2 } as const, 1.2],
    [spots, 2.5],
    [grid, -1],
  ])('is replaced; its datum is the least height', (ground, datum) => {
    const next = setGround(wholePlan(), ground);
    expect(next.ground).toBe(ground);
    expect(groundHeight(next.ground)).toBe(datum);
    expect(setGround(next, ground)).toBe(next);
  });

  test('without one height for each cell is refused', () => {
    expect(() => setGround(wholePlan(), { ...grid, rows: 3 })).toThrow(RangeError);
  });
});
