import { describe, expect, test } from 'vitest';
import { addSituation, newSituation } from '../../../src/plan/commands/addSituation.ts';
import { deleteThing } from '../../../src/plan/commands/deleteThing.ts';
import { renameThing } from '../../../src/plan/commands/renameThing.ts';
import { setSituation } from '../../../src/plan/commands/setSituation.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { situationIn } from '../../../src/plan/situations.ts';
import { planText } from '../../../src/plan/write.ts';
import { wholePlan } from '../wholePlan.ts';

const withOne = (): Plan => {
  const plan = wholePlan();
  return addSituation(plan, newSituation(plan, 'Winter night'));
};

describe('a new situation', () => {
  test('leaves all as it is drawn, last in order', () => {
    const plan = withOne();
    expect(plan.situationOrder).toEqual(['as-drawn', 'S1']);
    expect(plan.situations['S1']).toEqual({
      id: 'S1',
      name: 'Winter night',
      night: false,
      away: [],
      leaves: {},
      treesInLeaf: null,
    });
    expect(readPlan(planText(plan))).toMatchObject({ ok: true, notes: [] });
  });

  test('takes no id that is taken', () => {
    const plan = withOne();
    expect(newSituation(plan, 'Other').id).toBe('S2');
    expect(() => addSituation(plan, { ...newSituation(plan, 'Other'), id: 'house' })).toThrow(RangeError);
  });
});

describe('setSituation', () => {
  test('switches night, trees and the name', () => {
    const next = setSituation(withOne(), 'S1', { name: 'Night', night: true, treesInLeaf: false });
    expect(next.situations['S1']).toMatchObject({ name: 'Night', night: true, treesInLeaf: false });
    expect(setSituation(next, 'S1', { treesInLeaf: null }).situations['S1']?.treesInLeaf).toBeNull();
  });

  test('takes a structure away and brings it back', () => {
    const plan = withOne();
    const gone = setSituation(plan, 'S1', { away: { structure: 'hedge', gone: true } });
    expect(gone.situations['S1']?.away).toEqual(['hedge']);
    expect(setSituation(gone, 'S1', { away: { structure: 'hedge', gone: true } })).toBe(gone);
    expect(setSituation(gone, 'S1', { away: { structure: 'hedge', gone: false } })).toEqual(plan);
  });

  test('stands a leaf otherwise and as drawn again', () => {
    const plan = withOne();
    const open = setSituation(plan, 'S1', { leaf: { opening: 'door', stands: 'open' } });
    expect(open.situations['S1']?.leaves).toEqual({ door: 'open' });
    expect(setSituation(open, 'S1', { leaf: { opening: 'door', stands: 'open' } })).toBe(open);
    expect(setSituation(open, 'S1', { leaf: { opening: 'door', stands: null } })).toEqual(plan);
    expect(setSituation(plan, 'S1', { leaf: { opening: 'door', stands: null } })).toBe(plan);
  });

  test('that changes nothing is the very plan', () => {
    const plan = withOne();
    expect(setSituation(plan, 'S1', { night: false, treesInLeaf: null })).toBe(plan);
  });

  test.each([
    ['S9', { night: true }],
    ['valueOf', { night: true }],
    ['S1', { away: { structure: 'shed', gone: true } }],
    ['S1', { leaf: { opening: 'hatch', stands: 'open' } }],
  ] as const)('refuses what is not there: %s %j', (id, change) => {
    expect(() => setSituation(withOne(), id, change)).toThrow(RangeError);
  });
});

test('a situation is renamed and deleted like any thing', () => {
  const plan = withOne();
  expect(renameThing(plan, { kind: 'situation', id: 'S1' }, ' Dusk\n').situations['S1']?.name).toBe('Dusk');
  expect(deleteThing(plan, { kind: 'situation', id: 'S1' }, {})).toEqual(wholePlan());
});

test('a situation that is not there is the plan as drawn', () => {
  const plan = withOne();
  expect(situationIn(plan, 'S1')).toBe(plan.situations['S1']);
  expect([situationIn(plan, null), situationIn(plan, 'S9'), situationIn(plan, 'valueOf')]).toEqual([
    null,
    null,
    null,
  ]);
});
