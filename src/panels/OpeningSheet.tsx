import type { Editor } from '../editor/editor.ts';
import { changeOpening, removePart } from '../editor/partActs.ts';
import { openingSettings } from '../editor/settings/partSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { Select, type Choice } from '../fittings/Select.tsx';
import { TextField } from '../fittings/TextField.tsx';
import type { Leaf, Opening, OpeningKind, Structure } from '../model/structure.ts';
import type { Passage } from '../model/passage.ts';
import { GotSelect } from './GotSelect.tsx';
import { Group } from './Group.tsx';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import { OpeningIcon } from './site/structureRows.tsx';
import styles from './sheet.module.css';

const IN_WALL: readonly Choice<OpeningKind>[] = [
  { value: 'door', label: 'Door' },
  { value: 'window', label: 'Window' },
  { value: 'gate', label: 'Garage door' },
  { value: 'archway', label: 'Archway' },
];
const IN_LINE: readonly Choice<OpeningKind>[] = [
  { value: 'gate', label: 'Gate' },
  { value: 'archway', label: 'Gap' },
];
const LEAVES: readonly Choice<Leaf>[] = [
  { value: 'closed', label: 'Closed' },
  { value: 'open', label: 'Open' },
  { value: 'glazed', label: 'Glazed' },
];
const PASSAGES: readonly Choice<Passage>[] = [
  { value: 'solid', label: 'Blocks the view' },
  { value: 'screen', label: 'Mesh or bars' },
  { value: 'clear', label: 'Clear, as glass' },
];

interface OpeningSheetProps {
  readonly editor: Editor;
  readonly on: Structure;
  readonly opening: Opening;
}

/** The setting sheet of a door, window, gate or archway. */
export function OpeningSheet({ editor, on, opening }: OpeningSheetProps) {
  const { name } = opening;
  const change = (next: Partial<Opening>) => changeOpening(editor, on.id, opening, next);
  return (
    <>
      <SheetHead sign={<OpeningIcon kind={opening.kind} />} title={name} kind="Setting sheet" />
      <Group title={`In ${on.name}`}>
        <TextField label="Name" value={name} most={120} set={(next) => change({ name: next })} />
        <Select
          label="Kind"
          value={opening.kind}
          choices={on.kind === 'barrier' ? IN_LINE : IN_WALL}
          set={(kind) => change({ kind })}
        />
        {opening.kind !== 'archway' && (
          <>
            <Select label="Leaf" value={opening.leaf} choices={LEAVES} set={(leaf) => change({ leaf })} />
            <Select
              label="View through it closed"
              value={opening.passage}
              choices={PASSAGES}
              set={(passage) => change({ passage })}
            />
          </>
        )}
        <div className={styles.acts}>
          <Button press={() => removePart(editor, { kind: 'opening', id: opening.id, on: on.id }, name)}>
            Delete
          </Button>
          <Button look="quiet" press={() => editor.select({ kind: 'structure', id: on.id })}>
            Go to {on.name}
          </Button>
        </div>
      </Group>
      <Group title="Place and size">
        {openingSettings(on, opening).map((setting) => (
          <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
        ))}
        <GotSelect what={`size of ${name}`} got={opening.got} set={(got) => change({ got })} />
      </Group>
    </>
  );
}
