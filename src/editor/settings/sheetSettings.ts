import type { DataSheet } from '../../optics/device.ts';
import { setLens } from '../../plan/commands/setLens.ts';
import { setSheet } from '../../plan/commands/setSheet.ts';
import { LIMITS, type Limit } from '../../plan/limits.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { OptionalSetting, SettingMeasure } from './setting.ts';

/** First values are what common sheets print; common practice, no source. */
const ROWS: readonly (readonly [
  key: Exclude<keyof DataSheet, 'name'>,
  label: string,
  measure: SettingMeasure,
  bounds: Limit,
  first: number,
])[] = [
  ['imagesPerSecond', 'Pictures a second', 'perSecond', LIMITS.imagesPerSecond, 25],
  ['bitRate', 'Data rate', 'megabits', LIMITS.bitRate, 6],
  ['minimumIllumination', 'Least light', 'lux', LIMITS.sensitivity, 0.01],
  ['powerClass', 'Power class', 'count', LIMITS.powerClass, 3],
];

/** Numbers of the data sheet beside sensor and lens, each of which may not be known. */
export const sheetSettings = ({ id, sheet }: PlanCamera): readonly OptionalSetting[] =>
  ROWS.map(([key, label, measure, bounds, first]) => ({
    key,
    label,
    measure,
    bounds,
    first,
    value: sheet[key],
    change: (plan, value) => setSheet(plan, id, { [key]: value }),
  }));

/** F-number and focus of the lens, which say what is sharp. */
export const sharpnessSettings = ({
  id,
  device: { lens },
  sheet,
}: PlanCamera): readonly OptionalSetting[] => [
  {
    key: 'f-number',
    label: 'F-number',
    measure: 'plain',
    bounds: LIMITS.fNumber,
    first: 1.6,
    value: lens.fNumber,
    change: (plan, value) => setLens(plan, id, { fNumber: value }),
  },
  {
    key: 'focusDistance',
    label: 'Focused on',
    measure: 'length',
    bounds: LIMITS.focusDistance,
    first: 6,
    value: sheet.focusDistance,
    change: (plan, value) => setSheet(plan, id, { focusDistance: value }),
  },
];
