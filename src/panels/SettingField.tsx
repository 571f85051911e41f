import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import type { Setting } from '../editor/settings/setting.ts';
import { NumberField } from '../fittings/NumberField.tsx';
import { editOf } from './editOf.ts';
import { measureOf } from '../fittings/measureOf.ts';

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
