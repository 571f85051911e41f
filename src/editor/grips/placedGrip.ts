import type { Vec3 } from '../../base/vector.ts';
import type { Grip } from './grip.ts';

/** A handle where it is to be drawn, in the site frame. */
export interface PlacedGrip {
  readonly grip: Grip;
  readonly at: Vec3;
  /** What a drag of it does: over level ground, over the face it lies on, along a line (unit vector), or a turn. */
  readonly way: 'ground' | 'face' | 'turn' | { readonly along: Vec3 };
  /** Level normal of the face that it lies on; null where it lies on none. */
  readonly facing: Vec3 | null;
  /** A bar lies along its edge (unit vector); everything else is round. */
  readonly bar: Vec3 | null;
  readonly cursor: 'move' | 'resize' | 'grab';
  /** "Corner 3 of House". */
  readonly words: string;
  /** Drawn hollow; a drag says why it does not go. */
  readonly locked: boolean;
}
