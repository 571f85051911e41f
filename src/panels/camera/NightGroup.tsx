import {
  exposureSettings,
  infraredSettings,
  switchExposure,
  switchInfrared,
} from '../../editor/settings/lightSettings.ts';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import { smearOf } from '../../optics/smear.ts';
import type { PlanCamera, PlanSettings } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import { SettingField } from '../SettingField.tsx';
import styles from '../sheet.module.css';

/** Density at which faces begin to be recognised, px/m: what smear is told at. */
const FACE_DENSITY = 125;

interface NightGroupProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
  readonly settings: PlanSettings;
}

/** A camera's own infrared, and how far a walker smears by day and at night. */
export function NightGroup({ editor, camera, settings }: NightGroupProps) {
  const { name, infrared, exposure } = camera;
  return (
    <Group title="Light and movement">
      {infraredSettings(camera).map((setting) => (
        <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
      ))}
      {exposureSettings(camera).map((setting) => (
        <SettingField key={setting.key} editor={editor} subject={name} setting={setting} />
      ))}
      {exposure && (
        <p className={styles.note}>
          Walking at {settings.walkingSpeed} m/s across the view smears{' '}
          {(['day', 'night'] as const).map((when) => {
            const { millimetres, pixels } = smearOf(settings.walkingSpeed, exposure[when], FACE_DENSITY);
            return `${millimetres.toFixed(0)} mm by ${when} (${pixels.toFixed(1)} px at ${FACE_DENSITY} px/m)${when === 'day' ? ', ' : '.'}`;
          })}
        </p>
      )}
      <div className={styles.acts}>
        <Button
          pressed={infrared !== null}
          press={() => editor.run(`Infrared of ${name}`, (plan) => switchInfrared(plan, camera))}
        >
          Own infrared
        </Button>
        <Button
          pressed={exposure !== null}
          press={() => editor.run(`Exposure of ${name}`, (plan) => switchExposure(plan, camera))}
        >
          Exposure known
        </Button>
      </div>
      <p className={styles.note}>
        A data sheet’s infrared range follows no standard test: be shy of its last half.
      </p>
    </Group>
  );
}
