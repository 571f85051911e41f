import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { rangeSetting } from './aimSettings.ts';
import { focalSettings, statedAngleSettings } from './lensSettings.ts';
import { exposureSettings, infraredSettings } from './lightSettings.ts';
import { placementSettings } from './placementSettings.ts';
import { knownSetting, type Setting } from './setting.ts';
import { sharpnessSettings, sheetSettings } from './sheetSettings.ts';

/** Every number of a thing that can be typed, in the order of its sheet; none for what has no numbers. */
export function settingsOf(plan: Plan, thing: Selected): readonly Setting[] {
  const camera = thing.kind === 'camera' ? plan.cameras[thing.id] : undefined;
  const placement = placementSettings(plan, thing);
  if (!camera) return placement;
  return [
    ...placement,
    ...focalSettings(camera),
    ...statedAngleSettings(camera),
    rangeSetting(camera),
    ...infraredSettings(camera),
    ...exposureSettings(camera),
    ...[...sharpnessSettings(camera), ...sheetSettings(camera)].flatMap((one) => knownSetting(one) ?? []),
  ];
}
