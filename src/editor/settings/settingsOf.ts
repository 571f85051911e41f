import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { straightOf } from './aimActs.ts';
import { panOutSetting, panSetting, rangeSetting, rollSetting, tiltSetting } from './aimSettings.ts';
import { lampSettings } from './lampSettings.ts';
import { focalSettings, statedAngleSettings } from './lensSettings.ts';
import { exposureSettings, infraredSettings } from './lightSettings.ts';
import { mountSettings } from './mountSettings.ts';
import { knownSetting, type Setting } from './setting.ts';
import { sharpnessSettings, sheetSettings } from './sheetSettings.ts';
import { structureSettings } from './structureSettings.ts';

/** Every number of a thing that can be typed, in the order of its sheet; none for what has no numbers. */
export function settingsOf(plan: Plan, { kind, ...thing }: Selected): readonly Setting[] {
  const id = 'id' in thing ? thing.id : '';
  if (kind === 'structure') {
    const structure = plan.structures[id];
    return structure ? structureSettings(structure) : [];
  }
  if (kind === 'lamp') {
    const lamp = plan.lamps[id];
    return lamp ? lampSettings(lamp) : [];
  }
  const camera = kind === 'camera' ? plan.cameras[id] : undefined;
  if (!camera) return [];
  const straight = straightOf(plan, camera);
  return [
    ...mountSettings(plan, camera),
    panSetting(camera),
    ...(straight === null ? [] : [panOutSetting(camera, straight)]),
    tiltSetting(camera),
    rollSetting(camera),
    ...focalSettings(camera),
    ...statedAngleSettings(camera),
    rangeSetting(camera),
    ...infraredSettings(camera),
    ...exposureSettings(camera),
    ...[...sharpnessSettings(camera), ...sheetSettings(camera)].flatMap((one) => knownSetting(one) ?? []),
  ];
}
