import { fixed } from '../../../base/length.ts';
import type { Limit } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor, Selected } from '../../editor.ts';
import { attempt, type Attempt } from '../../shaping/attempt.ts';
import { expanded } from '../../shaping/selection.ts';
import { nameOfSelected, thingOf } from '../../recordsOf.ts';
import type { Setting } from '../../settings/setting.ts';
import { setGot } from '../../settings/structureSettings.ts';
import type { Strip, StripChoice, StripField, ToolState, Typed } from '../chart.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { resting } from '../rest/resting.ts';
import { typedField } from '../typing/typedNumber.ts';

/** A choice that a thing still asks, and the plan with another option chosen. */
interface Choice extends StripChoice {
  change(plan: Plan, option: string): Plan;
}

/** A number that a thing still asks. */
export interface Field extends Setting {
  /** Better words for why a value will not do; null where there are none. */
  refusal?(plan: Plan, value: number): string | null;
}

/** What is asked of a thing that was just made. */
export interface Questions {
  readonly choices: readonly Choice[];
  readonly fields: readonly Field[];
  /** What of it cannot be as it was asked; null: all can. */
  readonly trouble: string | null;
  /** What is said meanwhile; without it the thing's name. */
  readonly text?: string;
}

/**
 * At rest with a thing selected that was just made, and a strip that still asks: each answer is a step of its own. The
 * strip goes with Enter, with Esc, and with anything that rest has a use for.
 * @param under what rest does meanwhile
 */
export function asking(
  editor: Editor,
  thing: Selected,
  questions: (plan: Plan) => Questions,
  under: ToolState = resting(editor),
): ToolState {
  const { plan } = editor.store.getState();
  const name = nameOfSelected(plan, thing);
  if (name === undefined) return under;
  const asked = questions(plan);
  const again = (rest: ToolState = under): ToolState => asking(editor, thing, questions, rest);
  const isThere = (): boolean => thingOf(editor.store.getState().plan, thing) !== undefined;
  /** The strip stays while rest only looks about. */
  const kept = (rest: ToolState | undefined): ToolState => {
    if (!rest) return again();
    return rest.name === 'rest' && rest.strip === null && isThere() ? again(rest) : rest;
  };
  const step = (label: string, next: Plan, merge?: string): void => {
    editor.run(`${label} of ${name}`, () => next, merge);
    // A group that grew is still selected as a whole.
    if (thing.kind === 'group') editor.selectAll(expanded(editor.store.getState().plan, [thing]));
  };
  const answered = (field: Field, value: number): Attempt => {
    const { plan: now } = editor.store.getState();
    const tried = attempt(now, (before) => field.change(before, value));
    return tried.ok ? tried : { ...tried, words: field.refusal?.(now, value) ?? tried.words };
  };
  const typed = (key: string, text: string, isLast: boolean): Typed => {
    if (!isThere()) return { ok: true, state: under };
    const field = asked.fields.find((one) => one.key === key);
    if (!field) return { ok: false, trouble: 'Nothing takes a number here.' };
    const { units } = plan.settings;
    const measure = measureOf(field);
    const read = typedField(text, measure, units);
    if (!read.ok) return read;
    const { least, most } = field.bounds;
    if (read.value < least || read.value > most)
      return { ok: false, trouble: boundsWords(field, (value) => shown(value, measure, units)) };
    const tried = answered(field, read.value);
    if (!tried.ok) return { ok: false, trouble: tried.words };
    // A size typed as it stands already is known from then on.
    const next = thing.kind === 'structure' ? setGot(tried.plan, thing.id, key, 'measured') : tried.plan;
    step(field.label, next);
    return { ok: true, state: isLast ? resting(editor) : again() };
  };
  const troubled = (trouble: string): ToolState => ({
    ...again(),
    strip: stripOf(name, { ...asked, trouble }),
  });
  return {
    ...under,
    name: 'rest asking',
    strip: stripOf(name, asked),
    hover: (at) => kept(under.hover?.(at)),
    enter: () => resting(editor),
    escape: () => resting(editor),
    typed: (key, text, by) => typed(key, text, by === 'enter' || asked.fields.at(-1)?.key === key),
    type: (key, value) => {
      const field = asked.fields.find((one) => one.key === key);
      if (!field || !isThere()) return again();
      const { least, most } = field.bounds;
      const held = Math.min(most, Math.max(least, value));
      const tried = answered(field, held);
      if (!tried.ok) return troubled(tried.words);
      step(field.label, tried.plan, `${key} of ${name}`);
      return again();
    },
    choose: (key, option) => {
      const choice = asked.choices.find((one) => one.key === key);
      if (!choice || !isThere()) return again();
      const tried = attempt(editor.store.getState().plan, (now) => choice.change(now, option));
      if (!tried.ok) return troubled(tried.words);
      step(choice.label, tried.plan);
      return again();
    },
  };
}

function stripOf(name: string, { choices, fields, trouble, text }: Questions): Strip {
  return {
    text: trouble ?? text ?? name,
    fields: fields.map((field) => ({
      key: field.key,
      label: field.label,
      value: field.value,
      measure: measureOf(field),
    })),
    choices: choices.map(({ key, label, options, chosen }) => ({ key, label, options, chosen })),
    trouble: trouble !== null,
  };
}

const measureOf = ({ measure }: Setting): StripField['measure'] =>
  measure === 'length' || measure === 'count' ? measure : 'angle';

const shown = (
  value: number,
  measure: StripField['measure'],
  unit: Parameters<typeof lengthWords>[1],
): string =>
  measure === 'length'
    ? lengthWords(value, unit)
    : measure === 'angle'
      ? `${fixed(value, 1)}°`
      : String(value);

function boundsWords({ label, bounds, value }: Setting, say: (value: number) => string): string {
  const { least, most }: Limit = bounds;
  return `${label} must be from ${say(least)} to ${say(most)}. ${say(value)} is kept.`;
}
