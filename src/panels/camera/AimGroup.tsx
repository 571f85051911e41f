import type { Editor } from '../../editor/editor.ts';
import {
  aimTrouble,
  inCorridor,
  lookLevel,
  lookStraightOut,
  straightOf,
  switchCorridor,
} from '../../editor/settings/aimActs.ts';
import {
  panOutSetting,
  panSetting,
  rangeSetting,
  rollSetting,
  tiltSetting,
} from '../../editor/settings/aimSettings.ts';
import { Button } from '../../fittings/Button.tsx';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { Group } from '../Group.tsx';
import { SettingField } from '../SettingField.tsx';
import { useFaultWords } from '../faultWords.ts';
import styles from '../sheet.module.css';

interface AimGroupProps {
  readonly editor: Editor;
  readonly plan: Plan;
  readonly camera: PlanCamera;
}

/** Where the camera looks. */
export function AimGroup({ editor, plan, camera }: AimGroupProps) {
  const words = useFaultWords();
  const straight = straightOf(plan, camera);
  const corridor = inCorridor(camera);
  const field = { editor, subject: camera.name };
  return (
    <Group title="Aim">
      <SettingField {...field} setting={panSetting(camera)} />
      {straight !== null && (
        <SettingField
          {...field}
          setting={panOutSetting(camera, straight)}
          note={sideWords(panOutSetting(camera, straight).value)}
        />
      )}
      <SettingField {...field} setting={tiltSetting(camera)} />
      <SettingField {...field} setting={rollSetting(camera)} />
      {aimTrouble(plan, camera).map((fault) => (
        <p key={fault.code} className={styles.trouble}>
          {words(fault)}
        </p>
      ))}
      <SettingField {...field} setting={rangeSetting(camera)} />
      <div className={styles.acts}>
        {straight !== null && (
          <Button press={() => lookStraightOut(editor, camera, straight)}>Straight out</Button>
        )}
        <Button press={() => lookLevel(editor, camera)}>Level</Button>
        <Button
          pressed={corridor}
          label="Corridor format: the camera on its side, its picture upright and tall"
          press={() => switchCorridor(editor, camera)}
        >
          Corridor format
        </Button>
      </div>
    </Group>
  );
}

/** Which way an angle from straight out goes, as somebody says it who stands behind the camera. */
function sideWords(off: number): string {
  if (Math.abs(off) < 0.05) return 'Straight out from the wall.';
  return `To the ${off > 0 ? 'right' : 'left'} of straight out from the wall, seen from behind the camera.`;
}
