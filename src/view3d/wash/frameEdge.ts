import { dot, subtract, type Vec2 } from '../../base/vector.ts';
import { frameCurve } from '../../draw/frameCurve.ts';
import { siteRayFromImage } from '../../optics/projection.ts';
import type { Sight } from '../../sight/sight.ts';

const SAGITTA = 0.004;
/** A plane that is met at less than this share of a ray is met too far away to draw: about half a degree. */
const GRAZING = 0.01;

const made = new WeakMap<Sight, readonly Vec2[][]>();

/** The edge of the frame on the target plane, of a lens whose sight is not cut by its frame. Plane coordinates. */
export function frameEdge(sight: Sight): readonly Vec2[][] {
  const kept = made.get(sight);
  if (kept) return kept;
  const { camera, plane } = sight;
  const lens = subtract(camera.eye, plane.origin);
  const height = dot(lens, plane.normal);
  const foot: Vec2 = [dot(lens, plane.u), dot(lens, plane.v)];
  const lines = frameCurve(
    camera.frame.width,
    camera.frame.height,
    (u, v) => {
      const ray = siteRayFromImage(camera, { u, v });
      const down = ray ? -dot(ray, plane.normal) * Math.sign(height) : 0;
      if (!ray || down < GRAZING) return null;
      const t = Math.abs(height) / down;
      return [foot[0] + t * dot(ray, plane.u), foot[1] + t * dot(ray, plane.v)];
    },
    SAGITTA,
  );
  made.set(sight, lines);
  return lines;
}
