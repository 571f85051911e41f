import { densityAt, depressionAt } from '../../../optics/density.ts';
import { cautionId, type About } from '../about.ts';
import { angleFromLooks, type Spot } from '../asked.ts';
import type { Found } from '../caution.ts';

/**
 * Height of a character of a number plate, m. Source: facts D27, Road Vehicles (Display of Registration Marks) Regulations
 * 2001, as several pages quote them.
 */
const CHARACTER = 0.079;

interface Read {
  readonly spot: Spot;
  readonly pixels: number;
  readonly angle: number | null;
  /** How well it keeps the limits: 1 or more where it does. */
  readonly kept: number;
}

/** Row 3: a plate whose characters are too small, or seen too far off its normal. */
export function plateTooSmall(about: About): readonly Found[] {
  const [least, most] = [about.limit('plate.pixels'), about.limit('plate.angle')];
  const { camera } = about;
  const readAt = (spot: Spot): Read[] => {
    const density = densityAt(camera, spot.at);
    if (density === null) return [];
    const pixels = density.vertical * CHARACTER;
    const side = angleFromLooks(camera, spot);
    const upright = Math.abs(depressionAt(camera.eye, spot.at));
    const angle = Math.max(side ?? 0, upright);
    const kept = Math.min(pixels / least, angle > 0 ? most / angle : Infinity);
    return [{ spot, pixels, angle: side === null ? null : angle, kept }];
  };
  return about.asked
    .filter(({ requirement }) => requirement.target === 'plate')
    .flatMap(({ requirement, seen }): Found[] => {
      const reads = seen.flatMap(readAt);
      const [first] = reads;
      if (first === undefined) return [];
      const best = reads.reduce((one, two) => (two.kept > one.kept ? two : one), first);
      if (best.kept >= 1) return [];
      return [
        {
          id: cautionId(3, requirement.id),
          severity: 'fails',
          weight: 1 / best.kept,
          figures: {
            row: 3,
            requirement: requirement.name,
            pixels: best.pixels,
            leastPixels: least,
            angle: best.angle,
            mostAngle: most,
          },
          places: [{ at: best.spot.at, thing: null }],
          thresholds: best.pixels < least ? ['plate.pixels', 'plate.angle'] : ['plate.angle', 'plate.pixels'],
        },
      ];
    });
}

/** Row 4: one camera for a plate at night and for something else at night. */
export function plateAndMore({ asked, dark }: About): readonly Found[] {
  if (!dark) return [];
  const plate = asked.find(({ requirement, seen }) => requirement.target === 'plate' && seen.length > 0);
  const other = asked.find(({ requirement, served }) => requirement.target !== 'plate' && served.length > 0);
  if (plate === undefined || other === undefined) return [];
  const [spot] = plate.seen;
  return [
    {
      id: cautionId(4, plate.requirement.id),
      severity: 'tight',
      weight: 1,
      figures: { row: 4, requirement: plate.requirement.name, other: other.requirement.name },
      places: spot === undefined ? [] : [{ at: spot.at, thing: null }],
      thresholds: [],
    },
  ];
}
