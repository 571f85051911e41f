import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import type { Setting, SettingMeasure } from '../editor/settings/setting.ts';
import { NumberField } from '../fittings/NumberField.tsx';
import { angles, bearings, lengths, numbers } from '../fittings/measure.ts';
import type { Measure } from '../fittings/measure.ts';
import { editOf } from './editOf.ts';

type Units = Parameters<typeof lengths>[0];

const MEASURES: Readonly<Record<Exclude<SettingMeasure, 'length'>, Measure>> = {
  angle: angles,
  bearing: bearings,
  millimetres: numbers('mm', 0.1, [1, 3]),
  pixels: numbers('px', 1, [0, 0]),
  count: numbers('', 1, [0, 0]),
  milliseconds: numbers('ms', 1, [0, 2]),
};

const measureOf = (measure: SettingMeasure, units: Units): Measure =>
  measure === 'length' ? lengths(units) : MEASURES[measure];

interface SettingFieldProps {
  readonly editor: Editor;
  /** Name of the thing that it belongs to. */
  readonly subject: string;
  readonly setting: Setting;
  readonly note?: string | null;
  readonly look?: 'row' | 'half';
  readonly beside?: ReactNode;
}

/** The field of one setting, in the plan's units. */
export function SettingField({
  editor,
  subject,
  setting,
  note = null,
  look = 'row',
  beside,
}: SettingFieldProps) {
  const units = useStore(editor.store, ({ plan }) => plan.settings.units);
  return (
    <NumberField
      label={setting.label}
      value={setting.value}
      measure={measureOf(setting.measure, units)}
      bounds={setting.bounds}
      edit={editOf(editor, subject, setting)}
      note={note}
      look={look}
      beside={beside}
    />
  );
}
