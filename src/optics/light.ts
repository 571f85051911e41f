/** What a camera throws light with: it counts within the cone of `beam` (full angle, °) about the axis, to `range` (m). */
export interface Infrared {
  readonly range: number;
  readonly beam: number;
}

/**
 * How a lamp shines into each direction: candela at the angles given, by horizontal, then by vertical. Verticals are
 * from straight down (0°) to straight up (180°), horizontals about the vertical from the C0 plane; both rise. Horizontals
 * that end at 0°, 90° or 180° stand for a light that is the same all round, in each quarter, or on both sides.
 */
export interface Photometry {
  readonly verticals: readonly number[];
  readonly horizontals: readonly number[];
  readonly candela: readonly (readonly number[])[];
}

/** The light of a lamp: how far it serves, as a person judged it (m), or what a photometric file measured. */
export type LampLight =
  | { readonly kind: 'range'; readonly range: number }
  | {
      readonly kind: 'photometric';
      /** Name of the file that it came from. */
      readonly source: string;
      /** Bearing of the C0 plane, °. */
      readonly turn: number;
      readonly photometry: Photometry;
    };
