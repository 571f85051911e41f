import { Layers2 } from 'lucide-react';
import type { Editor } from '../editor/editor.ts';
import { groundSettings, removeSpot } from '../editor/settings/groundSettings.ts';
import { Button } from '../fittings/Button.tsx';
import type { Plan } from '../plan/plan.ts';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import styles from './sheet.module.css';

interface GroundSheetProps {
  readonly editor: Editor;
  readonly plan: Plan;
}

/** The sheet of the ground: one height, spot heights, or a grid that came with a file. */
export function GroundSheet({ editor, plan }: GroundSheetProps) {
  const { ground } = plan;
  return (
    <>
      <SheetHead sign={<Layers2 size={16} />} title="Ground" kind="Setting sheet" />
      <Group
        title={ground.kind === 'flat' ? 'Flat' : ground.kind === 'spots' ? 'By spot heights' : 'From a file'}
      >
        {ground.kind === 'grid' && (
          <>
            <Figure label="Cells" value={`${ground.columns} × ${ground.rows}`} />
            <Figure label="Side of a cell" value={ground.cell.toFixed(2)} unit="m" />
          </>
        )}
        {groundSettings(ground).map((setting, index) => (
          <div key={setting.key} className={ground.kind === 'spots' ? styles.withAct : undefined}>
            <SettingField editor={editor} subject="Ground" setting={setting} />
            {ground.kind === 'spots' && (
              <Button
                look="quiet"
                label={`Take ${setting.label} away`}
                press={() => removeSpot(editor, index)}
              >
                ×
              </Button>
            )}
          </div>
        ))}
        {ground.kind !== 'grid' && (
          <div className={styles.acts}>
            <Button press={() => editor.hold('spot')}>Add a spot height</Button>
          </div>
        )}
        <p className={styles.note}>
          {ground.kind === 'flat'
            ? 'Three spot heights or more make the ground slope between them.'
            : 'Areas over such ground are counted from cells: about, ≈.'}
        </p>
      </Group>
    </>
  );
}
