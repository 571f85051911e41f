import type { Editor } from '../../editor/editor.ts';
import {
  focalSettings,
  isVarifocal,
  pixelSettings,
  sensorSettings,
  setSensorType,
  setStated,
  setVarifocal,
  statedAngleSettings,
} from '../../editor/settings/lensSettings.ts';
import { sensors, sensorTypeOf } from '../../editor/settings/sensors.ts';
import type { Setting } from '../../editor/settings/setting.ts';
import { PairRow } from '../../fittings/PairRow.tsx';
import { Select } from '../../fittings/Select.tsx';
import { angleOfView } from '../../optics/lens.ts';
import { anglesOf, settingOf } from '../../optics/setting.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { SettingField } from '../SettingField.tsx';
import { useFaultWords } from '../faultWords.ts';
import styles from '../sheet.module.css';

/** Sensor, pixels and lens as the data sheet gives them, and the angle of view that follows. */
export function LensGroup({ editor, camera }: { editor: Editor; camera: PlanCamera }) {
  const words = useFaultWords();
  const { device, name } = camera;
  const { lens, sensor } = device;
  const { setting, faults } = settingOf(device, name);
  const { horizontal, vertical } = anglesOf(setting);
  const whole = angleOfView(setting.focalLength, setting.k, sensor.width);
  const field = { editor, subject: name };
  return (
    <Group title="Lens and sensor">
      <Select
        label="Sensor"
        value={sensorTypeOf(sensor)?.key ?? 'own'}
        choices={[
          ...sensors.map(({ key, name: label }) => ({ value: key, label })),
          { value: 'own', label: 'as typed' },
        ]}
        set={(key) => {
          const type = sensors.find((one) => one.key === key);
          if (type) editor.run(`Sensor of ${name}`, (plan) => setSensorType(plan, camera, type));
        }}
      />
      <SizeRow label="Sensor size" {...field} settings={sensorSettings(camera)} />
      <SizeRow label="Pixels" {...field} settings={pixelSettings(camera)} />
      <Select
        label="Lens"
        value={isVarifocal(lens) ? 'varifocal' : 'fixed'}
        choices={[
          { value: 'fixed', label: 'Fixed' },
          { value: 'varifocal', label: 'Varifocal' },
        ]}
        set={(kind) =>
          editor.run(`Lens of ${name}`, (plan) => setVarifocal(plan, camera, kind === 'varifocal'))
        }
      />
      {focalSettings(camera).map((one) => (
        <SettingField key={one.key} {...field} setting={one} />
      ))}
      <Select
        label="Angle on the data sheet"
        value={lens.statedHfov ? 'stated' : 'none'}
        choices={[
          { value: 'none', label: 'not given' },
          { value: 'stated', label: 'given' },
        ]}
        set={(stated) =>
          editor.run(`Stated angle of ${name}`, (plan) => setStated(plan, camera, stated === 'stated', whole))
        }
      />
      {statedAngleSettings(camera).map((one) => (
        <SettingField key={one.key} {...field} setting={one} />
      ))}
      {faults.map((fault) => (
        <p key={fault.given} className={styles.trouble}>
          {words(fault)}
        </p>
      ))}
      <Figure
        label="Angle of view"
        value={`${horizontal === null ? '–' : horizontal.toFixed(1)} × ${vertical === null ? '–' : vertical.toFixed(1)}`}
        unit="°"
      />
    </Group>
  );
}

interface SizeRowProps {
  readonly label: string;
  readonly editor: Editor;
  readonly subject: string;
  readonly settings: readonly [across: Setting, down: Setting];
}

function SizeRow({ label, editor, subject, settings: [across, down] }: SizeRowProps) {
  return (
    <PairRow label={label}>
      <SettingField editor={editor} subject={subject} setting={across} look="half" />
      <SettingField editor={editor} subject={subject} setting={down} look="half" />
    </PairRow>
  );
}
