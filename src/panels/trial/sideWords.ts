import { fixed } from '../../base/length.ts';
import type { TrialSetting } from '../../draw/trial/shownTrial.ts';
import { anglesOf } from '../../optics/setting.ts';

/** "4.6 mm, 63°, 2.20 m up": the lens, and whatever else sets one setting apart from another. */
export function sideWords(setting: TrialSetting, other: TrialSetting): string {
  const [one, two] = [setting.section, other.section];
  const angle = anglesOf(one.camera).horizontal;
  const words = [`${fixed(one.camera.focalLength, 1)} mm${angle === null ? '' : `, ${angle.toFixed(0)}°`}`];
  if (Math.abs(one.mountingHeight - two.mountingHeight) >= 0.005)
    words.push(`${fixed(one.mountingHeight, 2)} m up`);
  if (Math.abs(one.camera.tilt - two.camera.tilt) >= 0.05) words.push(`tilt ${fixed(one.camera.tilt, 1)}°`);
  if (Math.abs(one.camera.pan - two.camera.pan) >= 0.05) words.push(`pan ${one.camera.pan.toFixed(0)}°`);
  return words.join(', ');
}
