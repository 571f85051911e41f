import type { Editor } from '../editor/editor.ts';
import { tryStep } from '../editor/settings/changeSetting.ts';
import { knownSetting, type OptionalSetting } from '../editor/settings/setting.ts';
import { Button } from '../fittings/Button.tsx';
import { SettingField } from './SettingField.tsx';
import styles from './sheet.module.css';

interface OptionalFieldProps {
  readonly editor: Editor;
  /** Name of the thing that it belongs to. */
  readonly subject: string;
  readonly setting: OptionalSetting;
}

/** The field of a number that may not be known: a press says that it is, with a common value to begin from. */
export function OptionalField({ editor, subject, setting }: OptionalFieldProps) {
  const { label, first } = setting;
  const set = (value: number | null) =>
    tryStep(editor, `${label} of ${subject}`, (plan) => setting.change(plan, value));
  const known = knownSetting(setting);
  if (known)
    return (
      <SettingField
        editor={editor}
        subject={subject}
        setting={known}
        beside={
          <span data-look="small">
            <Button look="quiet" label={`${label}: not known`} press={() => set(null)}>
              ×
            </Button>
          </span>
        }
      />
    );
  return (
    <div className={styles.figure}>
      <span>{label}</span>
      <Button look="quiet" label={`${label}: not known. Fill it in`} press={() => set(first)}>
        not known
      </Button>
    </div>
  );
}
