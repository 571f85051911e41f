import type { Outcome } from '../../base/fault.ts';
import type { Got } from '../../model/structure.ts';
import type { Limit } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';

export type SettingMeasure =
  | 'length'
  | 'angle'
  | 'bearing'
  | 'millimetres'
  | 'pixels'
  | 'count'
  | 'milliseconds'
  | 'lux'
  | 'perSecond'
  | 'megabits'
  | 'percent'
  | 'plain';

/** A number of the plan that a person may set: what it is called, how it stands, and the plan with another value. */
export interface Setting {
  /** Unique among the settings of one thing. */
  readonly key: string;
  readonly label: string;
  readonly measure: SettingMeasure;
  readonly bounds: Limit;
  readonly value: number;
  /** Refused where something would no longer fit. */
  change(plan: Plan, value: number): Plan | Outcome<Plan>;
}

/** A size of a structure, with how it was got; null where the file keeps no such mark. */
export interface SizeSetting extends Setting {
  readonly got: Got | null;
}

/** A number that may not be known. `first` is what stands there once somebody says that it is, a common value. */
export interface OptionalSetting extends Omit<Setting, 'value' | 'change'> {
  readonly value: number | null;
  readonly first: number;
  change(plan: Plan, value: number | null): Plan | Outcome<Plan>;
}

/** An optional number as a plain setting; null where it is not known. */
export const knownSetting = (setting: OptionalSetting): Setting | null =>
  setting.value === null ? null : { ...setting, value: setting.value };
