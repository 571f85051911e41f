import { turn } from '../../base/angle.ts';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Plan } from '../../plan/plan.ts';
import { TOOLS, type Editor, type Tool } from '../editor.ts';
import { words, type Act, type Compass, type Nudge, type ToolState, type TypedBy } from './chart.ts';
import type { Pointed } from './pointed.ts';
import { seeking } from './camera/seeking.ts';
import { isSameChain } from './drawing/openChain.ts';
import type { LaterTools } from './laterTools.ts';
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
  act(act: Act, at: Pointed | null): boolean;
  /** Fetches the tools that it was made without; one that waits for them goes on. */
  fetch(): Promise<void>;
  dispose(): void;
}

/** Makes the toolbox; without `later` it fetches those tools when the first of them is taken in hand. */
export function createToolbox(editor: Editor, later: LaterTools | null = null): Toolbox {
  let tools = later;
  /** Where the tool in hand begins; waiting, while it is fetched. */
  const first = (): ToolState => {
    const { tool, chain } = editor.store.getState();
    if (AT_ONCE[tool]) return AT_ONCE[tool](editor);
    if (tools === null) {
      void fetch();
      return { name: `${tool} waits`, strip: words('One moment.'), ghost: null, cursor: 'default' };
    }
    return (
      (chain?.tool === tool ? tools.resumed(editor, chain) : null) ??
      tools.makers[tool]?.(editor) ??
      resting(editor)
    );
  };
  const fetch = async (): Promise<void> => {
    try {
      const loaded = await import('./laterTools.ts');
      tools ??= loaded.LATER_TOOLS;
    } catch {
      editor.say('The drawing tools could not be fetched. Look to the connection, then take the tool again.');
      if (now().name.endsWith(' waits')) editor.hold('rest');
      return;
    }
    if (now().name.endsWith(' waits')) store.setState({ state: first() });
  };
  const store = createStore<{ readonly state: ToolState }>(() => ({ state: first() }));
  const now = (): ToolState => store.getState().state;
  /** A state is at work; what it does to the plan is its own. */
  let busy = false;
  let dragging = false;
  /** The drag under way was called off by an undo: the pointer goes on, to no effect, until it is let go. */
  let calledOff = false;
  /** A chain that Esc dropped, until the plan changes or another begins. */
  let dropped: { readonly state: ToolState; readonly plan: Plan } | null = null;

  const go = (next: ToolState | undefined): boolean => {
    if (next === undefined) return false;
    if (next !== now()) store.setState({ state: next });
    // A tool that is done makes way for rest; the button in the column follows.
    const tool = toolOf(next);
    if (editor.store.getState().tool !== tool) editor.hold(tool);
    return true;
  };
  const send = (event: (state: ToolState) => ToolState | undefined): boolean => {
    busy = true;
    try {
      return go(event(now()));
    } finally {
      busy = false;
    }
  };
  const drop = (state: ToolState) => {
    if (state.back) dropped = { state, plan: editor.store.getState().plan };
  };
  const escape = (): boolean => {
    const before = now();
    const used = send((state) => state.escape?.());
    if (before.back && !now().back) drop(before);
    return used;
  };
  /** Ctrl+Z in a chain takes its last corner; after Esc it brings the chain back to hand. */
  const back = (): boolean => {
    const before = now();
    if (before.back) {
      send((state) => state.back?.());
      return now() !== before;
    }
    if (dropped === null || dropped.plan !== editor.store.getState().plan) return false;
    const { state } = dropped;
    dropped = null;
    return send(() => state);
  };

  const stops = [
    editor.beforeUndo(back),
    store.subscribe(({ state }) => editor.draws(state.chain ?? null)),
    editor.store.subscribe((state, before) => {
      if (state.chain && state.chain !== before.chain && !isSameChain(state.chain, now().chain ?? null)) {
        // A draft comes back to hand.
        drop(now());
        store.setState({ state: first() });
      } else if (state.tool !== before.tool && state.tool !== toolOf(now())) {
        drop(now());
        now().escape?.();
        store.setState({ state: first() });
      } else if (before.gesturing && !state.gesturing && !busy) {
        calledOff = dragging;
        store.setState({ state: first() });
      } else if (state.selection !== before.selection && !busy && toolOf(now()) === 'rest' && !dragging) {
        // What the keys do at rest goes by what is selected.
        store.setState({ state: first() });
      } else if (state.plan !== before.plan && !busy && !dragging) send((now) => now.overtaken?.());
    }),
  ];
  return {
    store,
    hover: (at) => send((state) => state.hover?.(at)),
    takes: (at) => now().takes?.(at) ?? false,
    drag: (from, to) => {
      if (calledOff) return true;
      dragging = true;
      return send((state) => state.drag?.(from, to));
    },
    release: () => {
      dragging = false;
      const wasOff = calledOff;
      calledOff = false;
      return wasOff || send((state) => state.release?.());
    },
    click: (at) => send((state) => state.click?.(at)),
    enter: () => send((state) => state.enter?.()),
    escape: () => {
      [dragging, calledOff] = [false, false];
      return escape();
    },
    double: (at) => send((state) => (state.double ? state.double(at) : state.click?.(at))),
    back: () => send((state) => state.back?.()),
    nudge: (way, large, compass = northUp) => send((state) => state.nudge?.(way, large, compass)),
    tab: (back) => send((state) => state.tab?.(back)),
    swap: () => send((state) => state.swap?.()),
    type: (key, value) => send((state) => state.type?.(key, value)),
    typed: (key, text, by, compass = northUp) => {
      let trouble: string | null = 'Nothing takes a number here.';
      send((state) => {
        const typed = state.typed?.(key, text, by, compass);
        if (typed) trouble = typed.ok ? null : typed.trouble;
        return typed?.ok ? typed.state : undefined;
      });
      return trouble;
    },
    choose: (key, option) => send((state) => state.choose?.(key, option)),
    again: () => send((state) => state.again?.()),
    act: (act, at) => send((state) => state.act?.(act, at)),
    fetch,
    dispose: () => stops.forEach((stop) => stop()),
  };
}

/** Seen from above with north up; the nearest of the headings. */
const northUp: Compass = (way, axes) => {
  const asked = { up: 0, right: 90, down: 180, left: 270 }[way];
  return axes.toSorted((a, b) => Math.abs(turn(asked, a)) - Math.abs(turn(asked, b)))[0] ?? asked;
};

const AT_ONCE: Partial<Readonly<Record<Tool, (editor: Editor) => ToolState>>> = {
  rest: resting,
  camera: seeking,
};

/** The first word of a state's name is its tool. */
const toolOf = (state: ToolState): Tool => TOOLS.find((tool) => state.name.split(' ')[0] === tool) ?? 'rest';
