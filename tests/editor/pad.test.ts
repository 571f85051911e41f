import { describe, expect, test } from 'vitest';
import { keepPlan, restore } from '../../src/editor/keeping.ts';
import { settlePad, withPad, type Pad } from '../../src/editor/pad.ts';
import type { Shelf } from '../../src/editor/shelf.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { addLamp, newLamp } from '../../src/plan/commands/addLamp.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { memoryShelf, memoryTabs, settled } from './device.ts';
import { yard } from './plans.ts';

const tilt = (value: number) => (plan: Plan) => aimCamera(plan, 'C1', { tilt: value });

function memoryPad(full = false) {
  const words = new Map<string, string>();
  const pad: Pad = {
    names: () => [...words.keys()],
    read: (name) => words.get(name) ?? null,
    write: (name, text) => {
      if (full) throw new Error('full');
      if (text === null) words.delete(name);
      else words.set(name, text);
    },
  };
  return { pad, words };
}

/** A database whose tab dies before what it was asked is done. */
const dying = (shelf: Shelf): Shelf => ({
  ...shelf,
  put: () => new Promise(() => undefined),
  note: () => new Promise(() => undefined),
});

const always = (_: string, act: () => Promise<void>): Promise<void> => act();

const planFound = async (shelf: Shelf): Promise<Plan | null> => {
  const found = await restore(shelf);
  return found && 'history' in found ? found.history.plan : null;
};

describe('what a dying tab asked of the shelf last', () => {
  test('is done by the next one: the step and its undo', async () => {
    const { shelf } = memoryShelf();
    const { pad, words } = memoryPad();
    const first = createEditor(yard());
    keepPlan(first, withPad(shelf, pad), memoryTabs().tab(), () => 1000);
    first.run('Tilt C1', tilt(33));
    await settled();
    expect(words.size).toBe(0);

    const opened = await restore(shelf);
    if (!opened || !('history' in opened)) throw new Error('nothing was kept');
    const second = createEditor(opened.history.plan, Date.now, opened.history);
    keepPlan(second, withPad(dying(shelf), pad), memoryTabs().tab(), () => 2000);
    await settled();
    second.run('Tilt C1', tilt(44));
    second.run('Tilt C1', tilt(45));
    expect(words.size).toBe(1);
    expect((await planFound(shelf))?.cameras['C1']?.tilt).toBe(33);

    await settlePad(shelf, pad, always);
    expect(words.size).toBe(0);
    const found = await restore(shelf);
    if (!found || !('history' in found)) throw new Error('nothing was kept');
    const third = createEditor(found.history.plan, Date.now, found.history);
    expect(third.store.getState().plan.cameras['C1']?.tilt).toBe(45);
    third.undo();
    third.undo();
    third.undo();
    expect(third.store.getState().plan).toEqual(yard());
  });

  test('holds for a thing that is new, which had nothing before', async () => {
    const { shelf } = memoryShelf();
    const { pad } = memoryPad();
    const editor = createEditor(yard());
    keepPlan(editor, withPad(dying(shelf), pad), memoryTabs().tab(), () => 1000);
    await settled();
    editor.run('Add a lamp', (plan) => addLamp(plan, newLamp(plan, [1, 2])));
    await settlePad(shelf, pad, always);
    const found = await restore(shelf);
    if (!found || !('history' in found)) throw new Error('nothing was kept');
    const next = createEditor(found.history.plan, Date.now, found.history);
    expect(next.store.getState().plan.lampOrder).toHaveLength(editor.store.getState().plan.lampOrder.length);
    expect(next.store.getState().undoName).toBe('Add a lamp');
    next.undo();
    expect(next.store.getState().plan.lampOrder).toEqual(yard().lampOrder);
  });

  test('is left alone while another tab has the plan, and never overwrites what is newer', async () => {
    const { shelf } = memoryShelf();
    const { pad, words } = memoryPad();
    const editor = createEditor(yard());
    keepPlan(editor, withPad(dying(shelf), pad), memoryTabs().tab(), () => 1000);
    await settled();
    editor.run('Tilt C1', tilt(50));
    await settlePad(shelf, pad, () => Promise.resolve());
    expect(words.size).toBe(1);

    const later = createEditor(yard());
    keepPlan(later, shelf, memoryTabs().tab(), () => 5000);
    await settled();
    later.run('Tilt C1', tilt(60));
    await settled();
    await settlePad(shelf, pad, always);
    expect((await planFound(shelf))?.cameras['C1']?.tilt).toBe(60);
  });

  test('that is no such thing is wiped, and a pad that refuses does not hinder the shelf', async () => {
    const { shelf } = memoryShelf();
    const broken = memoryPad();
    broken.words.set('soffit unsure yard', '{"half');
    broken.words.set('soffit unsure other', '[{"ask":"put","kept":7}]');
    broken.words.set('somebody else', 'stays');
    await settlePad(shelf, broken.pad, always);
    expect([...broken.words.keys()]).toEqual(['somebody else']);

    const full = memoryPad(true);
    const editor = createEditor(yard());
    keepPlan(editor, withPad(shelf, full.pad), memoryTabs().tab(), () => 1000);
    await settled();
    editor.run('Tilt C1', tilt(21));
    await settled();
    expect((await planFound(shelf))?.cameras['C1']?.tilt).toBe(21);
  });
});
