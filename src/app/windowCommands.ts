import { judgeBy } from '../editor/acts.ts';
import type { Command } from '../editor/commands.ts';
import type { Editor } from '../editor/editor.ts';
import type { PlanSettings } from '../plan/plan.ts';
import type { Desk, DeskStore } from './desk.ts';
import { goToName, notNamed } from './goToName.ts';
import type { Openings } from './opening.ts';
import type { Tracing } from './pictures/tracing.ts';
import { wallAsked } from '../editor/pictures/wallAsked.ts';
import { chooseTheme } from './theme.ts';

interface CommandParts {
  readonly editor: Editor;
  readonly desk: DeskStore;
  readonly openings: Openings;
  readonly tracing: Tracing;
  save(): void;
}

const UNITS: readonly (readonly [PlanSettings['units'], string])[] = [
  ['metres', 'Metres'],
  ['millimetres', 'Millimetres'],
  ['feet', 'Feet and inches'],
];

/** What concerns the whole plan and the window. */
export function windowCommands({ editor, desk, openings, tracing, save }: CommandParts): readonly Command[] {
  const { store } = editor;
  const sheet = (name: Desk['sheet']) => () => desk.setState({ sheet: name, drawer: true, tab: 'setting' });
  const page = (name: Desk['page']) => () => desk.setState({ page: name });
  const command = (id: string, label: string, keys: string | null, run: () => void, also = ''): Command => ({
    id,
    label,
    keys,
    run,
    also,
  });
  return [
    command('open', 'Open a street or a plan', 'Ctrl O', openings.choose, 'file import footprints'),
    command('kept', 'Open a plan kept on this device', null, openings.show, 'recent'),
    command('new', 'New, empty plan', null, openings.empty),
    command('sample', 'Open the sample', null, openings.sample, 'demo'),
    command('trace', 'Trace a drawing or a photo', null, tracing.choose, 'picture pdf underlay deeds plan'),
    command('pin', 'Pin a photo', null, tracing.pin, 'picture place taken'),
    {
      ...command(
        'square',
        'Square a photo onto this wall',
        null,
        () => {
          const wall = wallAsked(store.getState());
          if (wall) tracing.square(wall.structure, wall.face);
        },
        'facade elevation picture perspective',
      ),
      off: () => (wallAsked(store.getState()) === null ? 'Select a building first' : null),
    },
    command('shapes', 'Begin with a shape', null, sheet('shapes'), 'detached terrace shop yard farm'),
    command('save', 'Save to a file', 'Ctrl S', save, 'download export'),
    {
      ...command('undo', 'Undo', 'Ctrl Z', () => editor.undo(), 'back'),
      off: () => (store.getState().undoName === null ? 'Nothing to undo' : null),
    },
    {
      ...command('redo', 'Redo', 'Ctrl Y', () => editor.redo(), 'again'),
      off: () => (store.getState().redoName === null ? 'Nothing to do again' : null),
    },
    {
      ...command(
        'rename',
        'Rename what is selected …',
        'F2',
        () => goToName(editor, desk),
        'name call title',
      ),
      off: () => notNamed(editor),
    },
    command('versions', 'Versions to go back to', null, sheet('versions'), 'history snapshot'),
    command(
      'section',
      'Section below the Model, or not',
      null,
      () => desk.setState(({ section }) => ({ section: !section, tab: 'section' })),
      'cut side tilt height',
    ),
    command('page model', 'Model', null, page('model'), 'page site view'),
    command(
      'page trial',
      'Lens trial: settings of one spot side by side',
      null,
      page('trial'),
      'compare wipe focal',
    ),
    command('page cards', 'Drill cards', null, page('cards'), 'print paper hole installer pdf'),
    command(
      'page sum',
      'Quick sum: a camera over flat ground',
      null,
      page('sum'),
      'calculator lens distance',
    ),
    {
      ...command(
        'look',
        'Camera’s view: what the camera sees, or the Model again',
        null,
        () =>
          desk.setState(({ look: shown }) => ({
            look: shown === 'model' ? 'picture' : 'model',
            page: 'model',
          })),
        'picture lens aim',
      ),
      off: () => (store.getState().plan.cameraOrder.length === 0 ? 'Place a camera first' : null),
    },
    command(
      'person',
      'Person at true pixels',
      null,
      () => desk.setState({ strip: 'person', section: true, page: 'model', tab: 'section' }),
      'face plate parcel',
    ),
    command('survey', 'Survey list: what to measure on site', null, sheet('survey'), 'print tape guessed'),
    command('keys', 'Keys', '?', sheet('keys'), 'help shortcuts'),
    command(
      'theme',
      'Light or dark theme',
      null,
      () => chooseTheme(desk, desk.getState().theme === 'dark' ? 'light' : 'dark'),
      'night colours',
    ),
    command('snap', 'Snapping off or on', 'N', () => editor.snap(!store.getState().snapping), 'grid'),
    command(
      'cover shaping',
      'Coverage while shaping: off or on',
      null,
      () => {
        const on = !store.getState().coverShaping;
        editor.coverShaping(on);
        editor.say(`Coverage while shaping: ${on ? 'on' : 'off, it follows when you let go'}`);
      },
      'drag live',
    ),
    command(
      'ground',
      'Ground and settings of the plan',
      null,
      () => {
        editor.select(null);
        sheet('setting')();
      },
      'site edition units',
    ),
    ...UNITS.map(([units, words]) =>
      command(
        `units ${units}`,
        `Show lengths in ${words.toLowerCase()}`,
        null,
        () => judgeBy(editor, { units }),
        'units',
      ),
    ),
  ];
}
