import { describe, expect, test } from 'vitest';
import { addGroup, groupOf, ungroup, withGroups } from '../../../src/plan/commands/addGroup.ts';
import { alignThings } from '../../../src/plan/commands/alignThings.ts';
import { copyText, isCopyText, pasteText } from '../../../src/plan/commands/copyText.ts';
import { copyThings } from '../../../src/plan/commands/copyThings.ts';
import { deleteThings } from '../../../src/plan/commands/deleteThings.ts';
import { freshName } from '../../../src/plan/commands/freshName.ts';
import { reorder } from '../../../src/plan/commands/reorder.ts';
import type { Movable } from '../../../src/plan/commands/thing.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { eyesOf } from '../randomPlan.ts';
import { wholePlan } from '../wholePlan.ts';
import { codesOf, valueOf } from './outlines.ts';

const house: Movable = { kind: 'structure', id: 'house' };
const hedge: Movable = { kind: 'structure', id: 'hedge' };
const c1: Movable = { kind: 'camera', id: 'C1' };
const c2: Movable = { kind: 'camera', id: 'C2' };
const lamp: Movable = { kind: 'lamp', id: 'porch-lamp' };

describe('copyThings', () => {
  test('gives copies ids and names of their own, each step farther, with what is on their walls', () => {
    const plan = wholePlan();
    const { plan: next, things } = valueOf(copyThings(plan, [house, c1], [20, 0], 2));
    expect(next.structureOrder).toHaveLength(4);
    expect(Object.values(next.structures).map(({ name }) => name)).toEqual([
      'House',
      'Hedge',
      'House 2',
      'House 3',
    ]);
    expect(things.map(({ kind }) => kind)).toEqual(['structure', 'camera', 'structure', 'camera']);
    const [first] = things;
    const copy = first?.kind === 'structure' ? next.structures[first.id] : undefined;
    expect(copy).toMatchObject({ outline: { 0: [20, 0] }, openings: [{ name: 'Door', along: 2 }] });
    const eyes = eyesOf(next);
    expect(Object.keys(eyes)).toEqual(['C1', 'C2', 'C3', 'C4']);
    expect(eyes['C4']?.[0]).toBeCloseTo((eyes['C1']?.[0] ?? 0) + 40, 9);
    expect(Object.values(next.pictures).map(({ use }) => use.kind)).toEqual([
      'site',
      'wall',
      'photo',
      'wall',
      'wall',
    ]);
    expect(readPlan(planText(next))).toMatchObject({ ok: true, notes: [] });
  });

  test('a camera copied alone goes along its wall, and is loose past its end', () => {
    const near = valueOf(copyThings(wholePlan(), [c1], [-1, 0])).plan.cameras['C3'];
    expect(near?.mount).toMatchObject({ kind: 'arm', host: 'house', corner: 'end', distance: 3 });
    const far = valueOf(copyThings(wholePlan(), [c1], [9, 0])).plan.cameras['C3'];
    expect(far?.mount).toMatchObject({ kind: 'loose', eye: [15, -0.3, 2.7] });
  });

  test('no copies are no change; what lies too far out is refused', () => {
    const plan = wholePlan();
    expect(valueOf(copyThings(plan, [house], [1, 0], 0)).plan).toBe(plan);
    expect(codesOf(copyThings(plan, [house], [1e6, 0]))).toContain('coordinate.far');
  });

  test('a group comes along where it is wholly among them', () => {
    const next = valueOf(copyThings(wholePlan(), [hedge, c2, lamp], [0, 5])).plan;
    expect(next.groupOrder).toHaveLength(2);
    expect(Object.values(next.groups)[1]).toMatchObject({ name: 'Front 2', members: { length: 3 } });
    expect(valueOf(copyThings(wholePlan(), [hedge, c2], [0, 5])).plan.groupOrder).toHaveLength(1);
  });
});

describe('pasteText', () => {
  test('puts into an empty plan what was copied from another', () => {
    const text = copyText(wholePlan(), [house, hedge, c1]);
    expect(isCopyText(text)).toBe(true);
    const empty = emptyPlan('other', 'Other');
    const { plan, things } = valueOf(pasteText(empty, text, [3, 4]));
    expect(things).toEqual([house, hedge, c1]);
    expect(plan.structures['house']).toMatchObject({ outline: { 0: [3, 4] }, name: 'House' });
    expect(plan.cameras['C1']?.mount).toMatchObject({ kind: 'arm', host: 'house' });
    expect(readPlan(planText(plan))).toMatchObject({ ok: true, notes: [] });
  });

  test('a camera whose house was not copied is loose at its eye', () => {
    const { plan } = valueOf(pasteText(emptyPlan('other', 'Other'), copyText(wholePlan(), [c1]), [1, 1]));
    expect(plan.cameras['C1']?.mount).toEqual({ kind: 'loose', eye: [7, 0.7, 2.7] });
  });

  test('one that never was anywhere is left out, with a note', () => {
    const plan = wholePlan();
    const lost = { ...plan, structures: {}, structureOrder: [], groups: {}, groupOrder: [] };
    const pasted = pasteText(emptyPlan('other', 'Other'), copyText(lost, [c1]));
    expect(pasted).toMatchObject({ ok: true, notes: [{ code: 'clip.cameraLeft', subject: 'C1' }] });
    expect(valueOf(pasted).plan.cameraOrder).toEqual([]);
  });

  test('in the same plan everything gets a free id and name', () => {
    const plan = wholePlan();
    const { plan: next } = valueOf(pasteText(plan, copyText(plan, [house, c1, lamp])));
    expect(Object.keys(next.cameras)).toEqual(['C1', 'C2', 'C3']);
    expect(Object.values(next.lamps).map(({ name }) => name)).toEqual(['Porch lamp', 'Porch lamp 2']);
    expect(readPlan(planText(next))).toMatchObject({ ok: true, notes: [] });
  });

  test.each(['', 'some words', '{"mark":"soffit things"', '[]', '{"mark":"soffit things"}'])(
    'refuses %j, and the plan stays',
    (text) => expect(codesOf(pasteText(wholePlan(), text))).not.toEqual([]),
  );

  test('refuses what was changed on the way', () => {
    const text = copyText(wholePlan(), [house]).replace('"height":3', '"height":"high"');
    expect(codesOf(pasteText(wholePlan(), text))).toEqual(['value.type']);
  });

  test('reads what a tab with an older version copied', () => {
    const text = copyText(wholePlan(), [hedge]).replace('"version":3', '"version":2');
    expect(valueOf(pasteText(emptyPlan('o', 'O'), text)).things).toEqual([hedge]);
  });
});

test('names go on counting', () => {
  expect(freshName('Garage', new Set())).toBe('Garage');
  expect(freshName('Garage', new Set(['Garage']))).toBe('Garage 2');
  expect(freshName('Garage 2', new Set(['Garage', 'Garage 2']))).toBe('Garage 3');
  expect(freshName('C1', new Set(['C1', 'C2']))).toBe('C3');
  expect(freshName('x'.repeat(120), new Set(['x'.repeat(120)]))).toHaveLength(115);
});

describe('groups and order', () => {
  test('a thing is in one group; an empty group goes', () => {
    const { plan, id } = addGroup(wholePlan(), ['house', 'hedge', 'C2', 'porch-lamp'], 'All');
    expect(plan.groupOrder).toEqual([id]);
    expect(groupOf(plan, 'hedge')).toMatchObject({ name: 'All' });
    expect(withGroups(plan, ['C1', 'hedge'])).toEqual(['C1', 'hedge', 'house', 'C2', 'porch-lamp']);
    expect(ungroup(plan, id)).toMatchObject({ groups: {}, groupOrder: [] });
    expect(() => addGroup(plan, ['nothing'])).toThrow(RangeError);
  });

  test('deleting takes things out of their groups, and pictures of a house with it', () => {
    const things = [house, hedge, { kind: 'picture', id: 'face' } as const];
    const next = deleteThings(wholePlan(), things, eyesOf(wholePlan()));
    expect(next.groups['front']?.members).toEqual(['C2', 'porch-lamp']);
    expect(next.pictureOrder).toEqual(['deed', 'cafe']);
    expect(next.cameras['C1']?.mount).toMatchObject({ kind: 'loose' });
    expect(readPlan(planText(next))).toMatchObject({ ok: true, notes: [] });
    const none = deleteThings(next, [c2, lamp], {});
    expect([none.groups, none.groupOrder]).toEqual([{}, []]);
  });

  test('an order is kept to its ends', () => {
    expect(reorder(wholePlan(), house, 9).structureOrder).toEqual(['hedge', 'house']);
    const plan = wholePlan();
    expect(reorder(plan, house, -3)).toBe(plan);
  });
});

test('things align with the last, which stays', () => {
  const plan = wholePlan();
  const next = valueOf(alignThings(plan, [lamp, hedge, house], 'west'));
  expect(next.lamps['porch-lamp']?.at).toEqual([0, -0.1]);
  expect(next.structures['hedge']).toMatchObject({ line: { 0: [0, -6] } });
  expect(next.structures['house']).toBe(plan.structures['house']);
  const middle = valueOf(alignThings(plan, [hedge, house], 'middle')).structures['hedge'];
  expect(middle).toMatchObject({ line: { 0: [-2, -6], 1: [10, -6] } });
});
