/** What coverage is asked for: the ground, or a surface `height` above it. A face carries limits on the angle from above. */
export interface Target {
  readonly kind: 'ground' | 'plate' | 'face' | 'height';
  readonly height: number;
}

/** The highest band (index + 1) that a face seen at a depression may count for: limits in degrees, ascending bands. */
export interface FaceCap {
  /** Past this depression the face falls below `band`. */
  readonly above: number;
  /** Index + 1 of the highest band that it keeps past the limit. */
  readonly band: number;
}
