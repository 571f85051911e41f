import { radFromDegrees } from '../../base/angle.ts';
import { add, cross, dot, length, scale, subtract, unit, type Vec2, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { imagesOf } from '../../optics/projection.ts';
import { uprightCamera } from '../../optics/upright.ts';
import { BENT } from './picture.ts';

/** The greatest turn between two places of a line that are asked at first, °. */
const STEP = 3;
/** Halvings of a step at most: to a thousandth of it. */
const MOST_HALVINGS = 10;
/** How far out of the frame a line is still followed, as a share of its greater side. */
const AROUND = 0.25;

/** Draws what a lens sees in its upright picture. */
export interface LensPicture {
  readonly width: number;
  readonly height: number;
  /** Where a place of the site is, also out of the frame; null without an image. */
  place(point: Vec3): Vec2 | null;
  /** A straight stretch of the site as lines within the frame. */
  segment(from: Vec3, to: Vec3): Float64Array[];
  /** The same of places in turn that are near one another. */
  path(points: readonly Vec3[]): Float64Array[];
}

/** @returns how a camera draws; its lines lie within BENT of the true curves */
export function lensPicture(camera: Camera): LensPicture {
  // Stood up, the camera gives the upright picture as it is.
  const upright = uprightCamera(camera);
  const { width, height } = upright.frame;
  const image = imagesOf(upright);
  const place = (point: Vec3): Vec2 | null => {
    const at = image(point);
    return at && [at.u, at.v];
  };
  const reach = AROUND * Math.max(width, height);
  const isNear = ([x, y]: Vec2): boolean =>
    x > -reach && y > -reach && x < width + reach && y < height + reach;

  /** A stretch as places near one another, cut where it has no image. */
  const curves = (from: Vec3, to: Vec3): Vec2[][] => {
    const [a, b] = [subtract(from, camera.eye), subtract(to, camera.eye)];
    const along = alongSight(a, b);
    const at = (share: number): Vec2 | null => place(add(camera.eye, along.at(share)));
    const steps = camera.k === 1 ? 1 : Math.max(1, Math.ceil(along.angle / STEP));
    const found: Vec2[][] = [];
    let line: Vec2[] | null = null;
    const put = (start: number, end: number, one: Vec2, two: Vec2): void => {
      if (line === null) {
        line = [one];
        found.push(line);
      }
      if (camera.k === 1) line.push(two);
      else refine(line, at, { share: start, place: one }, { share: end, place: two }, isNear, 0);
    };
    let before = { share: 0, place: at(0) };
    for (let step = 1; step <= steps; step += 1) {
      const here = { share: step / steps, place: at(step / steps) };
      if (before.place && here.place) put(before.share, here.share, before.place, here.place);
      else if (before.place || here.place) {
        const good = before.place ? before.share : here.share;
        const bad = before.place ? here.share : before.share;
        const end = lastImage(at, good, bad);
        if (end !== null && before.place) put(before.share, end.share, before.place, end.place);
        else if (end !== null && here.place) put(end.share, here.share, end.place, here.place);
        if (before.place) line = null;
      } else line = null;
      before = here;
    }
    return found;
  };

  const within = (line: readonly Vec2[]): Float64Array[] => clipLine(line, width, height);
  return {
    width,
    height,
    place,
    segment: (from, to) => curves(from, to).flatMap(within),
    path: (points) => {
      const joined: Vec2[][] = [];
      let open: Vec2[] | null = null;
      points.forEach((point, k) => {
        const before = points[k - 1];
        if (before === undefined) return;
        const parts = curves(before, point);
        parts.forEach((part, index) => {
          const [first] = part;
          const last = open?.at(-1);
          if (
            index === 0 &&
            open &&
            first &&
            last &&
            Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-6
          )
            open.push(...part.slice(1));
          else {
            open = [...part];
            joined.push(open);
          }
        });
        if (parts.length === 0) open = null;
      });
      return joined.flatMap(within);
    },
  };
}

interface Told {
  readonly share: number;
  readonly place: Vec2;
}

/** Adds what lies between two places to a line, halved until its chords lie near the curve, and the second place. */
function refine(
  line: Vec2[],
  at: (share: number) => Vec2 | null,
  from: Told,
  to: Told,
  isNear: (place: Vec2) => boolean,
  depth: number,
): void {
  const share = (from.share + to.share) / 2;
  const middle = at(share);
  const seen = isNear(from.place) || isNear(to.place) || (middle !== null && isNear(middle));
  // A chord whose middle lies on the curve may still part from it twice: half of what is allowed is asked for.
  if (
    middle === null ||
    !seen ||
    depth >= MOST_HALVINGS ||
    offChord(from.place, to.place, middle) <= BENT / 2
  ) {
    line.push(to.place);
    return;
  }
  const half = { share, place: middle };
  refine(line, at, from, half, isNear, depth + 1);
  refine(line, at, half, to, isNear, depth + 1);
}

function offChord(a: Vec2, b: Vec2, p: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.hypot(dx, dy);
  if (size === 0) return Math.hypot(p[0] - a[0], p[1] - a[1]);
  return Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / size;
}

/** The last place with an image between one that has one and one that has none. */
function lastImage(at: (share: number) => Vec2 | null, good: number, bad: number): Told | null {
  let [low, high] = [good, bad];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (at(middle) === null) high = middle;
    else low = middle;
  }
  const place = at(low);
  return place && { share: low, place };
}

/** A stretch by shares of the angle that it takes up from the lens, so that equal shares are about equal in the picture. */
function alongSight(a: Vec3, b: Vec3): { readonly angle: number; at(share: number): Vec3 } {
  const plain = (share: number): Vec3 => add(scale(a, 1 - share), scale(b, share));
  const [la, lb] = [length(a), length(b)];
  if (la < 1e-9 || lb < 1e-9) return { angle: 180, at: plain };
  const across = cross(a, b);
  const sine = length(across) / (la * lb);
  const angleRad = Math.atan2(sine, dot(a, b) / (la * lb));
  if (angleRad < radFromDegrees(0.01)) return { angle: 0, at: plain };
  // t with the angle from a to (1 − t)a + t·b, by the law of sines in the triangle of lens and ends.
  const way = subtract(b, a);
  const atA = Math.atan2(length(cross(scale(a, -1), way)), dot(scale(a, -1), way));
  const far = length(way);
  const on = unit(way);
  return {
    angle: (angleRad * 180) / Math.PI,
    at: (share) => {
      if (share <= 0) return a;
      if (share >= 1) return b;
      const turnRad = share * angleRad;
      const t = (la * Math.sin(turnRad)) / Math.sin(Math.PI - atA - turnRad);
      return add(a, scale(on, Math.min(far, Math.max(0, t))));
    },
  };
}

/** The parts of a line within a frame, as x, y in turn. */
export function clipLine(line: readonly Vec2[], width: number, height: number): Float64Array[] {
  const parts: number[][] = [];
  let open: number[] | null = null;
  line.forEach((to, k) => {
    const from = line[k - 1];
    if (from === undefined) return;
    const cut = clipChord(from, to, width, height);
    if (cut === null) {
      open = null;
      return;
    }
    const [start, end] = cut;
    if (open === null || start > 0) {
      open = [from[0] + (to[0] - from[0]) * start, from[1] + (to[1] - from[1]) * start];
      parts.push(open);
    }
    open.push(from[0] + (to[0] - from[0]) * end, from[1] + (to[1] - from[1]) * end);
    if (end < 1) open = null;
  });
  return parts.filter((part) => part.length >= 4).map((part) => Float64Array.from(part));
}

/** Between which shares of a chord it lies in a frame (Liang and Barsky's way of clipping). */
function clipChord(from: Vec2, to: Vec2, width: number, height: number): readonly [number, number] | null {
  let [start, end] = [0, 1];
  for (const [at, way, most] of [
    [from[0], to[0] - from[0], width],
    [from[1], to[1] - from[1], height],
  ] as const) {
    if (way === 0) {
      if (at < 0 || at > most) return null;
      continue;
    }
    const [one, two] = [-at / way, (most - at) / way];
    start = Math.max(start, Math.min(one, two));
    end = Math.min(end, Math.max(one, two));
  }
  return start < end ? [start, end] : null;
}
