import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Editor } from '../../src/editor/editor.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { deleteThing } from '../../src/plan/commands/deleteThing.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { demo, yard } from './plans.ts';

const tilt = (value: number) => (plan: Plan) => aimCamera(plan, 'C1', { tilt: value });
const tiltOf = (editor: Editor) => editor.store.getState().plan.cameras['C1']?.tilt;
const state = (editor: Editor) => editor.store.getState();

describe('a step', () => {
  test('changes the plan, raises the revision and can be undone and redone by its name', () => {
    const editor = createEditor(yard());
    const { revision, plan } = state(editor);
    editor.run('Tilt C1', tilt(30));
    expect(tiltOf(editor)).toBe(30);
    expect(state(editor)).toMatchObject({ revision: revision + 1, undoName: 'Tilt C1', redoName: null });
    editor.undo();
    expect(state(editor).plan).toEqual(plan);
    expect(state(editor)).toMatchObject({ undoName: null, redoName: 'Tilt C1' });
    editor.redo();
    expect(tiltOf(editor)).toBe(30);
  });

  test('that changes nothing is none', () => {
    const editor = createEditor(yard());
    const { revision } = state(editor);
    editor.run('Tilt C1', tilt(20));
    expect(state(editor)).toMatchObject({ revision, undoName: null });
  });

  test('undone selects what it changed and says so', () => {
    const editor = createEditor(yard());
    editor.run('Tilt C1', tilt(30));
    editor.select(null);
    editor.undo();
    expect(state(editor).selected).toEqual({ kind: 'camera', id: 'C1' });
    expect(state(editor).notice?.text).toBe('Undone: Tilt C1');
  });

  test('that deletes the selected camera clears the selection and what was shown alone', () => {
    const editor = createEditor(yard());
    editor.select({ kind: 'camera', id: 'C1' });
    editor.showAlone('C1');
    editor.run('Delete C1', (plan) => deleteThing(plan, { kind: 'camera', id: 'C1' }, {}));
    expect(state(editor)).toMatchObject({ selected: null, alone: null });
  });
});

describe('arrow steps on one number', () => {
  test('within a second are one step', () => {
    let now = 0;
    const editor = createEditor(yard(), () => now);
    for (const value of [20.1, 20.2, 20.3]) {
      editor.run('Tilt C1', tilt(value), 'C1 tilt');
      now += 900;
    }
    editor.undo();
    expect(tiltOf(editor)).toBe(20);
  });

  test('after a longer pause, or on another number, are steps of their own', () => {
    let now = 0;
    const editor = createEditor(yard(), () => now);
    editor.run('Tilt C1', tilt(21), 'C1 tilt');
    now += 1001;
    editor.run('Tilt C1', tilt(22), 'C1 tilt');
    editor.run('Turn C1', (plan) => aimCamera(plan, 'C1', { pan: 10 }), 'C1 pan');
    editor.run('Tilt C1', tilt(23), 'C1 tilt');
    editor.undo();
    expect(tiltOf(editor)).toBe(22);
    editor.undo();
    expect(state(editor).plan.cameras['C1']?.pan).toBe(180);
    editor.undo();
    expect(tiltOf(editor)).toBe(21);
  });
});

describe('a drag', () => {
  test('works from the plan at the press, and is one step', () => {
    const editor = createEditor(yard());
    const gesture = editor.begin('Tilt C1');
    expect(state(editor).gesturing).toBe(true);
    for (const by of [1, 2, 5])
      gesture.change((plan) => aimCamera(plan, 'C1', { tilt: (plan.cameras['C1']?.tilt ?? 0) + by }));
    expect(tiltOf(editor)).toBe(25);
    gesture.commit();
    expect(state(editor)).toMatchObject({ gesturing: false, undoName: 'Tilt C1' });
    editor.undo();
    expect(tiltOf(editor)).toBe(20);
    expect(state(editor).undoName).toBeNull();
  });

  test('cancelled leaves the plan as it was, the very same object', () => {
    const editor = createEditor(yard());
    const { plan } = state(editor);
    const gesture = editor.begin('Tilt C1');
    gesture.change(tilt(50));
    gesture.cancel();
    expect(state(editor).plan).toBe(plan);
    expect(state(editor)).toMatchObject({ gesturing: false, undoName: null });
  });

  test('is cancelled alone by undo in mid-drag', () => {
    const editor = createEditor(yard());
    editor.run('Tilt C1', tilt(30));
    editor.begin('Tilt C1').change(tilt(50));
    editor.undo();
    expect(tiltOf(editor)).toBe(30);
    expect(state(editor).undoName).toBe('Tilt C1');
  });

  test('is committed by a second one, and does nothing afterwards', () => {
    const editor = createEditor(yard());
    const first = editor.begin('First');
    first.change(tilt(30));
    const second = editor.begin('Second');
    first.change(tilt(99));
    first.cancel();
    second.change(tilt(40));
    second.commit();
    expect(tiltOf(editor)).toBe(40);
    editor.undo();
    expect(tiltOf(editor)).toBe(30);
  });
});

test('a read-only plan refuses every change and says why', () => {
  const editor = createEditor(yard());
  editor.run('Tilt C1', tilt(30));
  editor.store.setState({ readOnly: true });
  editor.run('Tilt C1', tilt(40));
  editor.begin('Tilt C1').change(tilt(50));
  editor.undo();
  expect(tiltOf(editor)).toBe(30);
  expect(state(editor)).toMatchObject({ gesturing: false });
  expect(state(editor).notice?.text).toContain('another tab');
});

test('opening another plan begins its history anew and keeps the target asked for', () => {
  const editor = createEditor(yard());
  editor.ask({ kind: 'face', height: 1.6 });
  editor.run('Tilt C1', tilt(30));
  const { revision } = state(editor);
  editor.open(yard('other'));
  expect(state(editor)).toMatchObject({ undoName: null, target: { kind: 'face', height: 1.6 } });
  expect(state(editor).revision).toBeGreaterThan(revision);
});

test('any row of steps is undone to the beginning and redone to the end', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -90, max: 90, noNaN: true }), { maxLength: 20 }), (tilts) => {
      const editor = createEditor(yard());
      const { plan } = state(editor);
      for (const value of tilts) editor.run('Tilt C1', tilt(value));
      const last = state(editor).plan;
      while (state(editor).undoName !== null) editor.undo();
      expect(state(editor).plan).toEqual(plan);
      while (state(editor).redoName !== null) editor.redo();
      expect(state(editor).plan).toEqual(last);
    }),
    { numRuns: 50 },
  );
});

describe('what is asked for', () => {
  test('in other conditions is another question, and the plan stays as it is', () => {
    const editor = createEditor(demo());
    const { revision, plan } = state(editor);
    editor.askIn('night');
    expect(state(editor)).toMatchObject({ situation: 'night', revision: revision + 1, undoName: null });
    editor.askIn('night');
    expect(state(editor).revision).toBe(revision + 1);
    expect(state(editor).plan).toBe(plan);
  });

  test('is as drawn again once its conditions are deleted', () => {
    const editor = createEditor(demo());
    editor.askIn('night');
    editor.select({ kind: 'situation', id: 'night' });
    editor.run('Delete Night', (plan) => deleteThing(plan, { kind: 'situation', id: 'night' }, {}));
    expect(state(editor)).toMatchObject({ situation: null, selected: null });
    editor.undo();
    expect(state(editor).selected).toEqual({ kind: 'situation', id: 'night' });
  });

  test('is the ground again once the wall is gone, by deleting it or by another plan', () => {
    const wall = {
      kind: 'surface',
      height: 0,
      surface: { of: 'wall', structure: 'garage', face: 0 },
    } as const;
    const editor = createEditor(demo());
    editor.ask(wall);
    editor.run('Delete Van', (plan) => deleteThing(plan, { kind: 'structure', id: 'van' }, {}));
    expect(state(editor).target).toEqual(wall);
    editor.run('Delete Garage', (plan) => deleteThing(plan, { kind: 'structure', id: 'garage' }, {}));
    expect(state(editor).target).toEqual({ kind: 'ground', height: 0 });
    editor.undo();
    editor.ask(wall);
    editor.open(yard());
    expect(state(editor).target).toEqual({ kind: 'ground', height: 0 });
  });

  test('of faces that look another way is another question', () => {
    const editor = createEditor(demo());
    editor.ask({ kind: 'face', height: 1.6 });
    const { revision } = state(editor);
    editor.ask({ kind: 'face', height: 1.6, looks: { kind: 'bearing', bearing: 90 } });
    editor.ask({ kind: 'face', height: 1.6, looks: { kind: 'bearing', bearing: 91 } });
    expect(state(editor).revision).toBe(revision + 2);
  });
});
