import type { LengthUnit } from '../../base/length.ts';
import { fixed } from '../../base/length.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Limit } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import type { SettingMeasure } from '../settings/setting.ts';
import { attempt, type Attempt, type Change } from '../shaping/attempt.ts';
import { lengthWords } from '../tools/mount/mountWords.ts';

/** A number of what is selected, drawn beside it and typed in place. */
export interface Dimension {
  /** Unique among those of one thing. */
  readonly key: string;
  readonly label: string;
  /** Between which points it is drawn; null where it has no place of its own. */
  readonly between: readonly [Vec3, Vec3] | null;
  readonly value: number;
  readonly measure: SettingMeasure;
  /** Which of the two points goes elsewhere, where either can; null where it is always the second. */
  readonly moves: 'first' | 'second' | null;
  /** The plan with another value, or why it cannot have it; then the old one stays. */
  set(plan: Plan, value: number): Attempt;
}

/** The parts of a dimension, with its change kept within bounds. */
export function dimension(
  parts: Omit<Dimension, 'set' | 'moves'> & {
    readonly moves?: Dimension['moves'];
    readonly bounds: Limit;
    readonly change: (value: number) => Change;
  },
): Dimension {
  const { bounds, change, moves = null, ...rest } = parts;
  return {
    ...rest,
    moves,
    set: (plan, value) => {
      const trouble = boundsWords(rest, bounds, value, plan.settings.units);
      return trouble === null
        ? attempt(plan, change(value))
        : { ok: false, words: trouble, fault: { code: 'number.range', path: [], given: value } };
    },
  };
}

/** "Height must be above 0. 2.70 is kept."; null where a value is within its bounds. */
function boundsWords(
  { label, measure, value: kept }: Pick<Dimension, 'label' | 'measure' | 'value'>,
  { least, most }: Limit,
  value: number,
  unit: LengthUnit,
): string | null {
  const say = (number: number): string =>
    measure === 'length' ? lengthWords(number, unit) : `${fixed(number, 1)}${measure === 'count' ? '' : '°'}`;
  if (value >= least && value <= most) return null;
  const must =
    value > most ? `at most ${say(most)}` : least > 0 && least <= 0.01 ? 'above 0' : `${say(least)} or more`;
  return `${label} must be ${must}. ${say(kept)} is kept.`;
}
