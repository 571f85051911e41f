/** Hits nearer than this to the lens or to the target do not count (design: sight). */
export const HIT_TOLERANCE = 0.001;

/**
 * What a shadow's depth 1/t must exceed 1 by to hide a target plane: rounding only. A millimetre here would count strips
 * of 1 mm ÷ sin(depression) along the foot of every wall as seen.
 */
export const TARGET_CUT = 1e-9;

/** The least distance between lens and target plane; nearer, the plane has no shadow map. */
export const PLANE_CLEARANCE = 1e-6;

/** How far a mount keeps the lens off its host, so that grazing rays leave the wall. */
export const MOUNT_CLEARANCE = 0.002;

/** Two points nearer than this are one. */
export const SAME_POINT = 1e-6;

/** The least width or height that a structure may have. */
export const LEAST_SIZE = 0.01;

/** Beyond this distance from the origin a coordinate is refused: ten kilometres of site, with room. */
export const GREATEST_COORDINATE = 100_000;

/** The greatest length and width of one structure; a wider one was read in the wrong unit. */
export const GREATEST_SPAN = 5_000;

/** The greatest height of a structure, and depth below z = 0. */
export const GREATEST_HEIGHT = 1_000;
