import type { Vec3 } from '../../src/base/vector.ts';
import type { Camera } from '../../src/optics/camera.ts';

/**
 * Pixels per metre by moving the point and looking where its image goes: no derivative is worked out. The projection is
 * written anew, as three plane rotations of the site and textbook forms of the laws; it shares nothing with src but the shape of a camera.
 */
export function numericalDensity(camera: Camera, point: Vec3, along: Vec3, step = 1e-4): number {
  const at = (share: number): readonly [number, number] =>
    picture(camera, [
      point[0] + share * step * along[0],
      point[1] + share * step * along[1],
      point[2] + share * step * along[2],
    ]);
  // Five-point rule: the error falls with the fourth power of the step.
  const [a, b, c, d] = [at(-2), at(-1), at(1), at(2)];
  const slope = (axis: 0 | 1): number => (a[axis] - 8 * b[axis] + 8 * c[axis] - d[axis]) / (12 * step);
  return Math.hypot(slope(0), slope(1));
}

/** The least over horizontal directions, by trying them. */
export function leastHorizontalDensity(camera: Camera, point: Vec3): number {
  const towards = (turn: number): number =>
    numericalDensity(camera, point, [Math.cos(turn), Math.sin(turn), 0], 1e-3);
  let best = 0;
  for (let degree = 1; degree < 180; degree += 1)
    if (towards((degree * Math.PI) / 180) < towards(best)) best = (degree * Math.PI) / 180;
  for (let width = Math.PI / 180; width > 1e-7; width /= 2)
    for (const turn of [best - width, best + width]) if (towards(turn) < towards(best)) best = turn;
  return towards(best);
}

/** Pixels of a point, by turning the site until the camera looks north, level and upright. */
function picture(
  { eye, pan, tilt, roll, focalLength, k, sensor, frame }: Camera,
  point: Vec3,
): readonly [number, number] {
  const turned = (x: number, y: number, degrees: number): readonly [number, number] => {
    const [s, c] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
    return [x * c - y * s, x * s + y * c];
  };
  const [east, north] = turned(point[0] - eye[0], point[1] - eye[1], pan);
  const [ahead, up] = turned(north, point[2] - eye[2], tilt);
  const [right, above] = turned(east, up, roll);
  const off = Math.sqrt(right * right + above * above);
  const mm = focalLength * law(angleOff(ahead, off), k);
  const share = off === 0 ? 0 : mm / off;
  return [
    frame.width * (0.5 + (share * right) / sensor.width),
    frame.height * (0.5 - (share * above) / sensor.height),
  ];
}

/** From sine or cosine, whichever tells the angle better. */
function angleOff(ahead: number, off: number): number {
  const far = Math.hypot(off, ahead);
  if (ahead > off) return Math.asin(off / far);
  return -ahead > off ? Math.PI - Math.asin(off / far) : Math.acos(ahead / far);
}

/** The classical laws by their textbook forms, the others by the definition. */
function law(angle: number, k: number): number {
  switch (k) {
    case 1:
      return Math.sin(angle) / Math.cos(angle);
    case 0.5:
      return (2 * Math.sin(angle)) / (1 + Math.cos(angle));
    case 0:
      return angle;
    case -0.5:
      return 2 * Math.sin(angle / 2);
    case -1:
      return Math.sin(angle);
    default:
      return k > 0 ? Math.sin(k * angle) / Math.cos(k * angle) / k : Math.sin(-k * angle) / -k;
  }
}
