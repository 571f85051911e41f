import type { Vec2 } from '../../../base/vector.ts';
import { moveThings } from '../../../plan/commands/moveThings.ts';
import type { Plan } from '../../../plan/plan.ts';
import { dimensionsOf } from '../../dimensions/dimensionsOf.ts';
import type { Dimension } from '../../dimensions/dimension.ts';
import type { Editor, Selected } from '../../editor.ts';
import { nameOfSelected } from '../../recordsOf.ts';
import { attempt } from '../../shaping/attempt.ts';
import { thingsOf } from '../../shaping/selection.ts';
import type { Nudge, Strip, ToolState, Typed, TypedBy } from '../chart.ts';
import { ahead, EAST_NORTH, fourOf } from '../drawing/axes.ts';
import { typedField } from '../typing/typedNumber.ts';

const STEP = { length: 0.01, angle: 0.1, count: 1 } as const;

/** Keyboard stops: Tab walks the dimensions of what is selected, arrows step the one that it stands on, digits type it. */
export function stops(
  editor: Editor,
  thing: Selected,
  rest: () => ToolState,
  index = 0,
  swapped = false,
): ToolState | null {
  const { plan } = editor.store.getState();
  const all = dimensionsOf(plan, thing, swapped);
  const stop = all[index];
  if (!stop) return null;
  const name = nameOfSelected(plan, thing) ?? '';
  const measure = measureOf(stop);
  const at = (next: number): ToolState => stops(editor, thing, rest, next, swapped) ?? rest();

  /** Gives the stop a value; answers why it cannot have it. */
  const take = (value: number): string | null => {
    const tried = stop.set(plan, value);
    if (!tried.ok) return tried.words;
    keep(tried.plan);
    return null;
  };
  const keep = (next: Plan): void =>
    editor.run(`${stop.label} of ${name}`, () => next, `stop ${'id' in thing ? thing.id : ''} ${stop.key}`);
  const stepped = (by: number): ToolState => {
    const trouble = take(rounded(stop.value + by));
    return trouble === null ? at(index) : { ...at(index), strip: stripOf(trouble, true) };
  };
  const stripOf = (text: string, trouble = false): Strip => ({
    text,
    fields: [{ key: stop.key, label: stop.label, value: stop.value, measure }],
    trouble,
  });
  const typed = (
    _: string,
    text: string,
    by: TypedBy,
    compass: Parameters<NonNullable<ToolState['typed']>>[3],
  ): Typed => {
    const read = typedField(text, measure, plan.settings.units);
    if (!read.ok) return read;
    const isPosition = stop.key === 'east' || stop.key === 'north';
    const trouble =
      isPosition && isArrow(by) ? walk(read.value, compass(by, fourOf(EAST_NORTH))) : take(read.value);
    if (trouble !== null) return { ok: false, trouble };
    return { ok: true, state: by === 'tab' ? at(index + 1) : by === 'enter' ? rest() : at(index) };
  };
  /** On a position a number and an arrow go that far. */
  const walk = (metres: number, heading: number): string | null => {
    const [east, north] = ahead(heading);
    const by: Vec2 = [rounded(east * metres), rounded(north * metres)];
    const tried = attempt(plan, (now) => moveThings(now, thingsOf(now, [thing]), by));
    if (!tried.ok) return tried.words;
    keep(tried.plan);
    return null;
  };

  return {
    ...rest(),
    name: 'rest stops',
    strip: stripOf(`${name}, ${index + 1} of ${all.length}`),
    ghost: ghostOf(stop),
    takesDigits: true,
    tab: (back) => {
      const next = index + (back ? -1 : 1);
      return next < 0 || next >= all.length ? rest() : at(next);
    },
    nudge: (way, large) => stepped(signOf(way) * STEP[measure] * (large ? 10 : 1)),
    swap: () => stops(editor, thing, rest, index, !swapped) ?? rest(),
    type: (_, value) => stepped(value - stop.value),
    typed,
    enter: rest,
    escape: rest,
  };
}

const isArrow = (by: TypedBy): by is Nudge => by !== 'enter' && by !== 'tab';

const signOf = (way: Nudge): 1 | -1 => (way === 'right' || way === 'up' ? 1 : -1);

/** To a micrometre or a millionth of a degree, so that steps of a hundredth add up. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

function measureOf({ measure }: Dimension): 'length' | 'angle' | 'count' {
  if (measure === 'length') return 'length';
  return measure === 'angle' || measure === 'bearing' ? 'angle' : 'count';
}

/** The dimension that is being set, with a dot at the end that moves. */
const ghostOf = ({ between, moves, label }: Dimension): ToolState['ghost'] =>
  between && {
    kind: 'sketch',
    lines: [{ points: between, closed: false, style: 'live' }],
    marks: moves === null ? [] : [{ at: between[moves === 'first' ? 0 : 1], sign: 'fixed' }],
    plates: [{ at: between[1], text: label, tone: 'measure', between }],
  };
