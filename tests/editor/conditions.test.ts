import { expect, test } from 'vitest';
import {
  addConditions,
  changeConditions,
  conditionsOf,
  conditionsText,
  leavesOf,
} from '../../src/editor/settings/conditions.ts';
import { createEditor } from '../../src/editor/store.ts';
import { demo, yard } from './plans.ts';

test('added conditions are one step, by a name that is free', () => {
  const editor = createEditor(demo());
  const id = addConditions(editor, 'Night', true);
  expect(editor.store.getState()).toMatchObject({ undoName: 'Add Night 2' });
  expect(editor.store.getState().plan.situations[id]).toMatchObject({
    name: 'Night 2',
    night: true,
    away: [],
  });
  editor.undo();
  expect(editor.store.getState().plan).toEqual(demo());
});

test('the drawing itself is not among the conditions', () => {
  expect(conditionsOf(yard())).toEqual([]);
  expect(conditionsOf(demo()).map(({ name }) => name)).toEqual(['Night', 'Trees bare, van away']);
});

test('what differs from the drawing is said in few words', () => {
  const editor = createEditor(demo());
  const id = addConditions(editor, 'Evening', false);
  const now = () => {
    const found = editor.store.getState().plan.situations[id];
    if (!found) throw new Error('no conditions');
    return found;
  };
  expect(conditionsText(now())).toBe('as drawn');
  changeConditions(editor, now(), { night: true, away: { structure: 'van', gone: true } });
  changeConditions(editor, now(), { treesInLeaf: false });
  const [gate] = leavesOf(editor.store.getState().plan);
  if (!gate) throw new Error('the sample has a gate');
  changeConditions(editor, now(), { leaf: { opening: gate.opening, stands: 'open' } });
  expect(conditionsText(now())).toBe('night, bare, 1 away, 1 leaf moved');
});

test('leaves are those of gates, and of buildings with walls of a thickness', () => {
  const plan = demo();
  expect(leavesOf(plan).map(({ label }) => label)).toEqual([
    'Front hedge: Front gate',
    'Side fence: Side gate',
  ]);
  const { house } = plan.structures;
  if (house?.kind !== 'building') throw new Error('the house is a building');
  const hollow = { ...plan, structures: { ...plan.structures, house: { ...house, wallThickness: 0.3 } } };
  expect(leavesOf(hollow)).toHaveLength(2 + house.openings.filter(({ kind }) => kind !== 'archway').length);
});
