import { useStore } from 'zustand';
import type { AnswersStore } from '../../answers/store.ts';
import { turn } from '../../base/angle.ts';
import type { Editor } from '../../editor/editor.ts';
import { panSetting, rangeSetting, rollSetting, tiltSetting } from '../../editor/settings/aimSettings.ts';
import { bearingOf } from '../../editor/settings/compass.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { SettingField } from '../SettingField.tsx';

interface AimGroupProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly camera: PlanCamera;
}

/** Where the camera looks. */
export function AimGroup({ editor, answers, camera }: AimGroupProps) {
  const outward = useStore(
    answers,
    ({ assessment }) =>
      assessment?.scene.fixings.find((fixing) => fixing.camera === camera.id)?.outward ?? null,
  );
  const field = { editor, subject: camera.name };
  return (
    <Group title="Aim">
      <SettingField {...field} setting={panSetting(camera)} />
      {outward && Math.hypot(outward[0], outward[1]) > 1e-6 && (
        <OffNormal off={turn(bearingOf(outward[0], outward[1]), camera.pan)} />
      )}
      <SettingField {...field} setting={tiltSetting(camera)} />
      <SettingField {...field} setting={rollSetting(camera)} />
      <SettingField {...field} setting={rangeSetting(camera)} />
    </Group>
  );
}

function OffNormal({ off }: { off: number }) {
  const shown = Math.abs(off).toFixed(1);
  const side = shown === '0.0' ? '' : off > 0 ? ' right' : ' left';
  return <Figure label="Straight out from the wall" value={shown} unit={`°${side}`} />;
}
