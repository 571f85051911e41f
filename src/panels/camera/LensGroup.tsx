import type { Editor } from '../../editor/editor.ts';
import {
  endAngles,
  focalSettings,
  isVarifocal,
  sensorSettings,
  setSensorType,
  setStated,
  setVarifocal,
  statedAngleSettings,
} from '../../editor/settings/lensSettings.ts';
import { statedFor } from '../../editor/settings/modeActs.ts';
import { sensors, sensorTypeOf } from '../../editor/settings/sensors.ts';
import type { Setting } from '../../editor/settings/setting.ts';
import { sharpnessSettings } from '../../editor/settings/sheetSettings.ts';
import { PairRow } from '../../fittings/PairRow.tsx';
import { Select } from '../../fittings/Select.tsx';
import { Slider } from '../../fittings/Slider.tsx';
import { sheetFaults } from '../../optics/consistency.ts';
import { anglesOf, settingOf } from '../../optics/setting.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { OptionalField } from '../OptionalField.tsx';
import { SettingField } from '../SettingField.tsx';
import { editOf } from '../editOf.ts';
import { useFaultWords } from '../faultWords.ts';
import styles from '../sheet.module.css';

interface LensGroupProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
}

/** Sensor and lens as the data sheet gives them, where it contradicts itself, and the angle of view that follows. */
export function LensGroup({ editor, camera }: LensGroupProps) {
  const words = useFaultWords();
  const { device, name } = camera;
  const { lens, sensor } = device;
  const { horizontal, vertical } = anglesOf(settingOf(device, name).setting);
  const type = sensorTypeOf(sensor);
  const field = { editor, subject: name };
  return (
    <Group title="Lens and sensor">
      <Figure label="Angle of view" value={`${degrees(horizontal)} × ${degrees(vertical)}`} unit="°" />
      {sheetFaults(camera, name).map((fault) => (
        <p key={`${fault.code} ${fault.path.join(' ')}`} className={styles.trouble} data-fault={fault.code}>
          {words({ ...fault, path: [] })}
        </p>
      ))}
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
      {focalSettings(camera).map((one, index) => (
        <div key={one.key}>
          <SettingField {...field} setting={one} />
          {index === 0 && isVarifocal(lens) && <FocalSlider editor={editor} camera={camera} setting={one} />}
        </div>
      ))}
      <Stated {...field} camera={camera} way="across" />
      <Stated {...field} camera={camera} way="down" />
      {(lens.statedHfov ?? lens.statedVfov) && device.modes.length > 1 && (
        <Select
          label="Angles printed for"
          value={lens.statedIn ?? ''}
          choices={[
            { value: '', label: 'the whole sensor' },
            ...device.modes.map(({ id, name: label }) => ({ value: id, label })),
          ]}
          set={(mode) => statedFor(editor, camera, mode === '' ? null : mode)}
        />
      )}
      {sharpnessSettings(camera).map((one) => (
        <OptionalField key={one.key} {...field} setting={one} />
      ))}
      <Select
        label="Sensor"
        value={type?.key ?? 'own'}
        choices={[
          ...sensors.map(({ key, name: label }) => ({ value: key, label })),
          { value: 'own', label: 'as typed' },
        ]}
        note={type ? `${type.source}.` : null}
        set={(key) => {
          const chosen = sensors.find((one) => one.key === key);
          if (chosen) editor.run(`Sensor of ${name}`, (plan) => setSensorType(plan, camera, chosen));
        }}
      />
      <SizeRow label="Sensor size" {...field} settings={sensorSettings(camera)} />
    </Group>
  );
}

const degrees = (angle: number | null): string => (angle === null ? '–' : angle.toFixed(1));

/** Turns a varifocal lens between its ends, where the angle across stands. */
function FocalSlider({ editor, camera, setting }: LensGroupProps & { readonly setting: Setting }) {
  const { shortest, longest } = camera.device.lens;
  const [wide, narrow] = endAngles(camera, 'across');
  return (
    <Slider
      label={`Zoom of ${camera.name}`}
      value={setting.value}
      bounds={setting.bounds}
      step={longest - shortest > 20 ? 0.1 : 0.05}
      spoken={`${setting.value.toFixed(1)} mm`}
      ends={[`${shortest} mm, ${degrees(wide)}°`, `${longest} mm, ${degrees(narrow)}°`]}
      edit={editOf(editor, camera.name, setting)}
    />
  );
}

interface StatedProps extends LensGroupProps {
  readonly subject: string;
  readonly way: 'across' | 'down';
}

const STATED = { across: 'Angle across on the sheet', down: 'Angle up and down on it' } as const;

/** Whether the sheet prints an angle, and which. */
function Stated({ editor, subject, camera, way }: StatedProps) {
  const { lens } = camera.device;
  const stated = way === 'across' ? lens.statedHfov : lens.statedVfov;
  return (
    <>
      <Select
        label={STATED[way]}
        value={stated ? 'stated' : 'none'}
        choices={[
          { value: 'none', label: 'not given' },
          { value: 'stated', label: 'given' },
        ]}
        set={(choice) =>
          editor.run(`Stated angle of ${camera.name}`, (plan) =>
            setStated(plan, camera, choice === 'stated', endAngles(camera, way), way),
          )
        }
      />
      {statedAngleSettings(camera, way).map((one) => (
        <SettingField key={one.key} editor={editor} subject={subject} setting={one} />
      ))}
    </>
  );
}

interface SizeRowProps {
  readonly label: string;
  readonly editor: Editor;
  readonly subject: string;
  readonly settings: readonly [across: Setting, down: Setting];
}

/** Two sizes in one row. */
export function SizeRow({ label, editor, subject, settings: [across, down] }: SizeRowProps) {
  return (
    <PairRow label={label}>
      <SettingField editor={editor} subject={subject} setting={across} look="half" />
      <SettingField editor={editor} subject={subject} setting={down} look="half" />
    </PairRow>
  );
}
