/** A plate over the hole, m: its sides, and how far its middle lies right of and above the hole, seen from outside. */
export interface Plate {
  readonly width: number;
  readonly height: number;
  readonly right: number;
  readonly up: number;
}

/**
 * How far the camera turns on its mount, ° each way from straight out (level, square to the wall; for a pole the way its
 * bracket points, for a corner the line between its walls). Null: not known, so that nothing is refused.
 */
export interface MountLimits {
  readonly pan: number | null;
  readonly tilt: { readonly up: number; readonly down: number } | null;
  readonly roll: number | null;
}

/** Of a mount of which nothing is known, and of a camera that is fixed to nothing. */
export const NO_LIMITS: MountLimits = { pan: null, tilt: null, roll: null };

/**
 * How a camera is fixed. `height` is always the mounting height: the entrance pupil above the ground directly below.
 * Kinds with a host name its structure and face; `corner` says from which end of that face `distance` is measured, in
 * metres along it, so that the camera follows when the wall moves.
 */
interface Hosted {
  readonly host: string;
  readonly face: number;
  readonly corner: 'start' | 'end';
  readonly distance: number;
  readonly plate: Plate;
  readonly limits: MountLimits;
}

/** Flat on a wall: the lens `standOff` in front of it. */
export interface FlushMount extends Hosted {
  readonly kind: 'flush';
  readonly height: number;
  readonly standOff: number;
}

/** On a bracket: plate on the wall, lens `reach` in front of the wall and `drop` below the hole. */
export interface ArmMount extends Hosted {
  readonly kind: 'arm';
  readonly height: number;
  readonly reach: number;
  readonly drop: number;
}

/** Under the eaves: `inset` from the wall outwards, lens `drop` below the soffit, which gives the height. */
export interface SoffitMount extends Hosted {
  readonly kind: 'soffit';
  readonly inset: number;
  readonly drop: number;
}

/** On a post of its own: `at` its axis over ground, the lens `reach` from the axis towards the pan bearing given. */
export interface PoleMount {
  readonly kind: 'pole';
  readonly at: readonly [x: number, y: number];
  readonly height: number;
  readonly reach: number;
  readonly facing: number;
  readonly diameter: number;
  readonly limits: MountLimits;
}

/** Around the outer corner at which face `face` begins, lens `reach` out along the bisector. */
export interface CornerMount {
  readonly kind: 'corner';
  readonly host: string;
  readonly face: number;
  readonly height: number;
  readonly reach: number;
  readonly plate: Plate;
  readonly limits: MountLimits;
}

/** Fixed to nothing: the lens itself, which nothing limits. Has no drill card. */
interface LooseMount {
  readonly kind: 'loose';
  readonly eye: readonly [x: number, y: number, z: number];
}

export type Mount = FlushMount | ArmMount | SoffitMount | PoleMount | CornerMount | LooseMount;

/** What limits a camera's turning, also where nothing does. */
export const limitsOf = (mount: Mount): MountLimits => ('limits' in mount ? mount.limits : NO_LIMITS);
