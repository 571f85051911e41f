import { tan } from '../../base/angle.ts';
import { add, scale, type Vec3 } from '../../base/vector.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Camera } from '../../optics/camera.ts';
import { anglesOf } from '../../optics/setting.ts';
import { eyeOf, turnTo, viewAxes, type Orbit, type Stay } from '../orbit.ts';
import { meetLevel } from '../sheet.ts';

/** Of a person standing, above the ground, m. */
const EYE_HEIGHT = 1.6;
const STANDING_FIELD = 60;
/** What is so far ahead is in the middle of the view, m: lines keep the width that suits it. */
const AHEAD = 6;
/** Steeper than this one does not look, standing. */
const STEEPEST = 80;
/** A flat picture of a wider angle is all edge, °. */
const WIDEST = 120;
/** Share of the window that the camera's own frame takes. */
const FRAME_SHARE = 0.94;
/** In front of a wall that is pointed at, m. */
const BEFORE_WALL = 0.8;

/** A view from an eye in the site. */
function lookFrom(eye: Vec3, bearing: number, elevation: number, stay: Stay): Orbit {
  const { ahead } = viewAxes({ bearing, elevation, stay });
  return { pivot: add(eye, scale(ahead, AHEAD)), bearing, elevation, distance: AHEAD, stay };
}

/** The view of someone standing at a spot of the ground, looking level. */
export const standAt = ([x, y, z]: Vec3, bearing: number): Orbit =>
  lookFrom([x, y, z + EYE_HEIGHT], bearing, 0, {
    kind: 'stand',
    field: STANDING_FIELD,
    roll: 0,
    frame: null,
  });

/** The spot to stand at for what is pointed at: on the ground, or before the wall. */
export function standSpot({ ray, struck }: Pointed, ground: number): Vec3 | null {
  if (!struck || struck.structure === null) return struck?.point ?? meetLevel(ray, ground);
  const [x, y] = struck.point;
  const [nx, ny] = struck.normal;
  const level = Math.hypot(nx, ny);
  if (level < 0.7) return [x, y, ground];
  return [x + (nx / level) * BEFORE_WALL, y + (ny / level) * BEFORE_WALL, ground];
}

/** Steps forward, level; negative metres step back. */
export function walk(orbit: Orbit, metres: number): Orbit {
  const { ahead } = viewAxes({ bearing: orbit.bearing, elevation: 0 });
  return { ...orbit, pivot: add(orbit.pivot, scale(ahead, metres)) };
}

/** Looks another way from the same eye: `turn` to the right, `rise` up, °. */
export function lookAbout(orbit: Orbit, turn: number, rise: number): Orbit {
  const elevation = Math.min(STEEPEST, Math.max(-STEEPEST, orbit.elevation - rise));
  return turnTo(orbit, eyeOf(orbit), orbit.bearing + turn, elevation);
}

/**
 * The view through a camera's lens as a flat perspective, its whole frame within the window.
 * @param aspect of the window, width by height
 */
export function lensView(camera: Camera, aspect: number): Orbit {
  const stated = anglesOf(camera).vertical ?? 180;
  const vertical = Math.min(WIDEST, stated);
  const shape = camera.sensor.width / camera.sensor.height;
  const half = (tan(vertical / 2) * Math.max(1, shape / aspect)) / FRAME_SHARE;
  const field = (2 * Math.atan(half) * 180) / Math.PI;
  return lookFrom(camera.eye, camera.pan, camera.tilt, {
    kind: 'lens',
    field,
    roll: camera.roll,
    frame: { camera: camera.id, vertical, stated, aspect: shape, bent: Math.abs(camera.k - 1) > 1e-9 },
  });
}
