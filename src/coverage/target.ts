import type { Vec2 } from '../base/vector.ts';

/** Where a face looks: along a bearing (°), or to a place; a face that may look anywhere has neither. */
export type Looks =
  | { readonly kind: 'bearing'; readonly bearing: number }
  | { readonly kind: 'place'; readonly at: Vec2 };

/** A flat surface of the plan: a wall or roof face of a structure by its number, or a patch that has a name. */
export type SurfaceKey =
  | { readonly of: 'wall' | 'roof'; readonly structure: string; readonly face: number }
  | { readonly of: 'patch'; readonly patch: string };

/** The ground, or a surface `height` above it, m. */
interface LevelTarget {
  readonly kind: 'ground' | 'plate' | 'height';
  readonly height: number;
}

/** Faces `height` above the ground, which carry limits on the angles at which they are seen. */
interface FaceTarget {
  readonly kind: 'face';
  readonly height: number;
  readonly looks?: Looks;
}

/** A wall, a roof face or a patch; `height` is 0: the surface itself. */
interface SurfaceTarget {
  readonly kind: 'surface';
  readonly height: 0;
  readonly surface: SurfaceKey;
}

/** What coverage is asked for. */
export type Target = LevelTarget | FaceTarget | SurfaceTarget;

/** The highest band (index + 1) that a face may count for past either limit, °: common practice, no source. */
export interface FaceCap {
  /** Past this angle from above the face falls to `band`. */
  readonly above: number;
  /** Past this angle from the side it does so too, where it is known which way the face looks. */
  readonly side: number;
  /** Index + 1 of the highest band that it keeps past a limit. */
  readonly band: number;
}
