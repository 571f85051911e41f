import type { Editor } from '../editor/editor.ts';
import { addFloor, addServiceTo, removeFloor } from '../editor/partActs.ts';
import { floorSettings } from '../editor/settings/partSettings.ts';
import { wallSettings } from '../editor/settings/wallSettings.ts';
import { Button } from '../fittings/Button.tsx';
import { Select } from '../fittings/Select.tsx';
import type { Building, ServiceKind } from '../model/structure.ts';
import { Group } from './Group.tsx';
import { SERVICES } from './ServiceSheet.tsx';
import { SettingField } from './SettingField.tsx';
import styles from './sheet.module.css';

interface FloorsGroupProps {
  readonly editor: Editor;
  readonly building: Building;
}

const NOT_KNOWN: Readonly<Record<string, string>> = {
  wallThickness: 'At 0 the building is one block, and openings are recesses in it.',
  yearBuilt: 'At 0 the year is not known; boards may hold asbestos.',
};

/** Walls and floors of a building, and what is on its walls: the cautions ask for them before anyone drills. */
export function FloorsGroup({ editor, building }: FloorsGroupProps) {
  const { name } = building;
  return (
    <Group title="Walls and floors">
      {wallSettings(building).map((setting) => (
        <SettingField
          key={setting.key}
          editor={editor}
          subject={name}
          setting={setting}
          note={setting.value === 0 ? (NOT_KNOWN[setting.key] ?? null) : null}
        />
      ))}
      {floorSettings(building).map(([level, ceiling], index) => (
        <div key={level.key} role="group" aria-label={building.floors[index]?.name ?? ''}>
          <SettingField editor={editor} subject={name} setting={level} />
          <SettingField editor={editor} subject={name} setting={ceiling} />
          <div className={styles.acts}>
            <Button look="quiet" press={() => removeFloor(editor, building, index)}>
              Take {building.floors[index]?.name ?? 'floor'} out
            </Button>
          </div>
        </div>
      ))}
      <div className={styles.acts}>
        <Button press={() => addFloor(editor, building)}>Add a floor</Button>
        <Button
          press={() => {
            editor.select({ kind: 'structure', id: building.id });
            editor.hold('opening');
          }}
        >
          Add an opening
        </Button>
      </div>
      <Select<ServiceKind | 'none'>
        label="Put on a wall"
        value="none"
        choices={[{ value: 'none', label: 'choose' }, ...SERVICES]}
        set={(kind) => {
          if (kind !== 'none') addServiceTo(editor, building, kind);
        }}
      />
    </Group>
  );
}
