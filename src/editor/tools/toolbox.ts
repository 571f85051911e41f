import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Editor } from '../editor.ts';
import type { Nudge, ToolState } from './chart.ts';
import type { Pointed } from './pointed.ts';
import { placing } from './lamp/placing.ts';
import { seeking } from './camera/seeking.ts';
import { pointingPlace } from './pointingPlace.ts';
import { resting } from './rest/resting.ts';

/** The tool in hand with its state; sends it what the person does. Each answers whether the tool had a use for it. */
export interface Toolbox {
  readonly store: StoreApi<{ readonly state: ToolState }>;
  hover(at: Pointed): boolean;
  takes(at: Pointed): boolean;
  drag(from: Pointed, to: Pointed): boolean;
  release(): boolean;
  click(at: Pointed): boolean;
  enter(): boolean;
  escape(): boolean;
  nudge(way: Nudge, large: boolean): boolean;
  type(key: string, value: number): boolean;
  again(): boolean;
  dispose(): void;
}

export function createToolbox(editor: Editor): Toolbox {
  const store = createStore<{ readonly state: ToolState }>(() => ({ state: first(editor) }));
  const now = (): ToolState => store.getState().state;
  const go = (next: ToolState | undefined): boolean => {
    if (next === undefined) return false;
    if (next !== now()) store.setState({ state: next });
    // A tool that is done makes way for rest; the button in the column follows.
    const tool = toolOf(next);
    if (editor.store.getState().tool !== tool) editor.hold(tool);
    return true;
  };
  const dispose = editor.store.subscribe((state, before) => {
    if (state.tool !== before.tool && state.tool !== toolOf(now())) {
      now().escape?.();
      store.setState({ state: first(editor) });
    }
  });
  return {
    store,
    hover: (at) => go(now().hover?.(at)),
    takes: (at) => now().takes?.(at) ?? false,
    drag: (from, to) => go(now().drag?.(from, to)),
    release: () => go(now().release?.()),
    click: (at) => go(now().click?.(at)),
    enter: () => go(now().enter?.()),
    escape: () => go(now().escape?.()),
    nudge: (way, large) => go(now().nudge?.(way, large)),
    type: (key, value) => go(now().type?.(key, value)),
    again: () => go(now().again?.()),
    dispose,
  };
}

const TOOLS = { rest: resting, camera: seeking, lamp: placing, place: pointingPlace } as const;

/** The first word of a state's name is its tool. */
const toolOf = ({ name }: ToolState): keyof typeof TOOLS => {
  const [word] = name.split(' ');
  return word === 'camera' || word === 'lamp' || word === 'place' ? word : 'rest';
};

const first = (editor: Editor): ToolState => TOOLS[editor.store.getState().tool](editor);
