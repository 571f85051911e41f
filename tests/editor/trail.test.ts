import { describe, expect, test } from 'vitest';
import { keepPlan, restore } from '../../src/editor/keeping.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { stepFrom } from '../../src/plan/trail.ts';
import { memoryShelf, memoryTabs, settled } from './device.ts';
import { yard } from './plans.ts';

const tilt = (value: number) => (plan: Plan) => aimCamera(plan, 'C1', { tilt: value });

const tiltKept = (text: string | undefined) => {
  const read = readPlan(text ?? '');
  return read.ok ? read.value.cameras['C1']?.tilt : null;
};

function tab(plan: Plan, device = memoryShelf()) {
  const editor = createEditor(plan);
  keepPlan(editor, device.shelf, memoryTabs().tab(), () => 1_700_000_000_000);
  return { editor, device, state: () => editor.store.getState() };
}

describe('steps outlive the window', () => {
  /** What another window would find: an editor with the plan and its steps. */
  const again = async (device: ReturnType<typeof memoryShelf>) => {
    const found = await restore(device.shelf);
    if (!found || !('history' in found)) throw new Error('nothing was kept');
    return createEditor(found.history.plan, Date.now, found.history);
  };

  test('every step can be undone and done again after a reload', async () => {
    const { editor, device, state } = tab(yard());
    const first = state().plan;
    for (const value of [31, 32, 33, 34]) editor.run(`Tilt ${value}`, tilt(value));
    await settled();
    editor.undo();
    await settled();
    const next = await again(device);
    expect(next.store.getState()).toMatchObject({ undoName: 'Tilt 33', redoName: 'Tilt 34' });
    next.redo();
    expect(next.store.getState().plan.cameras['C1']?.tilt).toBe(34);
    for (let step = 0; step < 4; step++) next.undo();
    expect(next.store.getState().plan).toEqual(first);
    expect(next.store.getState().undoName).toBeNull();
  });

  test('a new step after undoing takes the place of those undone, on the shelf too', async () => {
    const { editor, device } = tab(yard());
    for (const value of [31, 32, 33]) editor.run(`Tilt ${value}`, tilt(value));
    await settled();
    editor.undo();
    editor.undo();
    editor.run('Tilt 40', tilt(40));
    await settled();
    const next = await again(device);
    expect(next.store.getState()).toMatchObject({ undoName: 'Tilt 40', redoName: null });
    next.undo();
    expect(next.store.getState()).toMatchObject({ undoName: 'Tilt 31' });
  });

  test('a step that cannot be read ends history there; the plan is untouched', async () => {
    const { editor, device, state } = tab(yard());
    for (const value of [31, 32]) editor.run(`Tilt ${value}`, tilt(value));
    await settled();
    const [held] = device.steps.values();
    if (!held) throw new Error('no steps were kept');
    held[0] = { name: 'Tilt 31', changes: [{ field: 'cameras', record: 'C1', before: { tilt: 'steep' } }] };
    const next = await again(device);
    expect(next.store.getState().undoName).toBeNull();
    expect(next.store.getState().plan).toEqual(state().plan);
    expect(stepFrom(held[1])).not.toBeNull();
  });

  test('of a plan that takes long to write each step is kept at once, and leads from the text to the last one', async () => {
    // A clock that makes every text seem to take a second.
    let time = 0;
    const device = memoryShelf();
    const editor = createEditor(yard());
    keepPlan(editor, device.shelf, memoryTabs().tab(), () => (time += 1_000));
    await settled();
    editor.run('Tilt 31', tilt(31));
    await settled();
    for (const value of [32, 33]) editor.run(`Tilt ${value}`, tilt(value));
    await settled();
    expect(tiltKept(device.text('yard'))).toBe(31);
    const next = await again(device);
    expect(next.store.getState()).toMatchObject({ undoName: 'Tilt 33', redoName: null });
    expect(next.store.getState().plan.cameras['C1']?.tilt).toBe(33);
    // Undone below the text, and another step made there: the text is written anew.
    for (let step = 0; step < 3; step++) editor.undo();
    editor.run('Tilt 50', tilt(50));
    await settled();
    const last = await again(device);
    expect(last.store.getState()).toMatchObject({ undoName: 'Tilt 50', redoName: null });
    expect(last.store.getState().plan.cameras['C1']?.tilt).toBe(50);
  });

  test('steps of an older program are not read', async () => {
    const { editor, device } = tab(yard());
    editor.run('Tilt C1', tilt(31));
    await settled();
    const kept = device.plans.get('yard');
    device.putRaw('yard', { ...(kept as object), trail: { version: 1, length: 1, at: 1 } });
    expect((await again(device)).store.getState().undoName).toBeNull();
  });
});
