import type { PartSeen, PersonSeen } from '../../assess/person/personAt.ts';
import { distance } from '../../base/vector.ts';
import type { Looks } from '../../coverage/target.ts';
import type { Camera } from '../../optics/camera.ts';
import { depressionAt } from '../../optics/density.ts';
import { imageFromSite } from '../../optics/projection.ts';
import { smearOf, type Smear } from '../../optics/smear.ts';
import type { Exposure } from '../../plan/plan.ts';
import { dayPicture, nightPicture, turnedBy, type NightLight, type Picture } from './exposed.ts';
import { headSubject } from './head.ts';
import { parcelSubject } from './parcel.ts';
import { plateSubject } from './plate.ts';
import { sampled, type Stands } from './sampled.ts';
import { smeared } from './spread.ts';
import type { Subject } from './subject.ts';

/** How somebody is looked at. */
export interface PersonLook {
  readonly looks: Looks;
  readonly cap: boolean;
  /** Across the line of sight, m/s: of who walks, and of a car. A parcel stands still. */
  readonly speed: { readonly person: number; readonly car: number };
  /** ms. */
  readonly exposure: Exposure;
  /** Stated range of the camera's own infrared, m; null without. */
  readonly infraredRange: number | null;
}

/** How a part of somebody is seen, before any picture is made of it. */
export interface PartLook {
  readonly seen: PartSeen;
  readonly stands: Stands;
  readonly light: NightLight;
  /** Of what moves; a parcel stands still. */
  readonly smear: Readonly<Record<'day' | 'night', Smear>>;
}

export type PartPictures = Readonly<Record<'day' | 'night', Picture>>;

/** How each part is seen. */
export const personLooked = ({ parts, camera }: PersonSeen, look: PersonLook): readonly PartLook[] =>
  parts.map((seen) => {
    const speed = { face: look.speed.person, plate: look.speed.car, parcel: 0 }[seen.part];
    const density = seen.density?.horizontal ?? 0;
    return {
      seen,
      stands: { at: seen.point, looks: bearingOf(look.looks, seen.point) },
      light: lightOf(seen, camera, look.infraredRange),
      smear: {
        day: smearOf(speed, look.exposure.day, density),
        night: smearOf(speed, look.exposure.night, density),
      },
    };
  });

/** A part as this camera's pixels would have it; null where the lens has no image of it, or stands right at it. */
export function partPictures(part: PartLook, camera: Camera, look: PersonLook): PartPictures | null {
  const { seen, stands, light, smear } = part;
  const subject = subjectOf(seen.part, look.cap);
  const spread = Math.max(smear.day.pixels, smear.night.pixels) / 2;
  const gathered = sampled(camera, subject, stands, spread);
  if (gathered === null) return null;
  const quarters = Math.round(camera.roll / 90);
  const along = (millimetres: number) => smeared(gathered, wayAcross(camera, stands, millimetres / 1000));
  return {
    day: turnedBy(dayPicture(along(smear.day.millimetres)), quarters),
    night: turnedBy(
      nightPicture(along(smear.night.millimetres), light, look.exposure.night, subject.retroreflects),
      quarters,
    ),
  };
}

function subjectOf(part: PartSeen['part'], cap: boolean): Subject {
  switch (part) {
    case 'face':
      return headSubject(cap);
    case 'plate':
      return plateSubject;
    case 'parcel':
      return parcelSubject;
  }
}

/** Which way somebody at a place looks, °. */
function bearingOf(looks: Looks, [x, y]: readonly [number, number, number]): number {
  if (looks.kind === 'bearing') return looks.bearing;
  return (Math.atan2(looks.at[0] - x, looks.at[1] - y) * 180) / Math.PI;
}

function lightOf({ light, point }: PartSeen, { eye }: Camera, range: number | null): NightLight {
  if (light === null) return null;
  if (light === 'lamp' || range === null) return { kind: 'lamp' };
  return { kind: 'infrared', share: distance(eye, point) / range };
}

/** Where the picture of a place goes when that goes so far across the line of sight, px. */
function wayAcross(camera: Camera, { at }: Stands, far: number): readonly [number, number] {
  const [dx, dy] = [at[0] - camera.eye[0], at[1] - camera.eye[1]];
  const over = Math.hypot(dx, dy);
  const [ax, ay] = over < 1e-9 ? [1, 0] : [dy / over, -dx / over];
  const [one, two] = [-far / 2, far / 2].map((along) =>
    imageFromSite(camera, [at[0] + ax * along, at[1] + ay * along, at[2]]),
  );
  return one && two ? [two.u - one.u, two.v - one.v] : [0, 0];
}

/** How far round from where somebody looks the camera stands, in plan, °. */
export function fromTheSide({ at, looks }: Stands, { eye }: Camera): number {
  const toCamera = (Math.atan2(eye[0] - at[0], eye[1] - at[1]) * 180) / Math.PI;
  const turned = Math.abs(toCamera - looks) % 360;
  return turned > 180 ? 360 - turned : turned;
}

/** From how far above the part is looked down on, °. */
export const fromAbove = ({ at }: Stands, { eye }: Camera): number => depressionAt(eye, at);
