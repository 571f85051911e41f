import { describe, expect, test } from 'vitest';
import { keepPlan, keptPlans, restore } from '../../src/editor/keeping.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { memoryShelf, memoryTabs, settled } from './device.ts';
import { yard } from './plans.ts';

const tilt = (value: number) => (plan: Plan) => aimCamera(plan, 'C1', { tilt: value });

/** A tab with a plan open, on a device that others may share. */
function tab(plan: Plan, device = memoryShelf(), tabs = memoryTabs()) {
  const editor = createEditor(plan);
  const keeping = keepPlan(editor, device.shelf, tabs.tab(), () => 1_700_000_000_000);
  return { editor, keeping, device, tabs, state: () => editor.store.getState() };
}

const tiltKept = (text: string | undefined) => {
  const read = readPlan(text ?? '');
  return read.ok ? read.value.cameras['C1']?.tilt : null;
};

describe('keeping', () => {
  test('each step is kept, with the time, and found again', async () => {
    const { editor, device, state } = tab(yard());
    editor.run('Tilt C1', tilt(33));
    await settled();
    expect(state().kept).toEqual({ at: 1_700_000_000_000, trouble: null });
    const found = await restore(device.shelf);
    expect(found && 'history' in found ? found.history.plan : null).toEqual(state().plan);
  });

  test('a plan that was not changed is not written', async () => {
    const { device, state } = tab(yard());
    await settled();
    expect(device.plans.size).toBe(0);
    expect(state().kept.at).toBeNull();
  });

  test('a drag is kept when it ends, or when the page is put away', async () => {
    const { editor, keeping, device } = tab(yard());
    const gesture = editor.begin('Tilt C1');
    gesture.change(tilt(40));
    await settled();
    expect(device.plans.size).toBe(0);
    await keeping.flush();
    expect(tiltKept(device.text('yard'))).toBe(40);
    gesture.change(tilt(50));
    gesture.commit();
    await settled();
    expect(tiltKept(device.text('yard'))).toBe(50);
  });

  test('a page that goes away keeps the last step, though the one before is still being written', async () => {
    const device = memoryShelf();
    const { editor, keeping } = tab(yard(), {
      ...device,
      shelf: { ...device.shelf, noteOpen: () => new Promise(() => {}) },
    });
    await settled();
    editor.run('Tilt C1', tilt(33));
    await settled();
    editor.run('Tilt C1', tilt(34));
    keeping.leave();
    expect(tiltKept(device.text('yard'))).toBe(34);
  });

  test('of many steps at once the last is what stays', async () => {
    const { editor, device } = tab(yard());
    for (let value = 1; value <= 30; value += 1) editor.run('Tilt C1', tilt(value));
    await settled();
    expect(tiltKept(device.text('yard'))).toBe(30);
  });

  test('a full device is said in words, and the next step tries again', async () => {
    const { editor, device, state } = tab(yard());
    device.fail(new DOMException('full', 'QuotaExceededError'));
    editor.run('Tilt C1', tilt(1));
    await settled();
    expect(state().kept.trouble).toBe(
      'No room to keep the last change on this device. Save the plan to a file.',
    );
    device.fail(null);
    editor.run('Tilt C1', tilt(2));
    await settled();
    expect(state().kept.trouble).toBeNull();
    expect(tiltKept(device.text('yard'))).toBe(2);
  });
});

describe('opening', () => {
  test('another plan keeps the former', async () => {
    const { editor, keeping, device, state } = tab(yard());
    editor.run('Tilt C1', tilt(33));
    await keeping.open(yard('other'));
    await settled();
    expect(state().plan.id).toBe('other');
    expect(tiltKept(device.text('yard'))).toBe(33);
    expect((await keptPlans(device.shelf)).map(({ key }) => key).toSorted()).toEqual(['other', 'yard']);
  });

  test('an older copy of the open plan sets the newer one aside', async () => {
    const { editor, keeping, device } = tab(yard());
    editor.run('Tilt C1', tilt(33));
    await keeping.open(yard());
    await settled();
    expect(tiltKept(device.text('yard'))).toBe(20);
    const aside = (await keptPlans(device.shelf)).find(({ key }) => key !== 'yard');
    expect(tiltKept(aside?.text)).toBe(33);
  });

  test('the same plan again leaves one copy', async () => {
    const { editor, keeping, device, state } = tab(yard());
    editor.run('Tilt C1', tilt(33));
    await keeping.open(structuredClone(state().plan));
    await settled();
    expect(device.plans.size).toBe(1);
  });
});

describe('what comes out of storage is read like a file', () => {
  test.each([
    ['nothing', undefined],
    ['a word', 'plan'],
    ['a record without a text', { key: 'yard', name: 'Yard', at: 1 }],
    ['a time that is none', { key: 'yard', name: 'Yard', at: Number.NaN, text: planText(yard()) }],
  ])('%s restores nothing', async (_, held) => {
    const device = memoryShelf();
    device.putRaw('yard', held);
    expect(await restore(device.shelf)).toBeNull();
    expect(await keptPlans(device.shelf)).toEqual([]);
  });

  test('a broken plan is reported and stays on the shelf', async () => {
    const device = memoryShelf();
    const kept = { key: 'yard', name: 'Yard', at: 1, text: planText(yard()).slice(0, 200) };
    device.putRaw('yard', kept);
    expect(await restore(device.shelf)).toEqual({ unreadable: { ...kept, trail: null } });
    expect(device.text('yard')).toBe(kept.text);
    // Whatever is kept under its id from now on, it is still there.
    device.plans.delete('yard');
    expect(await keptPlans(device.shelf)).toMatchObject([{ name: 'Yard', text: kept.text }]);
  });
});

describe('two tabs on one plan', () => {
  test('the second reads only, and is told', async () => {
    const first = tab(yard());
    await settled();
    const second = tab(yard(), first.device, first.tabs);
    await settled();
    expect(first.state().readOnly).toBe(false);
    expect(second.state().readOnly).toBe(true);
    expect(second.state().notice?.text).toContain('another tab');
    second.editor.run('Tilt C1', tilt(80));
    await settled();
    expect(second.state().plan.cameras['C1']?.tilt).toBe(20);
    expect(first.device.plans.size).toBe(0);
  });

  test('"edit here instead" takes the plan with the other tab’s last change', async () => {
    const first = tab(yard());
    await settled();
    const second = tab(yard(), first.device, first.tabs);
    await settled();
    first.editor.run('Tilt C1', tilt(33));
    await second.keeping.editHere();
    expect(second.state()).toMatchObject({ readOnly: false });
    expect(second.state().plan.cameras['C1']?.tilt).toBe(33);
    expect(first.state().readOnly).toBe(true);
    second.editor.run('Tilt C1', tilt(34));
    await settled();
    expect(tiltKept(first.device.text('yard'))).toBe(34);
  });

  test('a tab that does not answer loses the plan by force', async () => {
    const first = tab(yard());
    await settled();
    const second = tab(yard(), first.device, first.tabs);
    await settled();
    first.tabs.deaf();
    await second.keeping.editHere();
    expect(first.state().readOnly).toBe(true);
    expect(second.state().readOnly).toBe(false);
  });

  test('opening a copy of the same plan in the second tab does not overwrite the first', async () => {
    const first = tab(yard());
    await settled();
    first.editor.run('Tilt C1', tilt(33));
    await settled();
    const second = tab(yard('other'), first.device, first.tabs);
    await second.keeping.open(yard());
    await settled();
    expect(second.state().readOnly).toBe(true);
    await second.keeping.open(yard());
    await settled();
    expect(second.state().readOnly).toBe(true);
    expect(tiltKept(first.device.text('yard'))).toBe(33);
  });

  test('opening another plan frees the former for others', async () => {
    const first = tab(yard());
    await first.keeping.open(yard('other'));
    await settled();
    const second = tab(yard(), first.device, first.tabs);
    await settled();
    expect(second.state().readOnly).toBe(false);
  });
});

test('a plan that is slow to write is kept after a pause, or when the page is put away', async () => {
  const device = memoryShelf();
  const editor = createEditor(yard());
  let now = 0;
  // Each look at the clock is 40 ms later than the last, as if writing took as long.
  const keeping = keepPlan(editor, device.shelf, memoryTabs().tab(), () => (now += 40));
  editor.run('Tilt C1', tilt(1));
  await settled();
  expect(tiltKept(device.text('yard'))).toBe(1);
  editor.run('Tilt C1', tilt(2));
  await settled();
  expect(tiltKept(device.text('yard'))).toBe(1);
  await keeping.flush();
  expect(tiltKept(device.text('yard'))).toBe(2);
});
