import { createStore } from 'zustand/vanilla';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Editor, EditorState, Gesture, Selected } from '../editor.ts';
import { isVariantOf, variantsIn, withVariants, type TrialState, type TrialStore } from './trial.ts';
import { parted, planWith } from './trialPlan.ts';

/** An editor of the plan with a camera's variants in it. */
export interface TrialEditor extends Editor {
  /** Follows the editor that it is around, and the trial. Returns how to stop. */
  follow(): () => void;
}

/**
 * An editor around another one, in whose plan the variants stand as cameras: so that whatever shows, drags and types the
 * settings of a camera does so with a variant. What changes of the plan itself goes to the editor as a step; what changes of
 * a variant stays in the trial.
 */
export function createTrialEditor(editor: Editor, trial: TrialStore): TrialEditor {
  const joined = joiner();
  const store = createStore<EditorState>(() => joined(editor.store.getState(), trial.getState()));
  let atPress: readonly PlanCamera[] | null = null;

  const put = (of: string, variants: readonly PlanCamera[]) => {
    const now = trial.getState();
    if (!sameVariants(variants, now.variants[of] ?? [])) trial.setState(withVariants(now, of, variants));
  };

  const update = () => {
    const now = editor.store.getState();
    const { of } = trial.getState();
    if (atPress !== null && of !== null && !now.gesturing) {
      // The drag was called off from elsewhere.
      const variants = atPress;
      atPress = null;
      put(of, variants);
    }
    store.setState(joined(now, trial.getState()), true);
  };

  /** Runs a change on the plan with variants; answers the plan's part, and says what became of the variants. */
  const apart =
    (
      change: (plan: Plan) => Plan,
      from: readonly PlanCamera[],
      say: (variants: readonly PlanCamera[]) => void,
    ) =>
    (plan: Plan): Plan => {
      const { of } = trial.getState();
      if (of === null || plan.cameras[of] === undefined) return change(plan);
      const before = planWith(plan, from);
      const made = parted(change(before), before, plan, of);
      say(made.variants);
      return made.plan;
    };

  const isVariant = (thing: Selected | null): thing is Selected & { readonly kind: 'camera' } =>
    thing?.kind === 'camera' && isVariantOf(trial.getState().of, thing.id);

  return {
    ...editor,
    store,
    run: (name, change, merge) => {
      const { of } = trial.getState();
      let variants: readonly PlanCamera[] | null = null;
      editor.run(
        name,
        apart(change, variantsIn(trial.getState()), (made) => {
          variants = made;
        }),
        merge,
      );
      if (of !== null && variants !== null) put(of, variants);
    },
    begin: (name): Gesture => {
      const held = editor.begin(name);
      const { of } = trial.getState();
      const from = variantsIn(trial.getState());
      if (editor.store.getState().gesturing) atPress = from;
      const keep = (variants: readonly PlanCamera[]) => {
        if (of !== null && atPress !== null) put(of, variants);
      };
      return {
        change: (change) => held.change(apart(change, from, keep)),
        commit: () => {
          atPress = null;
          held.commit();
        },
        cancel: () => held.cancel(),
      };
    },
    // Its own rays would answer for the trial only.
    lendSight: () => undefined,
    select: (thing) => {
      trial.setState({ chosen: isVariant(thing) ? thing.id : null });
      if (!isVariant(thing)) editor.select(thing);
    },
    selectAll: (things) => {
      trial.setState({ chosen: null });
      editor.selectAll(things.filter((thing) => !isVariant(thing)));
    },
    toggle: (thing) => {
      if (!isVariant(thing)) editor.toggle(thing);
    },
    hover: (thing) => editor.hover(isVariant(thing) ? null : thing),
    showAlone: () => undefined,
    follow: () => {
      const stops = [editor.store.subscribe(update), trial.subscribe(update)];
      update();
      return () => {
        for (const stop of stops) stop();
      };
    },
  };
}

/** Joins the two states; parts stay the same objects while what they come from does, by which sessions know them. */
function joiner(): (now: EditorState, trial: TrialState) => EditorState {
  let last: { readonly plan: Plan; readonly variants: readonly PlanCamera[]; readonly made: Plan } | null =
    null;
  let picked: readonly Selected[] = [];
  return (now, trial) => {
    const isThere = trial.of !== null && now.plan.cameras[trial.of] !== undefined;
    const variants = isThere ? variantsIn(trial) : NONE;
    if (last?.plan !== now.plan || last.variants !== variants)
      last = { plan: now.plan, variants, made: planWith(now.plan, variants) };
    const chosen = variants.find(({ id }) => id === trial.chosen);
    if (chosen !== undefined && picked[0]?.kind === 'camera' && picked[0].id === chosen.id) {
      // The same selection as before.
    } else picked = chosen === undefined ? [] : [{ kind: 'camera', id: chosen.id }];
    return {
      ...now,
      plan: last.made,
      revision: now.revision + trial.edits,
      alone: isThere ? trial.of : now.alone,
      ...(chosen === undefined ? {} : { selected: picked[0] ?? null, selection: picked }),
    };
  };
}

const NONE: readonly PlanCamera[] = [];

const sameVariants = (one: readonly PlanCamera[], two: readonly PlanCamera[]): boolean =>
  one.length === two.length && one.every((camera, at) => camera === two[at]);
