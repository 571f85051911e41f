import { expect, test } from 'vitest';
import { createEditor } from '../../src/editor/store.ts';
import { noteAsBuilt, tickStop } from '../../src/editor/cardActs.ts';
import { planState, withoutNotes } from '../../src/draw/card/planState.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { bare, houseTurned, siteOf } from '../draw/card/cardSites.ts';

const plan = () =>
  siteOf([houseTurned(0)], {
    ...bare,
    kind: 'flush',
    host: 'house',
    face: 0,
    corner: 'start',
    distance: 3.8,
    height: 2.4,
    standOff: 0.05,
  });

test('a tick and a note are steps that undo takes back, and the file keeps them', () => {
  const editor = createEditor(plan());
  const cardOf = () => editor.store.getState().plan.cameras['C']?.card;
  tickStop(editor, 'C', '31.inside', true);
  noteAsBuilt(editor, 'C', 'serial', '  SN\n4711 ');
  expect(cardOf()).toEqual({ ticked: ['31.inside'], asBuilt: { serial: 'SN 4711' } });
  const read = readPlan(planText(editor.store.getState().plan));
  expect(read.ok && read.value.cameras['C']?.card).toEqual(cardOf());
  expect(editor.store.getState().undoName).toBe('Note on the card of C');
  editor.undo();
  expect(cardOf()).toEqual({ ticked: ['31.inside'], asBuilt: {} });
  editor.undo();
  expect(cardOf()).toEqual({ ticked: [], asBuilt: {} });
  editor.redo();
  tickStop(editor, 'C', '31.inside', false);
  expect(cardOf()?.ticked).toEqual([]);
});

test('an emptied note is gone, and the same note again is no step', () => {
  const editor = createEditor(plan());
  noteAsBuilt(editor, 'C', 'by', 'Anna');
  const { revision } = editor.store.getState();
  noteAsBuilt(editor, 'C', 'by', ' Anna ');
  expect(editor.store.getState().revision).toBe(revision);
  noteAsBuilt(editor, 'C', 'by', '');
  expect(editor.store.getState().plan.cameras['C']?.card.asBuilt).toEqual({});
});

test('what a card rests on does not change by a tick, but by anything that is drilled or aimed', () => {
  const editor = createEditor(plan());
  const bareOf = withoutNotes();
  const before = bareOf(editor.store.getState().plan);
  tickStop(editor, 'C', '31.inside', true);
  noteAsBuilt(editor, 'C', 'by', 'Anna');
  const ticked = bareOf(editor.store.getState().plan);
  expect(ticked).toBe(before);
  expect(planState(ticked)).toMatch(/^[0-9A-F]{4}-[0-9A-F]{4}$/u);
  editor.run('Aim', (now) => aimCamera(now, 'C', { pan: 181 }));
  const aimed = bareOf(editor.store.getState().plan);
  expect(aimed).not.toBe(before);
  expect(planState(aimed)).not.toBe(planState(before));
});
