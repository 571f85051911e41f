import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Editor } from './editor.ts';
import { askedAt, beginsAt, nextStage, sentenceFor, type Facts, type Stage } from './firstSteps.ts';
import type { Toolbox } from './tools/toolbox.ts';

/** The first steps as they are shown beside the work. */
export interface Stepping {
  readonly store: StoreApi<{ readonly sentence: string | null }>;
  /** Shows them from where the plan is. */
  show(): void;
  putAway(): void;
  dispose(): void;
}

/** Follows plan and tool through the first steps, anew with each plan that is opened. */
export function followFirstSteps(editor: Editor, toolbox: Toolbox): Stepping {
  const facts = (): Facts => {
    const { structureOrder, cameraOrder } = editor.store.getState().plan;
    const { state } = toolbox.store.getState();
    return { structures: structureOrder.length, cameras: cameraOrder.length, tool: state };
  };
  let plan = editor.store.getState().plan.id;
  let before = facts();
  let stage = beginsAt(before);
  // What the strip says already is not said twice.
  const said = (): string | null => {
    const sentence = sentenceFor(stage, before);
    const strip = toolbox.store.getState().state.strip?.text ?? '';
    return sentence !== null && strip.startsWith(sentence) ? null : sentence;
  };
  const store = createStore<{ readonly sentence: string | null }>(() => ({ sentence: said() }));
  const tell = (next: Stage): void => {
    stage = next;
    const sentence = said();
    if (sentence !== store.getState().sentence) store.setState({ sentence });
  };
  const follow = (): void => {
    const now = facts();
    const { id } = editor.store.getState().plan;
    const next = id === plan ? nextStage(stage, before, now) : beginsAt(now);
    [plan, before] = [id, now];
    tell(next);
  };
  const stops = [toolbox.store.subscribe(follow), editor.store.subscribe(follow)];
  return {
    store,
    show: () => {
      before = facts();
      tell(askedAt(before));
    },
    putAway: () => tell('off'),
    dispose: () => stops.forEach((stop) => stop()),
  };
}
