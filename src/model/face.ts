import type { Vec3 } from '../base/vector.ts';

/**
 * A face that a mount can be fixed to. Site frame, metres. Seen from outside, `start` is the lower corner on the
 * right for a wall (outlines run counter-clockwise), `along` the unit vector from the first corner to the next,
 * `outward` the unit normal. `width` along it, `foot` and `top` its heights above z = 0.
 */
export interface HostFace {
  readonly structure: string;
  readonly face: number;
  readonly sort: 'wall' | 'soffit';
  /** "South wall", "Soffit over the south wall". */
  readonly name: string;
  readonly start: Vec3;
  readonly along: Vec3;
  readonly outward: Vec3;
  readonly width: number;
  readonly foot: number;
  readonly top: number;
  /** For a soffit: how far it stands out from the wall, m. */
  readonly depth: number;
}
