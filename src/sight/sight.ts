import type { Vec2 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Plane } from '../base/plane.ts';

/** What lies beyond an outline piece, where it is no solid. */
export const FRAME_EDGE = -1;
export const WINDOW_EDGE = -2;

/** A straight stretch of the outline of what is seen; the seen side lies to its left. Plane coordinates, m. */
export interface OutlinePiece {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Index of the solid that hides what lies to the right; FRAME_EDGE or WINDOW_EDGE where none does. */
  readonly beyond: number;
}

/** A part of a plane: exact area, outline, rings and triangles for the picture. Plane coordinates, m. */
export interface Region {
  /** m², from edge spans. */
  readonly area: number;
  readonly pieces: readonly OutlinePiece[];
  /** a, b of each corner; outer rings counter-clockwise, holes clockwise. */
  readonly rings: readonly Float64Array[];
  /** False where a ring stayed open and the fallback made the rings. */
  readonly ringsClosed: boolean;
  /** Six numbers a triangle: a, b of its corners. */
  readonly triangles: Float64Array;
}

/**
 * What one camera sees of one plane within a convex window. Range does not cut it.
 * Where `framed` is false (a lens that is not rectilinear) the narrowest pyramid around the frame stands for it, and
 * whoever reads the regions evaluates the lens as well.
 */
export interface Sight {
  readonly camera: Camera;
  readonly plane: Plane;
  readonly framed: boolean;
  /** How many solids the scene has: their indices lie below. */
  readonly solids: number;
  /** Index of the solid that holds the lens; then nothing is seen. */
  readonly lensInside: number | null;
  /** The frame cut by the window: corners in order, a and b. Empty where the frame misses the plane. */
  readonly frame: Float64Array;
  /** Nothing in the way. */
  readonly seen: Region;
  /** Only screens in the way, or nothing: contains `seen`. The same object as `seen` where there is no screen. */
  readonly beyondScreens: Region;
}

/** Corners in order of a convex polygon on the plane, counter-clockwise. */
export type Window = readonly Vec2[];
