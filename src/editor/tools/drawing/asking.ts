import { fixed } from '../../../base/length.ts';
import type { Limit } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor, Selected } from '../../editor.ts';
import { nameOfSelected, thingOf } from '../../recordsOf.ts';
import type { Setting } from '../../settings/setting.ts';
import { setGot } from '../../settings/structureSettings.ts';
import type { Strip, StripChoice, StripField, ToolState, Typed } from '../chart.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { resting } from '../rest/resting.ts';
import { typedField } from '../typing/typedNumber.ts';

/** A choice that a thing still asks, and the plan with another option chosen. */
export interface Choice extends StripChoice {
  change(plan: Plan, option: string): Plan;
}

/** What is asked of a thing that was just made. */
export interface Questions {
  readonly choices: readonly Choice[];
  readonly fields: readonly Setting[];
  /** What of it cannot be as it was asked; null: all can. */
  readonly trouble: string | null;
  /** Why a plan with an answer taken will not do; null where it will. */
  refusal?(next: Plan): string | null;
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
    const refusal = asked.refusal?.(field.change(editor.store.getState().plan, read.value)) ?? null;
    if (refusal !== null) return { ok: false, trouble: refusal };
    editor.run(`${field.label} of ${name}`, (now) => {
      const next = field.change(now, read.value);
      // A size typed as it stands already is known from then on.
      return thing.kind === 'structure' ? setGot(next, thing.id, key, 'measured') : next;
    });
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
      const refusal = asked.refusal?.(field.change(editor.store.getState().plan, held)) ?? null;
      if (refusal !== null) return troubled(refusal);
      editor.run(`${field.label} of ${name}`, (now) => field.change(now, held), `${key} of ${name}`);
      return again();
    },
    choose: (key, option) => {
      const choice = asked.choices.find((one) => one.key === key);
      if (choice && isThere()) editor.run(`${choice.label} of ${name}`, (now) => choice.change(now, option));
      return again();
    },
  };
}

function stripOf(name: string, { choices, fields, trouble }: Questions): Strip {
  return {
    text: trouble ?? name,
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
