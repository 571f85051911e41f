import { tan } from '../../../base/angle.ts';
import { span } from '../../../model/segment.ts';
import { depressionAt } from '../../../optics/density.ts';
import { cautionId, type About } from '../about.ts';
import { angleFromLooks, type Asked, type Spot } from '../asked.ts';
import type { Found, Severity } from '../caution.ts';

/** Bands from these densities on are those of identify and of recognise, px/m, whatever the edition calls them. */
const IDENTIFY = 250;
const RECOGNISE = 125;

/** The limits of the plan for a face at what is asked; null where none applies. */
const limitsFor = ({ settings }: About, { density }: Asked) =>
  density >= IDENTIFY
    ? settings.faceLimits.identify
    : density >= RECOGNISE
      ? settings.faceLimits.recognise
      : null;

/** Whether a face at a spot keeps both limits, so that a picture of it counts. */
export function faceKept(about: About, asked: Asked, spot: Spot): boolean {
  const limits = limitsFor(about, asked);
  if (limits === null) return true;
  const side = angleFromLooks(about.camera, spot) ?? 0;
  return depressionAt(about.camera.eye, spot.at) <= limits.above && side <= limits.side;
}

interface Worst {
  readonly spot: Spot;
  readonly angle: number;
  readonly severity: Severity;
}

/**
 * Whether an angle is too great over what a camera serves. Past the limit everywhere it fails, in part it is tight; what is
 * told is the least angle where all fail, else the greatest.
 */
function judged(
  { served }: Asked,
  angleOf: (spot: Spot) => number | null,
  limit: number | null,
  tell: number,
): Worst | null {
  const angles = served.flatMap((spot) => {
    const angle = angleOf(spot);
    return angle === null ? [] : [{ spot, angle }];
  });
  const [first] = angles;
  if (first === undefined) return null;
  const least = angles.reduce((one, two) => (two.angle < one.angle ? two : one), first);
  const most = angles.reduce((one, two) => (two.angle > one.angle ? two : one), first);
  if (limit !== null && least.angle > limit) return { ...least, severity: 'fails' };
  if (limit !== null && most.angle > limit) return { ...most, severity: 'tight' };
  return most.angle > tell ? { ...most, severity: 'tell' } : null;
}

const isFace = ({ requirement }: Asked): boolean => requirement.target === 'face';

/** Row 1: a face that is seen from the side. */
export function fromTheSide(about: About): readonly Found[] {
  const tell = about.limit('side.tell');
  return about.asked.filter(isFace).flatMap((asked): Found[] => {
    const limit = limitsFor(about, asked)?.side ?? null;
    const worst = judged(asked, (spot) => angleFromLooks(about.camera, spot), limit, tell);
    if (worst === null) return [];
    const crossed = worst.severity === 'tell' ? tell : (limit ?? tell);
    const { id, name } = asked.requirement;
    return [
      {
        id: cautionId(1, id),
        severity: worst.severity,
        weight: worst.angle / crossed,
        figures: { row: 1, requirement: name, angle: worst.angle, limit: crossed },
        places: [{ at: worst.spot.at, thing: null }],
        thresholds: ['side.tell'],
      },
    ];
  });
}

/** Row 2: a face that is looked down on too steeply. */
export function fromAbove(about: About): readonly Found[] {
  const tell = about.limit('above.tell');
  const { camera, settings } = about;
  return about.asked.filter(isFace).flatMap((asked): Found[] => {
    const limit = limitsFor(about, asked)?.above ?? null;
    const worst = judged(asked, (spot) => depressionAt(camera.eye, spot.at), limit, tell);
    if (worst === null) return [];
    const crossed = worst.severity === 'tell' ? tell : (limit ?? tell);
    const { id, name, targetHeight } = asked.requirement;
    const { at } = worst.spot;
    const far = span([camera.eye[0], camera.eye[1]], [at[0], at[1]]);
    const steepest = limit ?? settings.faceLimits.identify.above;
    return [
      {
        id: cautionId(2, id),
        severity: worst.severity,
        weight: worst.angle / crossed,
        figures: {
          row: 2,
          requirement: name,
          angle: worst.angle,
          limit: crossed,
          mostHeight: targetHeight + far * tan(steepest),
        },
        places: [{ at, thing: null }],
        thresholds: ['above.tell'],
      },
    ];
  });
}
