import type { Command } from '../editor/commands.ts';
import type { Tool } from '../editor/editor.ts';
import type { Stepping } from '../editor/stepping.ts';
import type { Model } from './Model.ts';
import { askForFace } from './navigate/faceOf.ts';
import { squareOn } from './navigate/squareOn.ts';
import { lookThrough, stand } from './navigate/ways.ts';

/** The tools, as a person calls them. */
const TOOLS: readonly (readonly [Tool, string, string | null, string])[] = [
  ['outline', 'Draw a building by its outline', 'W', 'house garage wall'],
  ['line', 'Draw a fence, a wall or a hedge', 'F', 'barrier'],
  ['posts', 'Draw a row of posts', null, 'bollards columns fence array'],
  ['block', 'Draw a block or a canopy', 'B', 'porch shed bin store'],
  ['boundary', 'Draw the site boundary', 'G', 'plot'],
  ['opening', 'Put in a door, window, gate or archway', 'O', ''],
  ['tree', 'Place a tree', 'T', ''],
  ['vehicle', 'Place a car or a van', 'V', ''],
  ['spot', 'Give a spot height', null, 'ground level'],
  ['camera', 'Place a camera', 'C', ''],
  ['lamp', 'Place a lamp', 'U', 'light'],
  ['stand', 'Pick where somebody stands', null, 'person face figure'],
  ['measure', 'Measure', 'M', 'distance area angle sight line'],
];

/** What concerns the view and the tools in the Model. */
export function modelCommands(model: Model): readonly Command[] {
  const { editor, view } = model;
  const at = () => model.pivotFor(null);
  const command = (
    id: string,
    label: string,
    keys: string | null,
    also: string,
    run: () => void,
  ): Command => ({
    id,
    label,
    keys,
    also,
    run: () => {
      model.focus();
      run();
    },
  });
  const readOnly = () => (editor.store.getState().readOnly ? 'This plan is edited in another tab.' : null);
  const noneSelected = () => (editor.store.getState().selected === null ? 'Select something first' : null);
  const noCamera = () =>
    editor.store.getState().selected?.kind === 'camera' ? null : 'Select a camera first';
  return [
    ...TOOLS.map(([tool, label, keys, also]) => ({
      ...command(`tool ${tool}`, label, keys, also, () => editor.hold(tool)),
      off: readOnly,
    })),
    command('plan view', 'From above, and back', 'P', 'plan view top', () => view.togglePlan(at())),
    command('home', 'Show the whole site', 'Home', 'fit all zoom', () => view.home()),
    {
      ...command('fit', 'Show what is selected', 'Z', 'fit zoom', () =>
        model.fit(editor.store.getState().selected),
      ),
      off: noneSelected,
    },
    command(
      'face',
      'Coverage of the wall or roof in the middle of the view',
      'Shift E',
      'target facade',
      () => askForFace(model),
    ),
    command('square on', 'Look square on to a wall', 'E', 'elevation', () => squareOn(model)),
    command('stand', 'Stand in the middle of the view', 'S', 'walk', () => stand(model)),
    {
      ...command('lens', 'Look through the lens', 'I', 'camera view', () => lookThrough(model)),
      off: noCamera,
    },
  ];
}

/** Shows a newcomer what to do next. */
export const firstStepsCommand = (model: Model, steps: Stepping): Command => ({
  id: 'first steps',
  label: 'Show the first steps',
  also: 'help begin tutorial how',
  keys: null,
  run: () => {
    model.focus();
    steps.show();
  },
});
