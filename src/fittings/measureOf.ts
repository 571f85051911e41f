import type { LengthUnit } from '../base/length.ts';
import type { SettingMeasure } from '../editor/settings/setting.ts';
import { angles, bearings, lengths, numbers, type Measure } from './measure.ts';

const MEASURES: Readonly<Record<Exclude<SettingMeasure, 'length'>, Measure>> = {
  angle: angles,
  bearing: bearings,
  millimetres: numbers('mm', 0.1, [1, 3]),
  pixels: numbers('px', 1, [0, 0]),
  count: numbers('', 1, [0, 0]),
  milliseconds: numbers('ms', 1, [0, 2]),
  lux: numbers('lx', 0.001, [0, 4]),
  perSecond: numbers('/s', 1, [0, 1]),
  megabits: numbers('Mbit/s', 0.5, [0, 1]),
  percent: numbers('%', 1, [0, 1]),
  plain: numbers('', 0.1, [0, 2]),
};

/** How a setting is shown, read and stepped, lengths in the plan's unit. */
export const measureOf = (measure: SettingMeasure, units: LengthUnit): Measure =>
  measure === 'length' ? lengths(units) : MEASURES[measure];
