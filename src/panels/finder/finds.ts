import type { Vec3 } from '../../base/vector.ts';
import type { Commands } from '../../editor/commands.ts';
import type { Editor, Selected } from '../../editor/editor.ts';
import { namedPlaces } from '../../editor/namedPlaces.ts';
import { tryStep } from '../../editor/settings/changeSetting.ts';
import type { Setting } from '../../editor/settings/setting.ts';
import { settingsOf } from '../../editor/settings/settingsOf.ts';
import type { Plan } from '../../plan/plan.ts';
import { measureOf } from '../../fittings/measureOf.ts';
import { rankOf, wordsIn } from './matches.ts';

/** One row of the finder. */
export interface Find {
  readonly id: string;
  readonly label: string;
  readonly sort: 'command' | 'thing' | 'value' | 'place';
  readonly keys: string | null;
  /** Why it cannot be done; null where it can. */
  readonly off: string | null;
  /** Goes on typing from this text instead of doing anything. */
  readonly fill?: string;
  run(): void;
}

/** So many rows are shown. */
const MOST = 12;

interface Parts {
  readonly editor: Editor;
  readonly commands: Commands;
}

/** What a typed text may mean, the likeliest first: commands, values, things and places of the plan. */
export function findsFor(typed: string, { editor, commands }: Parts): readonly Find[] {
  const { plan, readOnly } = editor.store.getState();
  const asked = wordsIn(typed);
  const locked = readOnly ? 'This plan is edited in another tab.' : null;
  const found: { readonly find: Find; readonly rank: number }[] = [];
  const offer = (find: Find, text: string, bonus = 0) => {
    const rank = rankOf(asked, text);
    if (rank !== null) found.push({ find, rank: rank + bonus });
  };

  for (const value of valuesFor(typed, plan))
    found.push({
      rank: value.rank - 4,
      find: {
        id: `value ${value.subject} ${value.setting.key}`,
        label: value.label,
        sort: 'value',
        keys: null,
        off: locked,
        run: () => {
          tryStep(editor, `${value.setting.label} of ${value.subject}`, (now) =>
            value.setting.change(now, value.value),
          );
          editor.select(value.thing);
        },
      },
    });
  for (const { id, label, also = '', keys, off, run } of commands.list())
    offer(
      { id, label, sort: 'command', keys, off: off?.() ?? null, run },
      `${label} ${also}`,
      asked.length > 0 ? 0 : 1,
    );
  if (asked.length > 0) {
    for (const { thing, name } of thingsOf(plan))
      offer(
        {
          id: `select ${thing.kind} ${name}`,
          label: name,
          sort: 'thing',
          keys: null,
          off: null,
          run: () => editor.select(thing),
        },
        `select ${name} ${thing.kind}`,
        -1,
      );
    placeFinds(plan, commands, offer);
    numberFinds(plan, offer);
  }
  return found
    .toSorted((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ find }) => find);
}

/** Going to a corner, an opening, a camera; asking what is seen there. */
function placeFinds(
  plan: Plan,
  commands: Commands,
  offer: (find: Find, text: string, bonus?: number) => void,
): void {
  const places = commands.places();
  const off = places === null ? 'The Model is not there yet.' : null;
  for (const { name, at, isTarget } of namedPlaces(plan)) {
    const row = (label: string, run: (point: Vec3) => void) =>
      offer({ id: label, label, sort: 'place', keys: null, off, run: () => run(at) }, label, 1);
    row(`Go to ${name}`, (point) => places?.goTo(point));
    if (isTarget) {
      row(`What hides ${name}?`, (point) => places?.ask(point));
      row(`What sees ${name}?`, (point) => places?.ask(point));
    }
  }
}

/** A number that is named but not typed yet: the row shows how it stands and waits for another. */
function numberFinds(plan: Plan, offer: (find: Find, text: string, bonus?: number) => void): void {
  for (const { thing, name } of thingsOf(plan))
    for (const setting of settingsOf(plan, thing)) {
      const { text, unit } = measureOf(setting.measure, plan.settings.units).show(setting.value);
      const called = `${name}: ${setting.label.toLowerCase()}`;
      offer(
        {
          id: `number ${called}`,
          label: `${called} ${text} ${unit}`.trim(),
          sort: 'value',
          keys: 'type a number',
          off: null,
          fill: `${called.toLowerCase()} `,
          run: () => undefined,
        },
        called,
      );
    }
}

function thingsOf(plan: Plan): readonly { readonly thing: Selected; readonly name: string }[] {
  const named = <K extends 'structure' | 'camera' | 'lamp' | 'situation' | 'patch'>(
    kind: K,
    records: Readonly<Record<string, { readonly id: string; readonly name: string }>>,
  ) => Object.values(records).map(({ id, name }) => ({ thing: { kind, id }, name }));
  return [
    ...named('structure', plan.structures),
    ...named('camera', plan.cameras),
    ...named('lamp', plan.lamps),
    ...named('situation', plan.situations),
    ...named('patch', plan.patches),
    ...(plan.boundary ? [{ thing: { kind: 'boundary' } as const, name: 'Site boundary' }] : []),
  ];
}

interface ValueFound {
  readonly thing: Selected;
  readonly subject: string;
  readonly setting: Setting;
  readonly value: number;
  readonly label: string;
  readonly rank: number;
}

/** "c1 tilt 24", "garage height 2.4 m": the words name a thing and one of its numbers, the rest is the number. */
function valuesFor(typed: string, plan: Plan): readonly ValueFound[] {
  const cut = typed.search(/\s(?=[-(.\d])(?=\S+(\s*[a-z'"/%°\d]+)*\s*$)/iu);
  if (cut < 0) return [];
  const names = wordsIn(typed.slice(0, cut));
  const text = typed.slice(cut).trim();
  if (names.length === 0) return [];
  return thingsOf(plan).flatMap(({ thing, name }) =>
    settingsOf(plan, thing).flatMap((setting) => {
      const rank = rankOf(names, `${name} ${setting.label}`);
      const measure = measureOf(setting.measure, plan.settings.units);
      const reading = rank === null ? null : measure.read(text);
      if (rank === null || !reading?.ok) return [];
      const { least, most } = setting.bounds;
      if (reading.value < least || reading.value > most) return [];
      const { text: shown, unit } = measure.show(reading.value);
      const label = `${name}: ${setting.label.toLowerCase()} ${shown} ${unit}`.trim();
      return [{ thing, subject: name, setting, value: reading.value, label, rank }];
    }),
  );
}
