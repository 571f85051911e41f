import { degreesFromRad } from '../../../base/angle.ts';
import { dot, type Vec3 } from '../../../base/vector.ts';
import { axesOf, imageFromSite, siteRayFromImage } from '../../../optics/projection.ts';
import { alongRay, cautionId, placeOfCamera, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import { sunPosition, sunWay } from '../sunPosition.ts';

/** The year is looked at every so many days, and each of them every so many minutes. */
const DAYS = 7;
const MINUTES = 10;
/** 1 January 2026, 0 h UTC: of another year the sun differs by less than the steps. */
const NEW_YEAR = 2_461_041.5;
/** First day of each month of a common year, counted from 0. */
const MONTHS = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/** How far a ray to the sun is followed, m. */
const FAR = 20_000;
/** Between two steps of the work, days of the year. */
const STRIDE = 8;

/** How far outside the frame a direction points, °; 0 within. Where the lens has no image, from the frame's nearest corner. */
export function outsideFrame({ camera }: Pick<About, 'camera'>, way: Vec3): number {
  const { width, height } = camera.frame;
  const image = imageFromSite(camera, alongRay(camera.eye, way, 1));
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const places =
    image === null
      ? [
          { u: 0, v: 0 },
          { u: width, v: 0 },
          { u: 0, v: height },
          { u: width, v: height },
        ]
      : [{ u: within(image.u, width), v: within(image.v, height) }];
  if (image !== null && places[0]?.u === image.u && places[0].v === image.v) return 0;
  const angles = places.flatMap((place) => {
    const edge = siteRayFromImage(camera, place);
    return edge === null ? [] : [degreesFromRad(Math.acos(Math.max(-1, Math.min(1, dot(edge, way)))))];
  });
  return Math.min(180, ...angles);
}

interface DayOfSun {
  readonly month: number;
  readonly minutes: number;
  readonly from: number;
  readonly to: number;
  readonly inFrame: boolean;
  readonly way: Vec3;
}

/** Row 16: the sun over a year, above what stands on the site, in the picture or near it. Nothing where the site has no place on Earth. */
export function* sunInPicture(about: About): Generator<void, readonly Found[], void> {
  const { plan, camera } = about;
  if (plan.origin === null) return [];
  const near = about.limit('sun.outside');
  const least = about.limit('sun.minutes');
  const days: DayOfSun[] = [];
  for (let day = 0; day < 365; day += DAYS) {
    const found = sunOn(about, day, near);
    if (found !== null && found.minutes > least) days.push(found);
    if (day % (DAYS * STRIDE) === 0) yield;
  }
  const [first] = days;
  if (first === undefined) return [];
  const worst = days.reduce((one, two) => (two.minutes > one.minutes ? two : one), first);
  const inFrame = days.some((day) => day.inFrame);
  return [
    {
      id: cautionId(16),
      severity: 'tight',
      weight: (worst.minutes / Math.max(1, least)) * (inFrame ? 1 : 0.5),
      figures: {
        row: 16,
        from: Math.min(...days.map(({ from }) => from)),
        to: Math.max(...days.map(({ to }) => to)),
        months: [...new Set(days.map(({ month }) => month))],
        minutes: worst.minutes,
        inFrame,
      },
      places: [placeOfCamera(about, alongRay(camera.eye, worst.way, 5))],
      thresholds: ['sun.minutes', 'sun.outside'],
    },
  ];
}

/** The minutes of one day at which the sun stands in the picture or near it. */
function sunOn({ plan, camera, obstacles }: About, day: number, near: number): DayOfSun | null {
  const { origin } = plan;
  if (origin === null) return null;
  const zone = Math.round(origin.longitude / 15);
  const { forward } = axesOf(camera);
  let [steps, from, to, inFrame] = [0, 24, 0, false];
  let seen: Vec3 | null = null;
  for (let minute = 0; minute < 1440; minute += MINUTES) {
    const hours = minute / 60;
    const position = sunPosition(NEW_YEAR + day + (hours - zone) / 24, origin.latitude, origin.longitude);
    if (position.height <= 0) continue;
    const way = sunWay(position, origin.trueNorth);
    // Most suns are behind the camera, which the axis tells.
    if (dot(way, forward) < -0.2 && camera.k === 1) continue;
    const outside = outsideFrame({ camera }, way);
    if (outside >= near && outside > 0) continue;
    const { segments } = obstacles;
    const end = alongRay(camera.eye, way, FAR);
    if (segments.firstHit(camera.eye, end, 'solid') !== null) continue;
    steps += 1;
    from = Math.min(from, hours);
    to = Math.max(to, hours);
    inFrame ||= outside === 0;
    seen = way;
  }
  if (seen === null) return null;
  const month = MONTHS.findLastIndex((first) => first <= day) + 1;
  return { month, minutes: steps * MINUTES, from, to, inFrame, way: seen };
}
