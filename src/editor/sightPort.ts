import type { Vec3 } from '../base/vector.ts';

/** What is in the way between two points. */
export interface SightLine {
  /** Null: the way is clear. */
  readonly blocked: {
    /** "Van". */
    readonly by: string;
    /** How far along it is met, m from the first point. */
    readonly after: number;
    readonly at: Vec3;
  } | null;
}

/** Lent by whoever has the engine: whether one point of the site is seen from another. Null where it cannot be told. */
export type SightPort = (from: Vec3, to: Vec3) => SightLine | null;
