import { cos, degreesFromRad, sin } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Camera } from './camera.ts';
import { angleOfRadius, greatestAngleRad } from './lens.ts';

/** The sides of the frame in the vertical plane of the axis, as depressions, °: below the horizon positive, past 90 behind the lens. */
export interface FrameEdges {
  readonly top: number;
  readonly bottom: number;
}

/**
 * Where the frame ends in the vertical plane of the axis. That plane holds the axis, so that its picture is a straight line
 * through the middle, turned by the roll: it leaves the frame at a radius of the sensor, and the lens law gives the angle,
 * the same to both sides. A law that ends within the sensor ends the frame there.
 */
export function frameEdges({
  tilt,
  roll,
  sensor,
  focalLength,
  k,
}: Pick<Camera, 'tilt' | 'roll' | 'sensor' | 'focalLength' | 'k'>): FrameEdges {
  const [across, down] = [Math.abs(sin(roll)), Math.abs(cos(roll))];
  const radius = Math.min(
    across < 1e-12 ? Infinity : sensor.width / 2 / across,
    down < 1e-12 ? Infinity : sensor.height / 2 / down,
  );
  const half = angleOfRadius(focalLength, k, radius) ?? degreesFromRad(greatestAngleRad(k));
  return { top: tilt - half, bottom: tilt + half };
}

/** The direction of a depression, °, in the plane: ahead, up. */
export const directionOf = (depression: number): Vec2 => [cos(depression), -sin(depression)];
