import type { Command } from '../../editor/commands.ts';
import { thingAt } from '../../editor/tools/rest/resting.ts';
import { nameOfSelected } from '../../editor/recordsOf.ts';
import type { Model } from '../Model.ts';
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
export function menuActs(model: Model, { at }: OpenMenu): MenuActs {
  const { editor, view, assessment } = model;
  const { plan, selected } = editor.store.getState();
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
    thing && selected !== thing ? act('select', `Select ${name}`, null, () => editor.select(thing)) : null,
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
  return { title: name, acts: acts.filter((one) => one !== null) };
}
