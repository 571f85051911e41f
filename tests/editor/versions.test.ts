import { expect, test } from 'vitest';
import { createEditor } from '../../src/editor/store.ts';
import { keepVersions } from '../../src/editor/versions.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { memoryShelf, settled } from './device.ts';
import { yard } from './plans.ts';

const MINUTE = 60_000;

function sitting() {
  let time = 0;
  const editor = createEditor(yard());
  const { shelf } = memoryShelf();
  const versions = keepVersions(editor, shelf, () => time);
  const tilt = async (value: number, minutes: number) => {
    time += minutes * MINUTE;
    editor.run('Tilt C1', (plan: Plan) => aimCamera(plan, 'C1', { tilt: value }));
    await settled();
  };
  const tilts = async () =>
    (await versions.list()).map(({ text }) => {
      const read = readPlan(text);
      return read.ok ? read.value.cameras['C1']?.tilt : null;
    });
  return { editor, versions, tilt, tilts };
}

test('the plan before the first change is kept, then one every ten minutes, newest first', async () => {
  const { tilt, tilts, editor } = sitting();
  const first = editor.store.getState().plan.cameras['C1']?.tilt;
  await tilt(31, 1);
  await tilt(32, 5);
  await tilt(33, 6);
  expect(await tilts()).toEqual([32, first]);
});

test('thirty are kept by themselves, and all that were kept by hand', async () => {
  const { versions, tilt } = sitting();
  await tilt(20, 1);
  await versions.keep('As shown to the owner');
  for (let k = 0; k < 40; k++) await tilt(21 + k / 10, 11);
  const held = await versions.list();
  expect(held).toHaveLength(31);
  expect(held.at(-1)).toMatchObject({ name: 'As shown to the owner', byHand: true });
});

test('a drag in progress keeps nothing', async () => {
  const { editor, versions } = sitting();
  const gesture = editor.begin('Tilt C1');
  gesture.change((plan) => aimCamera(plan, 'C1', { tilt: 44 }));
  gesture.cancel();
  await settled();
  expect(await versions.list()).toEqual([]);
});

test('going back is a step, and undo takes it back', async () => {
  const { editor, versions, tilt } = sitting();
  const first = editor.store.getState().plan;
  await tilt(31, 1);
  const [version] = await versions.list();
  if (!version) throw new Error('no version was kept');
  versions.goBack(version);
  expect(editor.store.getState().plan).toEqual(first);
  editor.undo();
  expect(editor.store.getState().plan.cameras['C1']?.tilt).toBe(31);
  versions.goBack({ ...version, text: version.text.slice(0, 50) });
  expect(editor.store.getState().plan.cameras['C1']?.tilt).toBe(31);
  expect(editor.store.getState().notice?.faults).not.toEqual([]);
});
