import { tan } from '../../base/angle.ts';
import { dot, subtract, type Vec2 } from '../../base/vector.ts';
import type { FaceCap } from '../../coverage/target.ts';
import type { Sight } from '../../sight/sight.ts';

const SAGITTA = 0.004;

/** Circles about the foot where range and infrared end, and where a face is seen from too steep. Plane coordinates. */
export function limitCircles(
  { camera, plane }: Pick<Sight, 'camera' | 'plane'>,
  faceCaps: readonly FaceCap[],
  infrared = 0,
): Vec2[][] {
  const lens = subtract(camera.eye, plane.origin);
  const foot: Vec2 = [dot(lens, plane.u), dot(lens, plane.v)];
  const height = dot(lens, plane.normal);
  const radii = [
    Math.sqrt(Math.max(0, camera.range ** 2 - height ** 2)),
    Math.sqrt(Math.max(0, infrared ** 2 - height ** 2)),
    ...(height > 0 ? faceCaps.map(({ above }) => (above >= 90 ? 0 : height / tan(above))) : []),
  ];
  return radii.filter((radius) => radius > 0.01 && radius < 1000).map((radius) => circle(foot, radius));
}

/** A circle as a closed line of points. */
export function circle([a, b]: Vec2, radius: number): Vec2[] {
  const steps = Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - SAGITTA / radius)));
  return Array.from({ length: steps + 1 }, (_, i): Vec2 => {
    const turnRad = (2 * Math.PI * i) / steps;
    return [a + radius * Math.cos(turnRad), b + radius * Math.sin(turnRad)];
  });
}
