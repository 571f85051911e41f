import { createStore } from 'zustand/vanilla';
import { createHistory, record, redo, stepNames, undo } from '../plan/history.ts';
import type { History } from '../plan/history.ts';
import type { Plan } from '../plan/plan.ts';
import { whatChanged } from './changedThing.ts';
import type { Target } from '../coverage/target.ts';
import { thingOf } from './recordsOf.ts';
import type { Editor, EditorState, Gesture, Selected } from './editor.ts';
import { isSameChain } from './tools/drawing/openChain.ts';
import type { SightPort } from './sightPort.ts';

/** Steps on one number within this time are one step of history, ms. */
const MERGE_WITHIN = 1000;

/** The editor of a plan. `now` is the clock, ms, by which arrow steps are taken together. */
export function createEditor(plan: Plan, now: () => number = Date.now, begun = createHistory(plan)): Editor {
  const store = createStore<EditorState>(() => fresh(begun, 1));
  let history: History = begun;
  let held: { readonly name: string; readonly atPress: Plan } | null = null;
  let merging: { readonly key: string; readonly before: History; at: number } | null = null;
  let notices = 0;
  let backs: readonly (() => boolean)[] = [];
  let sight: SightPort | null = null;

  const show = (next: Plan, rest: Partial<EditorState> = {}) => {
    const state = store.getState();
    const names = stepNames(history);
    store.setState({
      undoName: names.undo,
      redoName: names.redo,
      ...(next === state.plan
        ? {}
        : { plan: next, revision: state.revision + 1, ...stillThere(state, next) }),
      ...rest,
    });
  };

  const say: Editor['say'] = (text, faults = []) => {
    notices += 1;
    store.setState({ notice: { id: notices, tone: faults.length > 0 ? 'trouble' : 'said', text, faults } });
  };

  const refused = (): boolean => {
    if (!store.getState().readOnly) return false;
    say('This plan is edited in another tab. Edit here instead, then change it.');
    return true;
  };

  const endGesture = (keep: boolean) => {
    if (!held) return;
    const { name, atPress } = held;
    held = null;
    if (!keep) return show(atPress, { gesturing: false });
    history = record(history, name, store.getState().plan);
    show(history.plan, { gesturing: false });
  };

  const travel = (way: 'undo' | 'redo') => {
    if (held) return endGesture(false);
    if (way === 'undo' && backs.some((back) => back())) return;
    const name = stepNames(history)[way];
    if (name === null || refused()) return;
    merging = null;
    const before = history.plan;
    history = way === 'undo' ? undo(history) : redo(history);
    const changed = whatChanged(before, history.plan);
    show(history.plan, changed.length > 0 ? { selection: changed, selected: changed.at(-1) ?? null } : {});
    say(`${way === 'undo' ? 'Undone' : 'Done again'}: ${name}`);
  };

  return {
    store,
    run: (name, change, merge) => {
      if (refused()) return;
      endGesture(true);
      const next = change(history.plan);
      if (next === history.plan) return;
      const at = now();
      const goesOn = merge !== undefined && merging?.key === merge && at - merging.at <= MERGE_WITHIN;
      const before: History = goesOn && merging ? merging.before : history;
      history = record(before, name, next);
      merging = merge === undefined ? null : { key: merge, before, at };
      show(history.plan);
    },
    begin: (name): Gesture => {
      endGesture(true);
      merging = null;
      const mine = { name, atPress: history.plan };
      if (refused()) return { change: nothing, commit: nothing, cancel: nothing };
      held = mine;
      store.setState({ gesturing: true });
      // A gesture that another one has ended does nothing more.
      return {
        change: (change) => {
          if (held === mine) show(change(mine.atPress));
        },
        commit: () => {
          if (held === mine) endGesture(true);
        },
        cancel: () => {
          if (held === mine) endGesture(false);
        },
      };
    },
    undo: () => travel('undo'),
    beforeUndo: (back) => {
      backs = [back, ...backs];
      return () => {
        backs = backs.filter((other) => other !== back);
      };
    },
    sightLine: (from, to) => sight?.(from, to) ?? null,
    lendSight: (port) => {
      sight = port;
    },
    redo: () => travel('redo'),
    history: () => (held ? record(history, held.name, store.getState().plan) : history),
    open: (next, steps = createHistory(next)) => {
      held = null;
      merging = null;
      history = steps;
      const { plan: former, revision, target, kept, readOnly, coverShaping } = store.getState();
      store.setState({
        ...fresh(steps, revision + 1),
        // The faces of another plan are not those of this one.
        target: target.kind === 'surface' ? GROUND : target,
        kept: { at: null, trouble: kept.trouble },
        coverShaping,
        // Whoever keeps plans finds out about another one; on the same one nothing has changed.
        readOnly: readOnly && former.id === next.id,
      });
    },
    select: (selected) => {
      const { selected: former, selection } = store.getState();
      if (sameThing(former, selected) && selection.length <= 1) return;
      store.setState({ selected, selection: selected ? [selected] : [] });
    },
    selectAll: (things) => store.setState({ selected: things.at(-1) ?? null, selection: things }),
    toggle: (thing) => {
      const { selection } = store.getState();
      const rest = selection.filter((other) => !sameThing(other, thing));
      const next = rest.length < selection.length ? rest : [...selection, thing];
      store.setState({ selected: next.at(-1) ?? null, selection: next });
    },
    snap: (snapping) => store.setState({ snapping }),
    coverShaping: (coverShaping) => store.setState({ coverShaping }),
    hover: (hovered) => {
      if (!sameThing(store.getState().hovered, hovered)) store.setState({ hovered });
    },
    point: (pointed) => store.setState({ pointed }),
    ask: (target) => {
      const { target: former, revision } = store.getState();
      if (JSON.stringify(former) === JSON.stringify(target)) return;
      store.setState({ target, revision: revision + 1 });
    },
    askIn: (situation) => {
      const { situation: former, revision } = store.getState();
      if (former !== situation) store.setState({ situation, revision: revision + 1 });
    },
    showAlone: (alone) => {
      const { alone: former, revision } = store.getState();
      if (former !== alone) store.setState({ alone, revision: revision + 1 });
    },
    hold: (tool) => store.setState({ tool }),
    draws: (chain) => {
      if (!isSameChain(chain, store.getState().chain)) store.setState({ chain });
    },
    takeUp: (chain) => store.setState({ tool: chain.tool, chain }),
    measured: (measured) => store.setState({ measured }),
    stand: (where) => store.setState({ standing: { ...store.getState().standing, ...where } }),
    say,
  };
}

/** Where somebody stands until they are moved, m ahead of the lens. */
const FIRST_AHEAD = 4;

const nothing = () => undefined;

const GROUND: Target = { kind: 'ground', height: 0 };

const fresh = (history: History, revision: number): EditorState => ({
  plan: history.plan,
  revision,
  selected: null,
  selection: [],
  hovered: null,
  target: GROUND,
  situation: null,
  alone: null,
  tool: 'rest',
  chain: null,
  snapping: true,
  coverShaping: false,
  undoName: stepNames(history).undo,
  redoName: stepNames(history).redo,
  gesturing: false,
  readOnly: false,
  kept: { at: null, trouble: null },
  notice: null,
  measured: [],
  pointed: null,
  standing: { ahead: FIRST_AHEAD, at: null },
});

/** What refers to a thing that the plan no longer has lets go of it. */
function stillThere(state: EditorState, plan: Plan): Partial<EditorState> {
  const has = (thing: Selected | null): boolean => thing === null || thingOf(plan, thing) !== undefined;
  const { target } = state;
  const isGone =
    target.kind === 'surface' &&
    (target.surface.of === 'patch'
      ? !Object.hasOwn(plan.patches, target.surface.patch)
      : !Object.hasOwn(plan.structures, target.surface.structure));
  return {
    ...(isGone ? { target: GROUND } : {}),
    ...(state.selection.every(has) ? {} : stillSelected(state.selection.filter(has))),
    ...(has(state.hovered) ? {} : { hovered: null }),
    ...(state.situation === null || Object.hasOwn(plan.situations, state.situation)
      ? {}
      : { situation: null }),
    ...(state.alone === null || Object.hasOwn(plan.cameras, state.alone) ? {} : { alone: null }),
  };
}

const stillSelected = (selection: readonly Selected[]) => ({ selection, selected: selection.at(-1) ?? null });

const sameThing = (a: Selected | null, b: Selected | null): boolean =>
  a === b || (a?.kind === b?.kind && (a && 'id' in a ? a.id : null) === (b && 'id' in b ? b.id : null));
