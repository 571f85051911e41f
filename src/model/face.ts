import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Ring } from './structure.ts';

/**
 * A face that a mount can be fixed to. Site frame, metres. `along` is the unit vector from the first corner of its
 * edge to the next, `start` the lower end of that edge; seen from outside, `start` is on the left of a wall, since
 * outlines run counter-clockwise (on the left-hand side of a barrier it is on the right).
 * `outward` is the level unit normal of the wall. A soffit has that of the wall below it: its `depth` and insets run
 * that way. Under a canopy it runs from the edge in under the board, under a ceiling from the wall into the room.
 */
export interface HostFace {
  readonly structure: string;
  /**
   * Edge of the outline or line; edge + number of edges for the right-hand sides of a barrier, and for ceilings, which lie
   * behind the wall of that edge.
   */
  readonly face: number;
  readonly sort: 'wall' | 'soffit';
  /** "South wall", "Soffit over the south wall". */
  readonly name: string;
  readonly start: Vec3;
  readonly along: Vec3;
  readonly outward: Vec3;
  readonly width: number;
  /** Lowest and highest height above z = 0; for a soffit both are its own. */
  readonly foot: number;
  readonly top: number;
  /** Its upper edge from start to end: metres along, height above z = 0. A gable rises in the middle. */
  readonly topLine: readonly Vec2[];
  /** For a soffit: how far it stands out from the wall, m. */
  readonly depth: number;
  /** For the underside of a canopy and a ceiling: the outline that what hangs there must keep within. Else null. */
  readonly within: Ring | null;
}
