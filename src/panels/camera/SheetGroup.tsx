import type { Editor } from '../../editor/editor.ts';
import { housed } from '../../editor/settings/modeActs.ts';
import { sheetSettings } from '../../editor/settings/sheetSettings.ts';
import { Button } from '../../fittings/Button.tsx';
import { Select, type Choice } from '../../fittings/Select.tsx';
import type { Housing } from '../../optics/device.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Folded } from '../Folded.tsx';
import { Group } from '../Group.tsx';
import { OptionalField } from '../OptionalField.tsx';
import styles from '../sheet.module.css';

export const HOUSINGS: Readonly<Record<Housing, string>> = {
  turret: 'Turret',
  dome: 'Dome',
  bullet: 'Bullet',
  box: 'Box',
  tube: 'Tube',
  panTiltZoom: 'Pan-tilt-zoom',
};

const CHOICES: readonly Choice<Housing | 'unknown'>[] = [
  { value: 'unknown', label: 'not known' },
  { value: 'turret', label: HOUSINGS.turret },
  { value: 'dome', label: HOUSINGS.dome },
  { value: 'bullet', label: HOUSINGS.bullet },
  { value: 'box', label: HOUSINGS.box },
  { value: 'tube', label: HOUSINGS.tube },
  { value: 'panTiltZoom', label: HOUSINGS.panTiltZoom },
];

interface SheetGroupProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
}

/** What kind of camera it is. @param choose opens the list of kinds */
export function KindGroup({ editor, camera, choose }: SheetGroupProps & { choose(): void }) {
  const { housing, sheet } = camera;
  return (
    <Group title="Kind of camera">
      {sheet.name !== null && <p className={styles.named}>{sheet.name}</p>}
      <Select
        label="Housing"
        value={housing ?? 'unknown'}
        choices={CHOICES}
        set={(chosen) => housed(editor, camera, chosen === 'unknown' ? null : chosen)}
      />
      <div className={styles.acts}>
        <Button press={choose}>Choose from the list</Button>
      </div>
    </Group>
  );
}

/** What else the data sheet tells. */
export function SheetGroup({ editor, camera }: SheetGroupProps) {
  const settings = sheetSettings(camera);
  const known = settings.filter(({ value }) => value !== null).length;
  return (
    <Folded title="Data sheet" told={`${known} of ${settings.length} known`}>
      {settings.map((setting) => (
        <OptionalField key={setting.key} editor={editor} subject={camera.name} setting={setting} />
      ))}
      <p className={styles.note}>
        Least light is printed for still scenes and long exposures: something that moves needs more.
      </p>
    </Folded>
  );
}
