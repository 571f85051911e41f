import type { Editor } from '../editor/editor.ts';
import { changeService, removePart } from '../editor/partActs.ts';
import { serviceSettings } from '../editor/settings/partSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { Select, type Choice } from '../fittings/Select.tsx';
import { TextField } from '../fittings/TextField.tsx';
import type { Building, Service, ServiceKind } from '../model/structure.ts';
import { GotSelect } from './GotSelect.tsx';
import { Group } from './Group.tsx';
import { SettingField } from './SettingField.tsx';
import { SheetHead } from './SheetHead.tsx';
import { ServiceIcon } from './site/structureRows.tsx';
import styles from './sheet.module.css';

/** What may be on a wall. */
export const SERVICES: readonly Choice<ServiceKind>[] = [
  { value: 'socket', label: 'Socket' },
  { value: 'switch', label: 'Switch' },
  { value: 'light', label: 'Light' },
  { value: 'tap', label: 'Tap' },
  { value: 'meter', label: 'Meter' },
  { value: 'flue', label: 'Flue' },
];

const SIDES: readonly Choice<'inside' | 'outside'>[] = [
  { value: 'inside', label: 'Inside' },
  { value: 'outside', label: 'Outside' },
];

interface ServiceSheetProps {
  readonly editor: Editor;
  readonly on: Building;
  readonly service: Service;
}

/** The setting sheet of a socket, switch, light, tap, meter or flue on a wall. */
export function ServiceSheet({ editor, on, service }: ServiceSheetProps) {
  const { id, name } = service;
  const change = (next: Partial<Service>) => changeService(editor, on.id, service, next);
  const walls: readonly Choice<string>[] = on.outline.map((_, face) => ({
    value: String(face),
    label: `From corner ${face + 1} to ${((face + 1) % on.outline.length) + 1}`,
  }));
  return (
    <>
      <SheetHead sign={<ServiceIcon kind={service.kind} />} title={name} kind="Setting sheet" />
      <Group title={`On ${on.name}`}>
        <TextField label="Name" value={name} most={120} set={(next) => change({ name: next })} />
        <Select label="Kind" value={service.kind} choices={SERVICES} set={(kind) => change({ kind })} />
        <Select
          label="Wall"
          value={String(service.face)}
          choices={walls}
          set={(face) => change({ face: Number(face) })}
        />
        <Select
          label="Side of the wall"
          value={service.inside ? 'inside' : 'outside'}
          choices={SIDES}
          set={(side) => change({ inside: side === 'inside' })}
        />
        {serviceSettings(on, service).map((setting) => (
          <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
        ))}
        <GotSelect what={`place of ${name}`} got={service.got} set={(got) => change({ got })} />
        <div className={styles.acts}>
          <Button press={() => removePart(editor, { kind: 'service', id, on: on.id }, name)}>Delete</Button>
          <Button look="quiet" press={() => editor.select({ kind: 'structure', id: on.id })}>
            Go to {on.name}
          </Button>
        </div>
        <p className={styles.note}>
          Cables and pipes run straight up, down and across from here, as a rule. Look for others with a
          detector before anyone drills.
        </p>
      </Group>
    </>
  );
}
