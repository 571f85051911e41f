import { dot, scale, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { axesOf } from '../optics/projection.ts';
import type { Footing } from '../sight/footing.ts';
import type { LensOver } from './nearestLens.ts';

/** How near such a place pieces stay as small against it as elsewhere against the lens, as a share of the lens's distance. */
const CLOSE = 0.01;

/**
 * Beyond this law a picture's stretch along the radius falls to nothing within what a lens sees; where that is along the
 * bearing too, density has a valley with a sharp floor, for which pieces must be so much smaller.
 */
const [TURNING, FINER] = [-0.6, 2];

/**
 * Where curves on a plane come from, relative to the foot: the lens, and the places about which what it makes of a target
 * hangs on the direction alone, so that curves run into them like spokes. Those are the place straight below or above the
 * lens, where the density is taken across the bearing, and for a bent lens the place straight behind it, where a picture
 * that reaches all round turns over.
 */
export function curveSources(camera: Camera, { plane, delta }: Footing): readonly LensOver[] {
  const sources: LensOver[] = [{ p: 0, q: 0, delta, finer: camera.k < TURNING ? FINER : 1 }];
  const ways: Vec3[] = [
    [0, 0, 1],
    [0, 0, -1],
  ];
  if (camera.k !== 1) ways.push(scale(axesOf(camera).forward, -1));
  for (const way of ways) {
    const far = delta / dot(plane.normal, way);
    if (!(far > 0 && Number.isFinite(far))) continue;
    sources.push({ p: far * dot(plane.u, way), q: far * dot(plane.v, way), delta: CLOSE * delta });
  }
  return sources;
}
