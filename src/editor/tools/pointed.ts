import type { Vec3 } from '../../base/vector.ts';

/** What a pointer stands on in the Model, in the site frame. Whoever draws the Model finds it; tools only read it. */
export interface Pointed {
  readonly ray: { readonly from: Vec3; readonly along: Vec3 };
  /** The first solid or the ground that the ray meets; null where there is neither. */
  readonly struck: Struck | null;
  /** A handle of the selected camera or lamp under the pointer. */
  readonly handle: 'body' | 'cross' | 'lamp' | null;
  /** The camera whose sign is under the pointer. */
  readonly camera: string | null;
  /** The lamp whose sign is under the pointer. */
  readonly lamp: string | null;
  /** Metres that a CSS pixel covers there. */
  readonly metresPerPixel: number;
  /** Keeps to one of two ways. */
  readonly shift: boolean;
  /** Leaves snapping off. */
  readonly free: boolean;
  readonly by: 'mouse' | 'pen' | 'touch';
}

export interface Struck {
  readonly point: Vec3;
  /** Outward, unit. */
  readonly normal: Vec3;
  /** Id of the structure, or of the camera whose post it is; null for the ground. */
  readonly structure: string | null;
}
