import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { straightOf } from './aimActs.ts';
import { panOutSetting, panSetting, rollSetting, tiltSetting } from './aimSettings.ts';
import { lampSettings } from './lampSettings.ts';
import { mountSettings } from './mountSettings.ts';
import type { Setting } from './setting.ts';
import { structureSettings } from './structureSettings.ts';

/** The numbers that say where a thing stands, how large it is and where it looks, in the order of its sheet. */
export function placementSettings(plan: Plan, { kind, ...thing }: Selected): readonly Setting[] {
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
  ];
}
