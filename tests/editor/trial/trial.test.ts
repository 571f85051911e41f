import { expect, test } from 'vitest';
import { createEditor } from '../../../src/editor/store.ts';
import { rename } from '../../../src/editor/acts.ts';
import { keepTrial, takeUpTrial } from '../../../src/editor/trial/keptTrial.ts';
import { createTrial, letterOf, rightOf, variantsIn } from '../../../src/editor/trial/trial.ts';
import { addVariant, dropVariant, followTrial, keepVariant } from '../../../src/editor/trial/trialActs.ts';
import { createTrialEditor } from '../../../src/editor/trial/trialEditor.ts';
import { aimCamera } from '../../../src/plan/commands/aimCamera.ts';
import { demo, yard } from '../plans.ts';

function begun(plan = yard()) {
  const editor = createEditor(plan, () => 0);
  const trial = createTrial(plan);
  const [of = ''] = plan.cameraOrder;
  editor.select({ kind: 'camera', id: of });
  followTrial(editor, trial);
  const inTrial = createTrialEditor(editor, trial);
  inTrial.follow();
  const camera = () => editor.store.getState().plan.cameras[of] ?? fail();
  return { editor, trial, inTrial, of, camera, plan };
}

function fail(): never {
  throw new Error('no such camera');
}

test('a variant stands beside its camera in the trial, and nowhere in the plan or its history', () => {
  const { editor, trial, inTrial, camera, plan } = begun();
  const before = inTrial.store.getState().revision;
  addVariant(editor, trial, camera(), 'lens');
  const [made] = variantsIn(trial.getState());
  const now = inTrial.store.getState();
  expect(now.plan.cameraOrder).toEqual([...plan.cameraOrder, made?.id]);
  expect(now.plan.structures).toBe(plan.structures);
  expect(now.revision).toBeGreaterThan(before);
  expect(now.selected).toEqual({ kind: 'camera', id: made?.id });
  expect(made?.device.lens.focalLength).not.toBe(camera().device.lens.focalLength);
  expect(editor.store.getState().plan).toBe(plan);
  expect(editor.store.getState().undoName).toBeNull();
  expect([letterOf(made?.id ?? ''), rightOf(trial.getState())]).toEqual(['B', made?.id]);
});

test('what changes a variant is no step; what changes the plan is one, and takes nothing of the variants along', () => {
  const { editor, trial, inTrial, of, camera, plan } = begun();
  addVariant(editor, trial, camera(), 'nothing');
  const id = variantsIn(trial.getState())[0]?.id ?? '';
  inTrial.run('Tilt', (now) => aimCamera(now, id, { tilt: 41 }));
  expect(variantsIn(trial.getState())[0]?.tilt).toBe(41);
  expect(editor.store.getState().plan).toBe(plan);
  inTrial.run('Pan', (now) => aimCamera(aimCamera(now, of, { pan: 12 }), id, { pan: 13 }));
  const { plan: changed, undoName } = editor.store.getState();
  expect([changed.cameras[of]?.pan, undoName]).toEqual([12, 'Pan']);
  expect(Object.keys(changed.cameras)).toEqual([of]);
  expect(changed.cameraOrder).toEqual([of]);
  expect(variantsIn(trial.getState())[0]).toMatchObject({ pan: 13, tilt: 41 });
  editor.undo();
  expect(editor.store.getState().plan).toEqual(plan);
  expect(variantsIn(trial.getState())[0]?.pan).toBe(13);
});

test('a drag of a variant is shown on the way, and goes back when it is called off, by whomever', () => {
  const { editor, trial, inTrial, camera, plan } = begun();
  addVariant(editor, trial, camera(), 'nothing');
  const id = variantsIn(trial.getState())[0]?.id ?? '';
  const tilt = () => inTrial.store.getState().plan.cameras[id]?.tilt;
  for (const callOff of ['cancel', 'undo'] as const) {
    const held = inTrial.begin('Aim');
    held.change((now) => aimCamera(now, id, { tilt: 33 }));
    held.change((now) => aimCamera(now, id, { tilt: (now.cameras[id]?.tilt ?? 0) + 5 }));
    expect(tilt()).toBe(25);
    expect(inTrial.store.getState().gesturing).toBe(true);
    if (callOff === 'cancel') held.cancel();
    else editor.undo();
    expect(tilt()).toBe(20);
  }
  const held = inTrial.begin('Aim');
  held.change((now) => aimCamera(now, id, { tilt: 33 }));
  held.commit();
  expect(tilt()).toBe(33);
  expect(editor.store.getState()).toMatchObject({ plan, gesturing: false, undoName: null });
});

test('keeping a variant is one named step that leaves name and lock; undo brings the former setting back', () => {
  const { editor, trial, inTrial, of, camera } = begun();
  addVariant(editor, trial, camera(), 'tilt');
  addVariant(editor, trial, camera(), 'height');
  const [b, c] = variantsIn(trial.getState());
  if (!b || !c) fail();
  expect(c.mount).not.toEqual(camera().mount);
  rename(inTrial, { kind: 'camera', id: b.id }, 'Something else');
  const before = camera();
  keepVariant(editor, trial, b.id);
  expect(camera()).toEqual({ ...before, tilt: b.tilt });
  expect(editor.store.getState().undoName).toBe(`Keep B for ${before.name}`);
  expect(variantsIn(trial.getState()).map(({ id }) => letterOf(id))).toEqual(['C']);
  editor.undo();
  expect(camera()).toEqual(before);
  editor.run('Lock', (plan) => ({
    ...plan,
    cameras: { ...plan.cameras, [of]: { ...before, locked: true } },
  }));
  keepVariant(editor, trial, c.id);
  expect(camera()).toEqual({ ...before, locked: true });
  expect(editor.store.getState().notice?.text).toContain('locked');
});

test('each camera has its own variants; a fourth is refused in words; another plan has none', () => {
  const { editor, trial, inTrial, camera, plan } = begun(demo());
  for (const differs of ['lens', 'tilt', 'height', 'nothing'] as const)
    addVariant(editor, trial, camera(), differs);
  expect(variantsIn(trial.getState())).toHaveLength(3);
  expect(editor.store.getState().notice?.text).toContain('Three');
  dropVariant(trial, variantsIn(trial.getState())[1]?.id ?? '');
  addVariant(editor, trial, camera(), 'nothing');
  expect(variantsIn(trial.getState()).map(({ id }) => letterOf(id))).toEqual(['B', 'D', 'C']);
  const second = plan.cameraOrder[1] ?? '';
  editor.select({ kind: 'camera', id: second });
  expect(trial.getState()).toMatchObject({ of: second, chosen: null });
  expect(inTrial.store.getState().plan).toBe(plan);
  editor.open(yard('another'));
  expect(trial.getState()).toMatchObject({ plan: 'another', of: null, variants: {} });
});

test('a reload of the tab brings the variants back; what is not ours is left', () => {
  const { editor, trial, camera, plan } = begun();
  const storage = memory();
  keepTrial(trial, storage);
  addVariant(editor, trial, camera(), 'lens');
  const again = createTrial(plan);
  takeUpTrial(again, storage);
  expect(again.getState()).toMatchObject({ of: camera().id, variants: trial.getState().variants });
  for (const text of ['{', '{"plan":"yard","of":null,"variants":{"a":[{"id":4}]}}', '7']) {
    storage.setItem('soffit trial', text);
    const fresh = createTrial(plan);
    takeUpTrial(fresh, storage);
    expect(fresh.getState().variants).toEqual({});
  }
});

function memory(): Storage {
  const held = new Map<string, string>();
  return {
    length: 0,
    clear: () => held.clear(),
    getItem: (key) => held.get(key) ?? null,
    key: () => null,
    removeItem: (key) => held.delete(key),
    setItem: (key, value) => held.set(key, value),
  };
}
