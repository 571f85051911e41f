import type { PersonSeen } from '../../assess/person/personAt.ts';
import { thresholdOf } from '../../assess/cautions/thresholds.ts';
import type { Edition } from '../../coverage/band.ts';
import type { PointState } from '../../coverage/point.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Exposure, PlanSettings } from '../../plan/plan.ts';
import { LOWERED } from '../loweredText.ts';
import { plateContrast } from './exposed.ts';
import { peakHides } from './head.ts';
import { fromAbove, fromTheSide, type PartLook } from './personPictures.ts';
import { CHARACTER } from './plate.ts';
import { PARCEL_WIDE } from './parcel.ts';
import { towardsCamera } from './sampled.ts';

/** Width of a face, m: the pages that tell pixels across a face take 16 cm (facts D3). */
const FACE_WIDTH = 0.16;
/** Less contrast than this and a plate burns out: common practice, no source. */
const BURNT = 0.3;

/** What names and limits are taken from. */
export interface PersonNamed {
  readonly solids: readonly { readonly name: string }[];
  readonly edition: Edition;
  readonly settings: PlanSettings;
}

/** What one card says of one part. */
export interface PartWords {
  /** "152 px/m, 24 px across the face". */
  readonly pixels: string;
  /** Sentences that follow. */
  readonly more: readonly string[];
  /** For those who do not see the picture: by day, and at night. */
  readonly alt: Readonly<Record<'day' | 'night', string>>;
  /** Why nothing of it is in the part by day or at night; null where it is. */
  readonly unseen: Readonly<Record<'day' | 'night', string | null>>;
}

/** What is said of a part; `cap` only changes a face. */
export function partWords(
  part: PartLook,
  camera: Camera,
  named: PersonNamed,
  exposure: Exposure,
  cap: boolean,
): PartWords {
  const { seen } = part;
  const unseen = { day: unseenWords(seen.day, named), night: unseenWords(seen.night, named) };
  const { pixels, more, by } = {
    face: () => faceWords(part, camera, named, cap),
    plate: () => plateWords(part, camera, named, exposure),
    parcel: () => parcelWords(part),
  }[seen.part]();
  const name = { face: 'Face', plate: 'Plate', parcel: 'Parcel' }[seen.part];
  const alt = (when: 'day' | 'night') =>
    `${name} ${when === 'day' ? 'by day' : 'at night'}: ${[unseen[when] ?? pixels, ...more, ...(by ? [by[when]] : [])].join('. ')}.`;
  return {
    pixels,
    more: [...more, ...(by ? [by.day, by.night] : [])],
    alt: { day: alt('day'), night: alt('night') },
    unseen,
  };
}

/** "recognise", "observe, no more since the face is seen from too steep", "too few pixels", "hidden by Hedge". */
export function madeOf(state: PointState, named: PersonNamed): string {
  const lost = LOWERED[state.lost] ?? '';
  if (state.state === 'covered')
    return `${(named.edition.bands[state.band - 1]?.name ?? 'covered').toLowerCase()}${lost}`;
  return unseenWords(state, named) ?? 'too few pixels';
}

function unseenWords({ state, hider }: PointState, { solids }: PersonNamed): string | null {
  const by = hider === null ? 'something' : (solids[hider]?.name ?? 'something');
  switch (state) {
    case 'covered':
    case 'too coarse':
      return null;
    case 'hidden':
      return `hidden by ${by}`;
    case 'screened':
      return `through leaves or mesh of ${by}`;
    case 'inside':
      return 'inside a structure';
    case 'out of frame':
    case 'too dark':
      return state;
  }
}

interface Said {
  readonly pixels: string;
  readonly more: readonly string[];
  /** What holds by day or at night only. */
  readonly by?: Readonly<Record<'day' | 'night', string>>;
}

function faceWords(part: PartLook, camera: Camera, named: PersonNamed, cap: boolean): Said {
  const { seen, stands, smear } = part;
  const density = seen.density?.horizontal ?? 0;
  const above = fromAbove(stands, camera);
  const hidden = cap && peakHides(towardsCamera(camera, stands));
  return {
    pixels: `${count(density * FACE_WIDTH)} px across the face, ${count(density)} px/m`,
    more: [
      `Seen from ${Math.abs(above).toFixed(0)}° ${above < 0 ? 'below' : 'above'}, ${sideWords(fromTheSide(stands, camera))}`,
      ...smearWords(smear),
      ...(hidden ? ['The peak of the cap hides the eyes from here'] : []),
      ...(seen.light === 'infrared' ? rangeWords(part, named) : []),
    ],
  };
}

const sideWords = (side: number): string =>
  side < 0.5 ? 'straight on' : `${side.toFixed(0)}° from the side`;

/** What smears more than it is worth to say: by day, at night. */
function smearWords({ day, night }: PartLook['smear']): readonly string[] {
  if (day.millimetres === 0 && night.millimetres === 0) return [];
  const say = ({ millimetres, pixels }: PartLook['smear']['day']) =>
    `${millimetres < 10 ? millimetres.toFixed(1) : millimetres.toFixed(0)} mm (${pixels.toFixed(1)} px)`;
  return [`Smears over ${say(day)} by day, ${say(night)} at night`];
}

/** Past half of a stated range faces are not to be counted on. */
function rangeWords({ light }: PartLook, { settings }: PersonNamed): readonly string[] {
  const share = light?.kind === 'infrared' ? light.share : 0;
  if (share <= thresholdOf(settings, 'infrared.fine')) return [];
  return [`At ${(100 * share).toFixed(0)} % of the stated range of its infrared: faces want half of it`];
}

function plateWords(
  { seen, stands, smear, light }: PartLook,
  camera: Camera,
  { settings }: PersonNamed,
  exposure: Exposure,
): Said {
  const high = (seen.density?.vertical ?? 0) * CHARACTER;
  const [side, above] = [fromTheSide(stands, camera), Math.abs(fromAbove(stands, camera))];
  const [least, most] = [thresholdOf(settings, 'plate.pixels'), thresholdOf(settings, 'plate.angle')];
  const still = thresholdOf(settings, 'smear.plate.fails');
  const always = [
    ...(high < least ? [`plates need ${least} px a character`] : []),
    ...(side > most ? [`${side.toFixed(0)}° from the side is over ${most}°`] : []),
    ...(above > most ? [`${above.toFixed(0)}° from above is over ${most}°`] : []),
  ];
  const moves = (when: 'day' | 'night') =>
    smear[when].millimetres > still
      ? [`a smear of ${smear[when].millimetres.toFixed(0)} mm is over ${still} mm`]
      : [];
  const burns =
    light !== null && plateContrast(light, exposure.night) < BURNT
      ? [
          light.kind === 'infrared'
            ? `burns out in the camera’s infrared at ${exposureWords(exposure.night)}`
            : `too dark at ${exposureWords(exposure.night)}`,
        ]
      : [];
  const say = (when: string, troubles: readonly string[]) =>
    troubles.length === 0 ? `${when} enough pixels for a plate` : `${when} no plate: ${troubles.join(', ')}`;
  return {
    pixels: `A character is ${high < 10 ? high.toFixed(1) : high.toFixed(0)} px high`,
    more: [],
    by: {
      day: say('By day', [...notSeen(seen.day), ...always, ...moves('day')]),
      night: say('At night', [...notSeen(seen.night), ...always, ...moves('night'), ...burns]),
    },
  };
}

const notSeen = ({ state }: PointState): readonly string[] =>
  state === 'covered' || state === 'too coarse'
    ? []
    : [state === 'screened' ? 'through leaves or mesh' : state];

function parcelWords({ seen }: PartLook): Said {
  const across = (seen.density?.horizontal ?? 0) * PARCEL_WIDE;
  return { pixels: `${count(across)} px across a parcel of ${(100 * PARCEL_WIDE).toFixed(0)} cm`, more: [] };
}

/** "1/25 s", "2 s". */
export const exposureWords = (milliseconds: number): string =>
  milliseconds >= 400
    ? `${Number((milliseconds / 1000).toFixed(1))} s`
    : `1/${Math.max(1, Math.round(1000 / milliseconds))} s`;

const count = (pixels: number): string => (pixels < 10 ? pixels.toFixed(1) : pixels.toFixed(0));

/** The face among what is seen. */
export const faceOf = ({ parts }: PersonSeen) => parts.find(({ part }) => part === 'face');
