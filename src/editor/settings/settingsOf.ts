import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { panSetting, rangeSetting, rollSetting, tiltSetting } from './aimSettings.ts';
import { lampSettings } from './lampSettings.ts';
import { focalSettings, statedAngleSettings } from './lensSettings.ts';
import { exposureSettings, infraredSettings } from './lightSettings.ts';
import { mountSettings } from './mountSettings.ts';
import type { Setting } from './setting.ts';
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
  return [
    ...mountSettings(plan, camera),
    panSetting(camera),
    tiltSetting(camera),
    rollSetting(camera),
    ...focalSettings(camera),
    ...statedAngleSettings(camera),
    rangeSetting(camera),
    ...infraredSettings(camera),
    ...exposureSettings(camera),
  ];
}
