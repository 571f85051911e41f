import { describe, expect, test } from 'vitest';
import { addStructures } from '../../../src/plan/commands/addStructures.ts';
import { deleteThing } from '../../../src/plan/commands/deleteThing.ts';
import { markThing } from '../../../src/plan/commands/markThing.ts';
import { cleanName, renamePlan, renameThing } from '../../../src/plan/commands/renameThing.ts';
import { setBoundary } from '../../../src/plan/commands/setBoundary.ts';
import { setSettings } from '../../../src/plan/commands/setSettings.ts';
import { setStructureSize } from '../../../src/plan/commands/setStructureSize.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { house, wholePlan } from '../wholePlan.ts';

describe('deleteThing', () => {
  test('leaves the cameras of a deleted structure loose where they are', () => {
    const plan = wholePlan();
    const next = deleteThing(plan, { kind: 'structure', id: 'house' }, { C1: [6, -0.3, 2.7], C2: [9, 9, 9] });
    expect(next.structureOrder).toEqual(['hedge']);
    expect(next.structures).not.toHaveProperty('house');
    expect(next.cameras['C1']?.mount).toEqual({ kind: 'loose', eye: [6, -0.3, 2.7] });
    expect(next.cameras['C2']).toBe(plan.cameras['C2']);
    expect(next.situations).toBe(plan.situations);
  });

  test('a camera whose lens was nowhere keeps its mount', () => {
    const plan = wholePlan();
    expect(deleteThing(plan, { kind: 'structure', id: 'house' }, {}).cameras).toBe(plan.cameras);
  });

  test('situations forget what is gone', () => {
    const plan = wholePlan();
    const drawn = plan.situations['as-drawn'];
    if (!drawn) throw new Error('no situation');
    const busy: Plan = {
      ...plan,
      situations: { 'as-drawn': { ...drawn, away: ['house', 'hedge'], leaves: { door: 'open' } } },
    };
    const next = deleteThing(busy, { kind: 'structure', id: 'house' }, {});
    expect(next.situations['as-drawn']).toMatchObject({ away: ['hedge'], leaves: {} });
    expect(readPlan(planText(next)).ok).toBe(true);
  });

  test('takes a camera out', () => {
    const next = deleteThing(wholePlan(), { kind: 'camera', id: 'C1' }, {});
    expect(next.cameraOrder).toEqual(['C2']);
    expect(Object.keys(next.cameras)).toEqual(['C2']);
  });

  test('refuses what is not there', () => {
    expect(() => deleteThing(wholePlan(), { kind: 'camera', id: 'house' }, {})).toThrow(RangeError);
    expect(() => deleteThing(wholePlan(), { kind: 'structure', id: 'valueOf' }, {})).toThrow(RangeError);
  });
});

describe('names', () => {
  test('are one line of printable text, blanks around them gone', () => {
    expect(cleanName('  South\nwall \u202E')).toBe('South wall');
    expect(cleanName('é'.repeat(200))).toHaveLength(120);
    expect(cleanName('🏠'.repeat(100))).toBe('🏠'.repeat(60));
  });

  test('HTML stays text', () => {
    expect(renameThing(wholePlan(), { kind: 'camera', id: 'C1' }, '<b>C</b>').cameras['C1']?.name).toBe(
      '<b>C</b>',
    );
  });

  test('an empty one changes nothing', () => {
    const plan = wholePlan();
    expect(renameThing(plan, { kind: 'structure', id: 'house' }, ' \t')).toBe(plan);
    expect(renamePlan(plan, '')).toBe(plan);
    expect(renamePlan(plan, plan.name)).toBe(plan);
    expect(renamePlan(plan, 'Front').name).toBe('Front');
  });
});

test('markThing hides and locks', () => {
  const next = markThing(wholePlan(), { kind: 'structure', id: 'hedge' }, { hidden: true, locked: true });
  expect(next.structures['hedge']).toMatchObject({ hidden: true, locked: true, name: 'Hedge' });
});

describe('setStructureSize', () => {
  test('a size that is typed counts as measured, the others stay as they were got', () => {
    const next = setStructureSize(wholePlan(), 'house', { height: 2.7 }).structures['house'];
    expect(next).toMatchObject({
      height: 2.7,
      got: { height: 'measured', roof: 'guessed', outline: 'measured' },
    });
  });

  test('a roof changes in part', () => {
    const next = setStructureSize(wholePlan(), 'house', { roof: { pitch: 30 } }, 'mapped').structures[
      'house'
    ];
    expect(next).toMatchObject({
      roof: { kind: 'gable', pitch: 30, overhang: 0.4 },
      got: { roof: 'mapped', height: 'mapped' },
    });
  });

  test('the same size is no change', () => {
    const plan = wholePlan();
    expect(setStructureSize(plan, 'house', { height: 3, roof: { pitch: 40 } })).toBe(plan);
  });

  test('refuses a size that the kind lacks, and no number', () => {
    expect(() => setStructureSize(wholePlan(), 'hedge', { crownRadius: 2 })).toThrow(
      'a barrier has no crownRadius',
    );
    expect(() => setStructureSize(wholePlan(), 'hedge', { height: NaN })).toThrow(RangeError);
  });
});

test('setBoundary and setSettings change their part alone', () => {
  const plan = wholePlan();
  const ring = [
    [0, 0],
    [9, 0],
    [9, 9],
  ] as const;
  expect(setBoundary(plan, ring)).toEqual({ ...plan, boundary: ring });
  expect(setBoundary(plan, null)).toBe(plan);
  expect(setSettings(plan, { stature: 1.8 }).settings).toEqual({ ...plan.settings, stature: 1.8 });
  expect(setSettings(plan, { stature: 1.7 })).toBe(plan);
});

describe('addStructures', () => {
  const origin = { latitude: 1, longitude: 2, trueNorth: 0 };

  test('ids that are taken give way, openings included', () => {
    const next = addStructures(wholePlan(), { structures: [house], origin, credits: ['© Somebody'] });
    expect(next.structureOrder).toEqual(['house', 'hedge', 'house-1']);
    expect(next.structures['house-1']).toMatchObject({ id: 'house-1', openings: [{ id: 'door-1' }] });
    expect(next).toMatchObject({ origin, credits: ['© Somebody'] });
    expect(readPlan(planText(next))).toMatchObject({ ok: true, notes: [] });
  });

  test('a plan that has an origin keeps it, and credits stand once', () => {
    const once = addStructures(
      { ...wholePlan(), origin },
      { structures: [house], origin: { ...origin, latitude: 9 }, credits: ['©'] },
    );
    expect(once.origin).toBe(origin);
    expect(addStructures(once, { structures: [house], origin: null, credits: ['©'] }).credits).toEqual(['©']);
  });

  test('nothing added is no change', () => {
    const plan = wholePlan();
    expect(addStructures(plan, { structures: [], origin, credits: ['©'] })).toBe(plan);
  });
});
