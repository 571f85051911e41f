import { dot, type Vec2, type Vec3 } from '../../../base/vector.ts';
import { pointState } from '../../../coverage/point.ts';
import { ruleOf } from '../../../coverage/rule.ts';
import { smearOf } from '../../../optics/smear.ts';
import { lensInside } from '../../../sight/lensInside.ts';
import { cautionId, type About } from '../about.ts';
import type { Asked, Spot } from '../asked.ts';
import type { Found } from '../caution.ts';
import { wayTo } from '../pictureRays.ts';
import type { ThresholdId } from '../thresholds.ts';
import { faceKept } from './faceAngles.ts';

/** Speed across the line of sight, m/s: of a walk whose way is known its part square to the line, else all of it. */
function speedAcross(
  eye: Vec3,
  { at, walks, looks }: Pick<Spot, 'at' | 'walks' | 'looks'>,
  speed: number,
): number {
  const way = walks ?? looks;
  if (way === null) return speed;
  const along = dot(wayTo(eye, at), [way[0], way[1], 0]);
  return speed * Math.sqrt(Math.max(0, 1 - along * along));
}

interface Limits {
  readonly tell: ThresholdId | null;
  readonly fails: ThresholdId;
}

function limitsFor({ requirement, density }: Asked): Limits | null {
  if (requirement.target === 'plate') return { tell: null, fails: 'smear.plate.fails' };
  if (requirement.target !== 'face' || density < 125) return null;
  return density >= 250
    ? { tell: 'smear.identify.tell', fails: 'smear.identify.fails' }
    : { tell: 'smear.recognise.tell', fails: 'smear.recognise.fails' };
}

/** Row 5: who walks or drives by is smeared while a picture is exposed. Millimetres at the target. */
export function smeared(about: About): readonly Found[] {
  const { set, camera, settings, dark } = about;
  const night = set.exposure?.night ?? about.limit('smear.night.exposure');
  const shots = [
    ...(set.exposure === null ? [] : [{ when: 'day', exposure: set.exposure.day, taken: false } as const]),
    ...(dark ? [{ when: 'night', exposure: night, taken: set.exposure === null } as const] : []),
  ];
  return about.asked.flatMap((asked): Found[] => {
    const limits = limitsFor(asked);
    if (limits === null) return [];
    const { requirement } = asked;
    const isPlate = requirement.target === 'plate';
    const speed = isPlate ? about.limit('smear.plate.speed') : settings.walkingSpeed;
    const spots = isPlate ? asked.seen : asked.served;
    const [first] = spots
      .map((spot) => ({ spot, across: speedAcross(camera.eye, spot, speed) }))
      .sort((one, two) => one.across - two.across);
    if (first === undefined) return [];
    return shots.flatMap(({ when, exposure, taken }): Found[] => {
      const { millimetres } = smearOf(first.across, exposure, 0);
      const fails = about.limit(limits.fails);
      const tell = limits.tell === null ? Infinity : about.limit(limits.tell);
      if (millimetres <= Math.min(fails, tell)) return [];
      const crossed: ThresholdId = millimetres > fails || limits.tell === null ? limits.fails : limits.tell;
      return [
        {
          id: cautionId(5, when, requirement.id),
          severity: millimetres > fails ? 'fails' : 'tell',
          weight: millimetres / about.limit(crossed),
          figures: {
            row: 5,
            requirement: requirement.name,
            when,
            of: isPlate ? 'plate' : 'face',
            millimetres,
            exposure,
            taken,
            speed,
          },
          places: [{ at: first.spot.at, thing: null }],
          thresholds: [
            crossed,
            ...(isPlate ? (['smear.plate.speed'] as const) : []),
            ...(taken ? (['smear.night.exposure'] as const) : []),
          ],
        },
      ];
    });
  });
}

/** Where between two spots of a walk one ends to count, as a share; found by halving. */
const HALVINGS = 16;

/** Metres of a walk on which pictures of the face count: enough pixels, nothing in the way, within both limits. */
function countedWalk(about: About, asked: Asked): number {
  const { camera, obstacles, edition, groundAt } = about;
  const { facets, segments } = obstacles;
  const rule = ruleOf(camera, { kind: 'ground', height: 0 }, edition.bands, []);
  const inside = lensInside(camera.eye, facets);
  const counts = (spot: Omit<Spot, 'state'>): boolean => {
    const state = pointState(camera, spot.at, facets.solids, segments, rule, inside);
    if (state.state !== 'covered' || state.density === null || state.density < asked.density) return false;
    return faceKept(about, asked, { ...spot, state });
  };
  const { spots, requirement } = asked;
  const between = (a: Spot, b: Spot, share: number): Omit<Spot, 'state'> => {
    const place: Vec2 = [a.at[0] + (b.at[0] - a.at[0]) * share, a.at[1] + (b.at[1] - a.at[1]) * share];
    return { at: [...place, groundAt(place) + requirement.targetHeight], looks: b.looks, walks: b.walks };
  };
  let length = 0;
  spots.slice(1).forEach((b, k) => {
    const a = spots[k];
    if (a === undefined || a.walks !== b.walks) return;
    const far = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]);
    const [begins, ends] = [counts(a), counts(b)];
    if (begins && ends) length += far;
    if (begins === ends) return;
    let [yes, no] = begins ? [0, 1] : [1, 0];
    for (let halving = 0; halving < HALVINGS; halving += 1) {
      const middle = (yes + no) / 2;
      if (counts(between(a, b, middle))) yes = middle;
      else no = middle;
    }
    length += far * (begins ? yes : 1 - yes);
  });
  return length;
}

/** Row 6: too few pictures of a face while somebody walks, or runs, along an approach. */
export function fewPictures(about: About): readonly Found[] {
  const rate = about.set.sheet.imagesPerSecond;
  if (rate === null) return [];
  const walks = [
    { speed: about.settings.walkingSpeed, least: 'pictures.walking', severity: 'tight' },
    { speed: about.limit('pictures.runningSpeed'), least: 'pictures.running', severity: 'tell' },
  ] as const;
  return about.asked.flatMap((asked): Found[] => {
    const { requirement, served } = asked;
    const [spot] = served;
    if (requirement.shape !== 'approach' || requirement.target !== 'face' || spot === undefined) return [];
    const length = countedWalk(about, asked);
    // Of walking and running only the first that is too little is told.
    for (const { speed, least, severity } of walks) {
      const seconds = length / speed;
      const pictures = Math.floor(seconds * rate + 1e-9);
      if (pictures >= about.limit(least)) continue;
      return [
        {
          id: cautionId(6, requirement.id),
          severity,
          weight: (about.limit(least) + 1) / (pictures + 1),
          figures: { row: 6, requirement: requirement.name, pictures, seconds, speed },
          places: [{ at: spot.at, thing: null }],
          thresholds: [least],
        },
      ];
    }
    return [];
  });
}
