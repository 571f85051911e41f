import type { Vec2 } from './vector.ts';

/** Four corners in order: lower left, lower right, upper right, upper left, as a person sees them. */
export type Quad = readonly [lowerLeft: Vec2, lowerRight: Vec2, upperRight: Vec2, upperLeft: Vec2];

/** A projective map of a plane: nine numbers, row by row. */
export type Homography = readonly [
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
  h: number,
  i: number,
];

/**
 * Why four points of a picture (u right, v down, px) cannot be the corners of a rectangle seen in perspective. `corner` is
 * the one in the way, 0 to 3.
 * `number`: it is no number. `near`: it is on another, or the three about it are in one line. `crossed`: the sides cross.
 * `turned`: they run the other way round, so that the picture would be mirrored. `dent`: it lies within the other three.
 */
export interface QuadTrouble {
  readonly kind: 'number' | 'near' | 'crossed' | 'turned' | 'dent';
  readonly corner: number;
}

/** A corner nearer than this to the line through its neighbours makes no rectangle, px. */
const LEAST_BEND = 1;

/** What keeps four points of a picture from being a rectangle; null when nothing does. */
export function quadTrouble(corners: Quad): QuadTrouble | null {
  const bad = corners.findIndex((corner) => !corner.every(Number.isFinite));
  if (bad >= 0) return { kind: 'number', corner: bad };
  // Positive where the ring turns left as a person sees it, v running down: px from the line through its neighbours.
  const bends = corners.map((corner, k) => {
    const before = corners[(k + 3) % 4] ?? corner;
    const after = corners[(k + 1) % 4] ?? corner;
    const base = Math.hypot(after[0] - before[0], after[1] - before[1]);
    const twice =
      (corner[1] - before[1]) * (after[0] - corner[0]) - (corner[0] - before[0]) * (after[1] - corner[1]);
    return base > 0 ? twice / base : 0;
  });
  const flat = bends.findIndex((bend) => Math.abs(bend) < LEAST_BEND);
  if (flat >= 0) return { kind: 'near', corner: flat };
  const wrong = bends.flatMap((bend, k) => (bend < 0 ? [k] : []));
  const [first = 0] = wrong;
  switch (wrong.length) {
    case 0:
      return null;
    case 1:
      return { kind: 'dent', corner: first };
    case 2:
      return { kind: 'crossed', corner: first };
    // Turned round, with a dent or without.
    default:
      return { kind: 'turned', corner: wrong.length === 4 ? 0 : bends.findIndex((bend) => bend > 0) };
  }
}

/**
 * From metres on a wall, from the lower left corner of a rectangle on it rightwards and up, to px of a picture in which that
 * rectangle has these corners. The corners must be free of trouble, width and height above 0.
 * Source: the map of the unit square onto four points in closed form (Heckbert 1989, from memory).
 */
export function pictureFromWall(corners: Quad, width: number, height: number): Homography {
  const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = corners;
  const [dx1, dy1] = [x1 - x2, y1 - y2];
  const [dx2, dy2] = [x3 - x2, y3 - y2];
  const [sx, sy] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3];
  const whole = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - sy * dx2) / whole;
  const h = (dx1 * sy - dy1 * sx) / whole;
  return [
    (x1 - x0 + g * x1) / width,
    (x3 - x0 + h * x3) / height,
    x0,
    (y1 - y0 + g * y1) / width,
    (y3 - y0 + h * y3) / height,
    y0,
    g / width,
    h / height,
    1,
  ];
}

/** From px of a picture to metres on the wall: the way back of `pictureFromWall`. */
export const wallFromPicture = (corners: Quad, width: number, height: number): Homography =>
  inverse(pictureFromWall(corners, width, height));

/** The way back of a homography, scaled so that a place it maps has a positive third coordinate where it had one before. */
export function inverse([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  const [p, q, r] = [e * i - f * h, c * h - b * i, b * f - c * e];
  const whole = a * p + d * q + g * r;
  return [
    p / whole,
    q / whole,
    r / whole,
    (f * g - d * i) / whole,
    (a * i - c * g) / whole,
    (c * d - a * f) / whole,
    (d * h - e * g) / whole,
    (b * g - a * h) / whole,
    (a * e - b * d) / whole,
  ];
}

/** Where a point goes; null on the horizon and beyond it, where there is no such place. */
export function through([a, b, c, d, e, f, g, h, i]: Homography, [x, y]: Vec2): Vec2 | null {
  const depth = g * x + h * y + i;
  if (!(depth > LEAST_DEPTH * (Math.abs(g * x) + Math.abs(h * y) + Math.abs(i)))) return null;
  return [(a * x + b * y + c) / depth, (d * x + e * y + f) / depth];
}

/** Nearer to the horizon than this share a place has no digits left. */
const LEAST_DEPTH = 1e-9;
