import type { Tint } from './shapes.ts';

/** What a ray meets: the tint there, and how squarely it looks up and back along the ray, for the light. */
export interface Met {
  tint: Tint;
  /** z of the outward normal, −1 to 1. */
  up: number;
  /** Cosine between the outward normal and the way back along the ray, 0 to 1. */
  facing: number;
  /** Something overhead keeps the light of the sky off. */
  shaded: boolean;
}

/**
 * A thing drawn in space, in metres from its middle: x right, y the way it looks, z up. The middle stands `above` the
 * ground where it stands.
 */
export interface Subject {
  /** Half the width and height of the picture that is made of it, m. */
  readonly half: readonly [across: number, up: number];
  /** Whether it is flat, with its back never seen. */
  readonly flat: boolean;
  /** It throws light back to where it came from, so many times as much as white paper. */
  readonly retroreflects: boolean;
  /** What the nearest surface on a ray is; false where it meets none. The direction need not be of unit length. */
  meet(from: readonly number[], along: readonly number[], met: Met): boolean;
}
