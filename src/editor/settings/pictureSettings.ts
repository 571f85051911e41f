import { setPicture } from '../../plan/commands/addPicture.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Picture, PinnedPicture, SitePicture, WallPicture } from '../../plan/plan.ts';
import type { Setting } from './setting.ts';

/** The numbers of a picture, in the order of its sheet. */
export function pictureSettings(picture: Picture): readonly Setting[] {
  const { use } = picture;
  if (use.kind === 'site') return siteSettings(picture, use);
  return use.kind === 'photo' ? pinnedSettings(picture, use) : wallSettings(picture, use);
}

function siteSettings({ id, file }: Picture, use: SitePicture): readonly Setting[] {
  const set =
    (change: Partial<SitePicture>): Setting['change'] =>
    (plan) =>
      setPicture(plan, id, { use: { ...use, ...change } });
  return [
    {
      key: 'strength',
      label: 'Strength, %',
      measure: 'count',
      bounds: { least: 0, most: 100 },
      value: Math.round(use.strength * 100),
      change: (plan, value) => set({ strength: value / 100 })(plan, value),
    },
    {
      key: 'turn',
      label: 'Its up is towards',
      measure: 'bearing',
      bounds: LIMITS.bearing,
      value: use.turn,
      change: (plan, value) => set({ turn: value })(plan, value),
    },
    ...(use.metresPerPixel === null
      ? []
      : [
          {
            key: 'width',
            label: 'The whole picture is wide',
            measure: 'length' as const,
            bounds: LIMITS.size,
            value: use.metresPerPixel * file.width,
            change: (plan, value) => set({ metresPerPixel: value / file.width })(plan, value),
          } satisfies Setting,
        ]),
  ];
}

function pinnedSettings({ id }: Picture, use: PinnedPicture): readonly Setting[] {
  return [
    {
      key: 'heading',
      label: 'Looks towards',
      measure: 'bearing',
      bounds: LIMITS.bearing,
      value: use.heading ?? 0,
      change: (plan, heading) => setPicture(plan, id, { use: { ...use, heading } }),
    },
  ];
}

/** The rectangle of the wall that the four points stand for, and how strongly the photo shows. */
function wallSettings({ id }: Picture, use: WallPicture): readonly Setting[] {
  const length = (
    key: 'width' | 'height' | 'along' | 'sill',
    label: string,
    bounds: Setting['bounds'],
  ): Setting => ({
    key,
    label,
    measure: 'length',
    bounds,
    value: use[key],
    change: (plan, value) => setPicture(plan, id, { use: { ...use, [key]: value } }),
  });
  return [
    length('width', 'Rectangle is wide', LIMITS.size),
    length('height', 'Rectangle is high', LIMITS.height),
    length('along', 'From the first corner', LIMITS.across),
    length('sill', 'Foot above the base', LIMITS.level),
    {
      key: 'strength',
      label: 'Strength, %',
      measure: 'count',
      bounds: { least: 0, most: 100 },
      value: Math.round(use.strength * 100),
      change: (plan, value) => setPicture(plan, id, { use: { ...use, strength: value / 100 } }),
    },
  ];
}
