import { Lightbulb } from 'lucide-react';
import { remove, rename } from '../editor/acts.ts';
import type { Editor } from '../editor/editor.ts';
import { lampSettings, setRangeLight } from '../editor/settings/lampSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { TextField } from '../fittings/TextField.tsx';
import { useUnwritable } from '../fittings/writable.ts';
import type { Lamp } from '../plan/plan.ts';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';

interface LampSheetProps {
  readonly editor: Editor;
  readonly lamp: Lamp;
  /** Lets a person choose a photometric file for this lamp. */
  choosePhotometry(lamp: string): void;
}

/** The setting sheet of a lamp: where it hangs, and how far it lights or what a file measured. */
export function LampSheet({ editor, lamp, choosePhotometry }: LampSheetProps) {
  const { id, name, light } = lamp;
  const unwritable = useUnwritable();
  const thing = { kind: 'lamp', id } as const;
  return (
    <>
      <SheetHead sign={<Lightbulb size={16} />} title={name} kind="Setting sheet" />
      <Group title="Lamp">
        <TextField label="Name" value={name} most={120} set={(next) => rename(editor, thing, next)} />
        {lampSettings(lamp).map((setting) => (
          <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
        ))}
        {light.kind === 'photometric' && <Figure label="Light from" value={light.source} />}
        <div className={styles.acts}>
          <Button off={unwritable} press={() => choosePhotometry(id)}>
            {light.kind === 'range' ? 'Open a light file (.ies)' : 'Another file'}
          </Button>
          {light.kind === 'photometric' && (
            <Button press={() => editor.run(`Light of ${name}`, (plan) => setRangeLight(plan, id))}>
              Judge by a distance
            </Button>
          )}
          <Button press={() => remove(editor, thing, {})}>Delete</Button>
        </div>
        <p className={styles.note}>
          {light.kind === 'range'
            ? 'It counts as light enough as far as you judge. A file of the lamp tells more.'
            : 'Lit where all measured lamps together give the least light that the plan asks for.'}
        </p>
      </Group>
    </>
  );
}
