import type { Editor } from '../../editor/editor.ts';
import { addPictureMode, changeMode, recordIn, takeMode } from '../../editor/settings/modeActs.ts';
import { modeAngle, modePixels, modeShare } from '../../editor/settings/modeSettings.ts';
import { Button } from '../../fittings/Button.tsx';
import { Select, type Choice } from '../../fittings/Select.tsx';
import { TextField } from '../../fittings/TextField.tsx';
import type { PictureMode, PictureUse } from '../../optics/device.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Folded } from '../Folded.tsx';
import { SettingField } from '../SettingField.tsx';
import { SizeRow } from './LensGroup.tsx';
import styles from '../sheet.module.css';

const USES: readonly Choice<PictureUse>[] = [
  { value: 'recorded', label: 'recording' },
  { value: 'live', label: 'watching live, small' },
  { value: 'rotated', label: 'recording on its side' },
  { value: 'stabilised', label: 'recording, stabilised' },
  { value: 'other', label: 'something else' },
];

interface PicturesGroupProps {
  readonly editor: Editor;
  readonly camera: PlanCamera;
}

/** The pictures that the camera gives: each has its own pixels, its part of the sensor and the angle that follows. */
export function PicturesGroup({ editor, camera }: PicturesGroupProps) {
  const { modes, recorded } = camera.device;
  const main = modes.find(({ id }) => id === recorded);
  const more = modes.length - 1;
  const told = `${main?.frame.width} × ${main?.frame.height}${more > 0 ? `, ${more} more` : ''}`;
  return (
    <Folded title="Pictures" told={told}>
      <p className={styles.note}>
        What is seen is judged in the recorded picture. A smaller one, or one that is cut, shows less.
      </p>
      {modes.map((mode) => (
        <ModeFields key={mode.id} editor={editor} camera={camera} mode={mode} />
      ))}
      <div className={styles.acts}>
        <Button press={() => addPictureMode(editor, camera, 'live')}>Add a small stream</Button>
        <Button press={() => addPictureMode(editor, camera, 'stabilised')}>Add a stabilised one</Button>
      </div>
    </Folded>
  );
}

function ModeFields({ editor, camera, mode }: PicturesGroupProps & { readonly mode: PictureMode }) {
  const isRecorded = mode.id === camera.device.recorded;
  const angle = modeAngle(camera, mode);
  const field = { editor, subject: camera.name };
  return (
    <fieldset className={styles.part} data-mode={mode.id}>
      <legend>
        {mode.name}
        {isRecorded ? ', recorded' : ''}
        {angle === null ? '' : `, ${angle.toFixed(1)}° across`}
      </legend>
      <TextField
        label="Called"
        value={mode.name}
        most={120}
        set={(name) => changeMode(editor, camera, mode, { name })}
      />
      <Select
        label="For"
        value={mode.use}
        choices={USES}
        set={(use) => changeMode(editor, camera, mode, { use })}
      />
      <SizeRow label="Pixels" {...field} settings={modePixels(camera, mode)} />
      {modeShare(camera, mode).map((setting) => (
        <SettingField
          key={setting.key}
          {...field}
          setting={{ ...setting, label: setting.label.replace(`, ${mode.name}`, '') }}
        />
      ))}
      <Select
        label="How much is cut is"
        value={mode.cropKnown ? 'known' : 'guessed'}
        choices={[
          { value: 'known', label: 'known' },
          { value: 'guessed', label: 'guessed' },
        ]}
        note={mode.cropKnown ? null : 'The sheet does not say how much is cut. Test one before you drill.'}
        set={(known) => changeMode(editor, camera, mode, { cropKnown: known === 'known' })}
      />
      {!isRecorded && (
        <div className={styles.acts}>
          <Button label={`Record ${mode.name}`} press={() => recordIn(editor, camera, mode)}>
            Record this one
          </Button>
          <Button look="quiet" label={`Take ${mode.name} out`} press={() => takeMode(editor, camera, mode)}>
            Take out
          </Button>
        </div>
      )}
    </fieldset>
  );
}
