import { turn } from '../../base/angle.ts';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Editor, Tool } from '../editor.ts';
import type { Compass, Nudge, ToolState, TypedBy } from './chart.ts';
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
  double(at: Pointed): boolean;
  back(): boolean;
  nudge(way: Nudge, large: boolean, compass?: Compass): boolean;
  tab(back: boolean): boolean;
  swap(): boolean;
  type(key: string, value: number): boolean;
  /** What was typed into a field. Answers null where it was taken, else why not. */
  typed(key: string, text: string, by: TypedBy, compass?: Compass): string | null;
  choose(key: string, option: string): boolean;
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
    double: (at) => go(now().double ? now().double?.(at) : now().click?.(at)),
    back: () => go(now().back?.()),
    nudge: (way, large, compass = northUp) => go(now().nudge?.(way, large, compass)),
    tab: (back) => go(now().tab?.(back)),
    swap: () => go(now().swap?.()),
    type: (key, value) => go(now().type?.(key, value)),
    typed: (key, text, by, compass = northUp) => {
      const typed = now().typed?.(key, text, by, compass);
      if (typed === undefined) return 'Nothing takes a number here.';
      if (!typed.ok) return typed.trouble;
      go(typed.state);
      return null;
    },
    choose: (key, option) => go(now().choose?.(key, option)),
    again: () => go(now().again?.()),
    dispose,
  };
}

/** Seen from above with north up; the nearest of the headings. */
const northUp: Compass = (way, axes) => {
  const asked = { up: 0, right: 90, down: 180, left: 270 }[way];
  return axes.toSorted((a, b) => Math.abs(turn(asked, a)) - Math.abs(turn(asked, b)))[0] ?? asked;
};

const TOOLS: Partial<Readonly<Record<Tool, (editor: Editor) => ToolState>>> = {
  rest: resting,
  camera: seeking,
  lamp: placing,
  place: pointingPlace,
};

/** The first word of a state's name is its tool. */
const toolOf = ({ name }: ToolState): Tool => {
  const [word] = name.split(' ');
  return word !== undefined && isTool(word) ? word : 'rest';
};

const isTool = (word: string): word is Tool => Object.hasOwn(TOOLS, word);

const first = (editor: Editor): ToolState => (TOOLS[editor.store.getState().tool] ?? resting)(editor);
