import { cos, sin } from '../../base/angle.ts';
import { pointOn } from '../../base/plane.ts';
import { dot, subtract, type Vec2, type Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Device } from '../../optics/device.ts';
import { greatestAngleRad, lawRad } from '../../optics/lens.ts';
import { pixelPitch } from '../../optics/projection.ts';
import { quarterOf, uprightFromImage } from '../../optics/upright.ts';
import { clipLine, type LensPicture } from './lensPicture.ts';
import type { HidingLine, ModeFrame } from './picture.ts';

/** Turn between places along the horizon, °. */
const STEP = 3;

/** Where everything as high as the lens lies. */
export function horizonLines({ eye }: Camera, lens: LensPicture): Float64Array[] {
  const round = Array.from({ length: 360 / STEP + 1 }, (_, k): Vec3 => {
    const to = k * STEP;
    return [eye[0] + sin(to), eye[1] + cos(to), eye[2]];
  });
  return lens.path(round);
}

/** Corners of the circle at which a lens law ends, where that lies within the frame. */
const ROUND = 720;

export function rimLines(camera: Camera, { width, height }: LensPicture): Float64Array[] {
  const law = lawRad(greatestAngleRad(camera.k), camera.k);
  const radius = camera.focalLength * law;
  const half = Math.hypot(camera.sensor.width, camera.sensor.height) / 2;
  if (!(law > 0) || !(radius < half)) return [];
  const pitch = pixelPitch(camera);
  const turned = quarterOf(camera);
  const ring = Array.from({ length: ROUND + 1 }, (_, k): Vec2 => {
    const to = (360 * k) / ROUND;
    const at = uprightFromImage(
      {
        u: camera.frame.width / 2 + radius * pitch.across * cos(to),
        v: camera.frame.height / 2 + radius * pitch.down * sin(to),
      },
      camera.frame,
      turned,
    );
    return [at.u, at.v];
  });
  return clipLine(ring, width, height);
}

/** The frames of modes that show another part of the sensor than the recorded one. */
export function modeFrames(camera: Camera, { modes, recorded }: Device): ModeFrame[] {
  const own = modes.find(({ id }) => id === recorded)?.crop;
  if (own === undefined) return [];
  const turned = quarterOf(camera);
  const { width, height } = camera.frame;
  return modes.flatMap(({ id, name, crop }): ModeFrame[] => {
    const isSame = (['x', 'y', 'width', 'height'] as const).every(
      (key) => Math.abs(crop[key] - own[key]) < 1e-9,
    );
    if (id === recorded || isSame) return [];
    const [left, top] = [(crop.x - own.x) / own.width, (crop.y - own.y) / own.height];
    const [wide, high] = [crop.width / own.width, crop.height / own.height];
    const ring = [
      [left, top],
      [left + wide, top],
      [left + wide, top + high],
      [left, top + high],
    ].map(([x = 0, y = 0]): Vec2 => {
      const at = uprightFromImage({ u: x * width, v: y * height }, camera.frame, turned);
      return [at.u, at.v];
    });
    return [{ name, ring }];
  });
}

/**
 * The edges past which solids hide what is asked for: the outline of what is seen where, from the lens, the hider comes before
 * it. At the foot of a wall what is hidden lies beyond, and the wall itself is seen.
 */
export function hidingLines({ camera, sight }: CameraCoverage, lens: LensPicture): HidingLine[] {
  const { plane, seen, solids } = sight;
  const off = subtract(camera.eye, plane.origin);
  const foot: Vec2 = [dot(off, plane.u), dot(off, plane.v)];
  const isBefore = dot(off, plane.normal) >= 0;
  const on = ([a, b]: Vec2): Vec3 => pointOn(plane, a, b);
  return seen.pieces.flatMap(({ from, to, beyond }): HidingLine[] => {
    if (beyond < 0 || beyond >= solids) return [];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const [mx, my] = [(from[0] + to[0]) / 2 - foot[0], (from[1] + to[1]) / 2 - foot[1]];
    // The seen side lies to the left, (−dy, dx): towards the foot of the lens it is before the hider.
    const outwards = -dy * mx + dx * my;
    if (outwards < -1e-9 * Math.hypot(dx, dy) * Math.hypot(mx, my)) return [];
    const ends = isBefore ? ([from, to] as const) : ([to, from] as const);
    return lens.segment(on(ends[0]), on(ends[1])).map((at) => ({ at, solid: beyond }));
  });
}
