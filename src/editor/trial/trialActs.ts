import { setLens } from '../../plan/commands/setLens.ts';
import { withCamera } from '../../plan/commands/withCamera.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Editor } from '../editor.ts';
import { mountSettings } from '../settings/mountSettings.ts';
import { tiltSetting } from '../settings/aimSettings.ts';
import type { Setting } from '../settings/setting.ts';
import { freshVariant, letterOf, variantsIn, withVariants, type TrialStore } from './trial.ts';
import { planWith } from './trialPlan.ts';

/** What a new variant differs in to begin with. */
export type Differs = 'lens' | 'height' | 'tilt' | 'nothing';

/** Focal lengths that fixed lenses are commonly sold in, mm: common practice, no source. */
const COMMON = [2.8, 3.6, 4, 6, 8, 12, 16];
/** How much lower, or else higher, another height is tried, m; and how much farther down another tilt, °. */
const OTHER_HEIGHT = 0.5;
const OTHER_TILT = 10;

/** Puts another setting of the camera beside it and takes it in hand; the same state where there is no room for it. */
export function addVariant(editor: Editor, trial: TrialStore, camera: PlanCamera, differs: Differs): void {
  const state = trial.getState();
  const fresh = freshVariant(state, camera);
  if (fresh === null) {
    editor.say('Three other settings are as many as can be told apart. Put one away first.');
    return;
  }
  const { plan } = editor.store.getState();
  const made = differing(planWith(plan, [fresh]), fresh, differs);
  const others = state.variants[camera.id] ?? [];
  trial.setState({
    ...withVariants({ ...state, of: camera.id }, camera.id, [...others, made]),
    chosen: fresh.id,
    right: fresh.id,
  });
  editor.say(`${letterOf(fresh.id)} stands beside A. Nothing changes until you keep it.`);
}

function differing(plan: Plan, fresh: PlanCamera, differs: Differs): PlanCamera {
  const changed = (next: Plan): PlanCamera => next.cameras[fresh.id] ?? fresh;
  const set = (setting: Setting | undefined, value: number): PlanCamera => {
    if (setting === undefined) return fresh;
    const within = Math.min(setting.bounds.most, Math.max(setting.bounds.least, value));
    const next = setting.change(plan, within);
    return 'ok' in next ? (next.ok ? changed(next.value) : fresh) : changed(next);
  };
  if (differs === 'lens') return changed(setLens(plan, fresh.id, { focalLength: otherLength(fresh) }));
  if (differs === 'height') {
    // Under a soffit the drop takes the height's place.
    const setting = mountSettings(plan, fresh).find(({ key }) => key === 'height' || key === 'drop');
    if (setting === undefined) return fresh;
    const lower = setting.value - OTHER_HEIGHT;
    return set(setting, lower >= setting.bounds.least ? lower : setting.value + OTHER_HEIGHT);
  }
  return differs === 'tilt' ? set(tiltSetting(fresh), fresh.tilt + OTHER_TILT) : fresh;
}

/** The next longer common length of a fixed lens, else the one before; of a varifocal one its other end. */
function otherLength({ device: { lens } }: PlanCamera): number {
  const { focalLength, shortest, longest } = lens;
  if (longest > shortest) return longest - focalLength > focalLength - shortest ? longest : shortest;
  return (
    COMMON.find((one) => one > focalLength + 0.05) ??
    COMMON.findLast((one) => one < focalLength - 0.05) ??
    focalLength
  );
}

/** Puts a variant away. */
export function dropVariant(trial: TrialStore, id: string): void {
  const state = trial.getState();
  if (state.of === null) return;
  trial.setState(
    withVariants(
      state,
      state.of,
      variantsIn(state).filter((one) => one.id !== id),
    ),
  );
}

/** Sets the camera as a variant is set: one named step. Its name, its lock and what was noted of it stay. */
export function keepVariant(editor: Editor, trial: TrialStore, id: string): void {
  const { of } = trial.getState();
  const variant = variantsIn(trial.getState()).find((one) => one.id === id);
  const camera = of === null ? undefined : editor.store.getState().plan.cameras[of];
  if (variant === undefined || camera === undefined) return;
  if (camera.locked) {
    editor.say(`${camera.name} is locked. Unlock it to set it otherwise.`);
    return;
  }
  const { name, hidden, locked, card } = camera;
  const before = editor.store.getState().plan;
  editor.run(`Keep ${letterOf(id)} for ${name}`, (plan) =>
    withCamera(plan, camera.id, () => ({ ...variant, id: camera.id, name, hidden, locked, card })),
  );
  // Another tab may write this plan: then nothing is kept, and nothing goes.
  if (editor.store.getState().plan === before) return;
  dropVariant(trial, id);
  editor.say(`${name} is set as ${letterOf(id)} was. Undo brings the former setting back.`);
}

/** Leaves the camera as it stands and puts all variants away. */
export function keepStanding(editor: Editor, trial: TrialStore): void {
  const state = trial.getState();
  if (state.of === null) return;
  trial.setState(withVariants(state, state.of, []));
  editor.say('It stays as it is.');
}

/** Follows which camera is selected, and which plan is open. Returns how to stop. */
export function followTrial(editor: Editor, trial: TrialStore): () => void {
  const follow = () => {
    const { plan, selected } = editor.store.getState();
    const now = trial.getState();
    if (now.plan !== plan.id) {
      trial.setState({
        plan: plan.id,
        of: null,
        variants: {},
        chosen: null,
        right: null,
        edits: now.edits + 1,
      });
    }
    const of = selected?.kind === 'camera' && plan.cameras[selected.id] ? selected.id : trial.getState().of;
    const there = of !== null && plan.cameras[of] !== undefined ? of : null;
    if (there !== trial.getState().of)
      trial.setState(({ edits }) => ({
        of: there,
        chosen: null,
        right: null,
        placed: false,
        edits: edits + 1,
      }));
  };
  follow();
  return editor.store.subscribe(follow);
}
