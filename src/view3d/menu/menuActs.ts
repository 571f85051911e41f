import type { Command } from '../../editor/commands.ts';
import type { Selected } from '../../editor/editor.ts';
import type { Act } from '../../editor/tools/chart.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import { thingAt } from '../../editor/tools/rest/thingAt.ts';
import { nameOfSelected } from '../../editor/recordsOf.ts';
import type { Model } from '../Model.ts';
import { ACTS } from '../navigate/actKeys.ts';
import { askForFace } from '../navigate/faceOf.ts';
import type { OpenMenu } from '../navigate/Hands.ts';
import { squareOn } from '../navigate/squareOn.ts';
import { standAt, standSpot } from '../navigate/stays.ts';
import { lookThrough } from '../navigate/ways.ts';

/** What the menu says it is about, and what may be done there. */
export interface MenuActs {
  readonly title: string;
  readonly acts: readonly Command[];
}

/** The acts for what is pointed at: the view of it first, then what changes it. */
export function menuActs(model: Model, { at }: OpenMenu, window: readonly Command[] = []): MenuActs {
  const { editor, view, assessment } = model;
  const { plan, selection } = editor.store.getState();
  const thing = thingAt(editor, at);
  const name = nameOfSelected(plan, thing) ?? 'Ground';
  const act = (id: string, label: string, keys: string | null, run: () => void): Command => ({
    id,
    label,
    keys,
    run,
  });
  const wall = at.struck !== null && at.struck.structure !== null && Math.abs(at.struck.normal[2]) < 0.2;
  const ground = assessment?.scene.ground ?? 0;
  const spot = standSpot(at, ground);
  const acts = [
    thing && !selection.some((one) => 'id' in one && 'id' in thing && one.id === thing.id)
      ? act('select', `Select ${name}`, null, () => editor.select(thing))
      : null,
    thing ? act('fit', 'Go to it', 'Z', () => model.fit(thing)) : null,
    (at.struck?.structure ?? null) !== null
      ? act('ask face', 'Coverage of this face', 'Shift E', () => askForFace(model, at))
      : null,
    wall ? act('square on', 'Look square on', 'E', () => squareOn(model, at)) : null,
    thing?.kind === 'camera'
      ? act('lens', 'Look through its lens', 'I', () => {
          editor.select(thing);
          lookThrough(model);
        })
      : null,
    spot ? act('stand', 'Stand here', 'S', () => view.enter(standAt(spot, view.goal.bearing))) : null,
    act('here', 'What is here', 'Q', () => model.here.pin(at)),
    act('plan', view.isPlan ? 'Turned view' : 'From above', 'P', () =>
      view.togglePlan(model.pivotFor(at.struck?.point ?? null)),
    ),
    act('home', 'Show the whole site', 'Home', () => view.home()),
  ];
  return {
    title: name,
    acts: [
      ...acts.filter((one) => one !== null),
      ...changes(model, at, thing),
      ...ofWindow(model, thing, window),
    ],
  };
}

/** What the window does with the thing pointed at: its clipboard and its sheet. */
function ofWindow({ editor }: Model, thing: Selected | null, window: readonly Command[]): Command[] {
  const { selection } = editor.store.getState();
  const isOne = selection.some((one) => thing && 'id' in one && 'id' in thing && one.id === thing.id);
  return window.flatMap((command): Command[] => {
    if (command.id === 'clip paste') return [command];
    if (!OF_THINGS.includes(command.id) || !thing || !('id' in thing)) return [];
    // Off or not goes by the thing pointed at, which is selected before the act.
    const run = () => {
      if (!isOne) editor.select(thing);
      const off = command.off?.() ?? null;
      if (off === null) command.run();
      else editor.say(off);
    };
    return [{ id: command.id, label: command.label, keys: command.keys, run }];
  });
}

const OF_THINGS = ['clip copy', 'clip cut', 'rename'];

/** What changes the thing pointed at; where it is one of several selected, all of them. */
function changes(model: Model, at: Pointed, thing: Selected | null): Command[] {
  const { editor, toolbox } = model;
  const { plan, selection, readOnly } = editor.store.getState();
  if (!thing || !('id' in thing)) return [];
  const { id } = thing;
  const isOne = selection.some((one) => 'id' in one && one.id === id);
  const several = isOne && selection.length > 1;
  const grouped = Object.values(plan.groups).some(({ members }) => members.includes(id));
  const shaped = thing.kind === 'structure' && Object.hasOwn(plan.structures[id] ?? {}, 'outline');
  const suits = (act: Act): boolean => {
    if (act.startsWith('align') || act === 'group') return several;
    if (act === 'ungroup') return grouped;
    if (act === 'split' || act === 'bow') return shaped && !several;
    if (act === 'join') return at.grip?.part === 'corner';
    // The order is that of the list, where it is seen.
    return act !== 'show all' && act !== 'forward' && act !== 'back';
  };
  return ACTS.filter(({ act }) => suits(act)).map(({ act, label, keys }) => ({
    id: act,
    label,
    keys,
    off: () => (readOnly ? 'This plan is edited in another tab.' : null),
    run: () => {
      if (!isOne) editor.select(thing);
      toolbox.act(act, at);
    },
  }));
}
