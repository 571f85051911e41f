import type { Vec2 } from '../../../base/vector.ts';
import type { Grip } from '../../grips/grip.ts';
import { changeTo, pullFields, valueOf, type Pull } from '../../grips/pull.ts';
import { pullOf } from '../../grips/pullOf.ts';
import type { Editor, Selected } from '../../editor.ts';
import { attempt } from '../../shaping/attempt.ts';
import type { StripField, ToolState, Typed } from '../chart.ts';
import { typedField } from '../typing/typedNumber.ts';
import { valueWords } from './valueWords.ts';

/** A handle was clicked: its number stands in the strip, to be typed or stepped. */
export function gripped(
  editor: Editor,
  selection: readonly Selected[],
  grip: Grip,
  rest: () => ToolState,
): ToolState | null {
  const { plan } = editor.store.getState();
  const pull = pullOf(plan, selection, grip);
  if (!pull) return null;
  const { units } = plan.settings;
  const value = valueOf(pull);
  const again = (): ToolState => gripped(editor, selection, grip, rest) ?? rest();

  /** Gives it a number; answers why it cannot have it. */
  const take = (key: string, number: number): string | null => {
    const next: Vec2 = key === 'second' ? [value[0], number] : [number, value[1]];
    const tried = attempt(plan, changeTo(pull, within(pull, next), 'measured'));
    if (!tried.ok) return tried.words;
    editor.run(pull.name, () => tried.plan, `grip ${pull.name} ${key}`);
    return null;
  };
  const at = rest();
  return {
    ...at,
    name: 'rest gripped',
    strip: { text: valueWords(pull, value, units), fields: pullFields(pull, value), trouble: false },
    type: (key, number) => {
      const trouble = take(key, number);
      return trouble === null ? again() : { ...again(), strip: wrongStrip(trouble, pullFields(pull, value)) };
    },
    typed: (key, text, by): Typed => {
      const field = pullFields(pull, value).find((one) => one.key === key);
      const read = typedField(text, field?.measure ?? 'length', units);
      if (!read.ok) return read;
      const trouble = take(key, read.value);
      if (trouble !== null) return { ok: false, trouble };
      return { ok: true, state: by === 'tab' && key === 'value' && pull.kind === 'plane' ? again() : rest() };
    },
    takesDigits: true,
    enter: rest,
    escape: rest,
  };
}

const wrongStrip = (text: string, fields: readonly StripField[]) => ({ text, fields, trouble: true });

/** A typed number within what it may be. */
function within(pull: Pull, [first, second]: Vec2): Vec2 {
  if (pull.kind !== 'line') return [first, second];
  return [Math.min(pull.bounds.most, Math.max(pull.bounds.least, first)), second];
}
