import type { Fault } from '../base/fault.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Night } from '../coverage/light.ts';
import type { Solid } from '../model/solid.ts';
import type { Camera } from '../optics/camera.ts';
import type { Patch } from '../plan/plan.ts';

/** Where a camera's hole goes and where its lens ends up. Site frame, m. */
export interface Fixing {
  readonly camera: string;
  readonly hole: Vec3 | null;
  /** Outward normal of the face; null for a pole or a loose camera. */
  readonly outward: Vec3 | null;
  /** "South wall of House"; null without a host. */
  readonly host: string | null;
}

/** An axis-parallel rectangle over ground, m. */
export interface Board {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** A plan in a situation, as sight needs it. */
export interface Scene {
  /** Id of the situation; null: as drawn. */
  readonly situation: string | null;
  /** What lights the site; null by day. */
  readonly night: Night | null;
  /** The datum, m above z = 0: the height of flat ground, the least height of any other. */
  readonly ground: number;
  /** Those of structures and posts; of uneven ground the last, with the id GROUND. */
  readonly solids: readonly Solid[];
  readonly cameras: readonly Camera[];
  readonly fixings: readonly Fixing[];
  /** The same in every situation, so that situations can be laid over one another. */
  readonly board: Board;
  readonly boundary: readonly Vec2[] | null;
  /** The angle to its face below which a screen closes up, °. */
  readonly closing: number;
  /** Of the plan, in its order. */
  readonly patches: readonly Patch[];
  /** What could not be made as drawn, each with its subject: the plan says so beside the picture. */
  readonly faults: readonly Fault[];
}
