import { createStore } from 'zustand/vanilla';
import type { LengthUnit } from '../../base/length.ts';
import type { Nudge, Strip, StripField, TypedBy } from '../../editor/tools/chart.ts';
import { keptWords, typedNumber } from '../../fittings/fieldWords.ts';
import { angles, lengths, numbers, type Measure } from '../../fittings/measure.ts';
import type { Model } from '../Model.ts';
import { compassOf } from '../navigate/compass.ts';

/** Which field of the strip is typed in, and what stands there. */
export interface TypingState {
  readonly field: string | null;
  /** As typed; null while the field shows its value. */
  readonly draft: string | null;
  /** `digits` came from the Model: there an arrow hands over. In a field entered by itself arrows move the caret. */
  readonly by: 'digits' | 'focus';
  /** Why the text will not do; it stays. */
  readonly trouble: string | null;
  /** The field that is to have the focus once it is there; `turn` rises with each wish. */
  readonly wanted: { readonly key: string; readonly turn: number } | null;
  /** The keypad for fingers is open; then the system's stays away. */
  readonly pad: boolean;
}

const NONE = { field: null, draft: null, by: 'focus', trouble: null } as const;
/** No tool's number is beyond these; the tool itself says more. */
const BOUNDS = { least: -1e6, most: 1e6 };

export function measureOf({ measure }: Pick<StripField, 'measure'>, unit: LengthUnit): Measure {
  if (measure === 'length') return lengths(unit);
  return measure === 'angle' ? angles : numbers('', 1, [0, 0]);
}

/** What is typed into the strip, and how it is handed to the tool. */
export class Typing {
  readonly store = createStore<TypingState>(() => ({ ...NONE, wanted: null, pad: false }));
  private readonly model: Model;
  private turns = 0;

  constructor(model: Model) {
    this.model = model;
  }

  private get strip(): Strip | null {
    return this.model.toolbox.store.getState().state.strip;
  }

  private get unit(): LengthUnit {
    return this.model.editor.store.getState().plan.settings.units;
  }

  /** Whether a number that is begun in the Model goes into the strip. */
  get takesDigits(): boolean {
    const { state } = this.model.toolbox.store.getState();
    return state.takesDigits !== false && (state.strip?.fields.length ?? 0) > 0;
  }

  /** A number begun in the Model. Tells whether there is a field for it. */
  begin(character: string): boolean {
    const first = this.strip?.fields[0];
    if (!first || !this.takesDigits) return false;
    this.store.setState({ field: first.key, draft: character, by: 'digits', trouble: null });
    this.want(first.key);
    return true;
  }

  /** A field got the focus. One that digits lead to keeps them. */
  entered(key: string): void {
    if (this.store.getState().field !== key) this.store.setState({ ...NONE, field: key });
  }

  write(key: string, draft: string): void {
    const { field, by } = this.store.getState();
    if (by === 'digits' && draft === '') this.leave();
    else this.store.setState({ field: key, draft, trouble: null, by: field === key ? by : 'focus' });
  }

  /** Nothing is typed any more, and the Model has the focus. */
  leave(): void {
    this.store.setState({ ...NONE, wanted: null });
    this.model.focus();
  }

  /** Has a field take the focus, its text selected, as soon as it is there. */
  want(key: string): void {
    this.turns += 1;
    this.store.setState({ wanted: { key, turn: this.turns } });
  }

  /** The focus went elsewhere: a number typed in a field is taken, or what stood before is kept, with words. */
  left(key: string): void {
    const { field, draft, by } = this.store.getState();
    if (field !== key) return;
    const one = this.strip?.fields.find((other) => other.key === key);
    const changed = draft !== null && by === 'focus' && one;
    this.store.setState(NONE);
    if (!changed) return;
    const trouble = this.give(one, draft, 'tab');
    if (trouble !== null) this.model.editor.say(keptWords(trouble, one.value, measureOf(one, this.unit)));
  }

  /** Enter, Tab or an arrow gives what is typed to the tool. Tells whether the key is used up. */
  handOver(key: string, by: TypedBy, back = false): boolean {
    const { draft } = this.store.getState();
    const fields = this.strip?.fields ?? [];
    const one = fields.find((other) => other.key === key);
    if (!one) return false;
    if (draft === null) {
      if (by !== 'enter') return false;
      this.leave();
      this.model.toolbox.enter();
      return true;
    }
    const trouble = this.give(one, draft, by);
    if (trouble !== null) {
      this.store.setState({ trouble });
      return true;
    }
    this.store.setState(NONE);
    const next = by === 'tab' ? this.after(key, back) : undefined;
    if (next === undefined) this.leave();
    else this.want(next);
    return true;
  }

  /** The field that Tab leads to. A strip without the field that was left asks something new: its first. */
  private after(key: string, back: boolean): string | undefined {
    const fields = this.strip?.fields ?? [];
    const index = fields.findIndex((other) => other.key === key);
    return index < 0 ? fields[0]?.key : fields[index + (back ? -1 : 1)]?.key;
  }

  private give(field: StripField, text: string, by: TypedBy): string | null {
    const { toolbox, view } = this.model;
    const { state } = toolbox.store.getState();
    if (state.typed) return toolbox.typed(field.key, text, by, compassOf(view));
    const typed = typedNumber(field.label, text, measureOf(field, this.unit), BOUNDS);
    if (!typed.ok) return typed.words;
    toolbox.type(field.key, typed.value);
    if (by === 'enter') toolbox.enter();
    return null;
  }

  showPad(pad: boolean): void {
    this.store.setState({ pad });
  }

  /** One of a few was chosen. By pointer, the number that follows from it comes next. */
  choose(key: string, option: string, onward: boolean): void {
    if (!this.model.toolbox.choose(key, option)) return;
    const first = this.strip?.fields[0];
    if (onward && first) this.want(first.key);
  }
}

const ARROWS: Readonly<Record<string, Nudge>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** The way of an arrow key; undefined for other keys. */
export const arrowOf = (key: string): Nudge | undefined => ARROWS[key];

/** Whether a key begins a number. */
export const beginsNumber = (key: string): boolean => /^[\d.(−-]$/.test(key);
