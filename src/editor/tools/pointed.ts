import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Grip } from '../grips/grip.ts';

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
  /** The pinned photo whose sign is under the pointer. */
  readonly picture?: string | null;
  /** Metres that a CSS pixel covers there. */
  readonly metresPerPixel: number;
  /** Keeps to one of two ways. */
  readonly shift: boolean;
  /** Leaves snapping off. */
  readonly free: boolean;
  readonly by: 'mouse' | 'pen' | 'touch';
  /** A handle of what is selected under the pointer. */
  readonly grip: Grip | null;
  readonly screen: Screen;
}

/** How the site lies on the window: for reach in pixels, whatever the view. */
export interface Screen {
  /** The pointer, px right and down. */
  readonly spot: Vec2;
  /** Where a point of the site appears; null behind the eye. */
  place(point: Vec3): Vec2 | null;
  /** Whether nothing stands before a point. From above everything counts as seen. */
  seen(point: Vec3): boolean;
  /** Seen straight from above. */
  readonly plan: boolean;
}

export interface Struck {
  readonly point: Vec3;
  /** Outward, unit. */
  readonly normal: Vec3;
  /** Id of the structure, or of the camera whose post it is; null for the ground. */
  readonly structure: string | null;
}
