import { fixed, lengthText, type LengthUnit } from '../../../base/length.ts';
import type { HostFace } from '../../../model/face.ts';
import type { Mount } from '../../../optics/mount.ts';
import { cornerNames } from './cornerNames.ts';

/** Lengths as the strip says them: bare in metres, else with the unit. */
export function lengthWords(metres: number, unit: LengthUnit): string {
  if (unit === 'metres') return fixed(metres, 2);
  const { text, unit: sign } = lengthText(metres, unit);
  return sign === '' ? text : `${text} ${sign}`;
}

/** "2.70 up · 2.40 from the east corner · 9.60 from the west corner". */
export function mountWords(mount: Mount, face: HostFace | null, unit: LengthUnit): string {
  const say = (metres: number): string => lengthWords(metres, unit);
  switch (mount.kind) {
    case 'flush':
    case 'arm':
      return [`${say(mount.height)} up`, ...cornerWords(mount, face, say)].join(' · ');
    case 'soffit':
      if (face?.name.startsWith('Ceiling'))
        return [
          `under the ceiling, ${say(mount.inset)} from the wall`,
          ...cornerWords(mount, face, say),
        ].join(' · ');
      return [
        `under the soffit, ${say(mount.inset)} from the wall`,
        ...(face ? [`${say(face.depth - mount.inset)} from the fascia`] : []),
        ...cornerWords(mount, face, say),
      ].join(' · ');
    case 'corner':
      return `${say(mount.height)} up · around the corner`;
    case 'pole':
      return `post, ${say(mount.height)} up`;
    case 'loose':
      return `${say(mount.eye[2])} up, fixed to nothing`;
  }
}

function cornerWords(
  mount: { readonly corner: 'start' | 'end'; readonly distance: number },
  face: HostFace | null,
  say: (metres: number) => string,
): string[] {
  if (!face) return [];
  const names = cornerNames(face);
  const other = mount.corner === 'start' ? names.end : names.start;
  return [
    `${say(mount.distance)} from the ${names[mount.corner]} corner`,
    `${say(face.width - mount.distance)} from the ${other} corner`,
  ];
}
