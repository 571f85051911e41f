/** How far a moving target is smeared while a picture is exposed, along its way and in the picture. */
export interface Smear {
  readonly millimetres: number;
  readonly pixels: number;
}

/**
 * Smear = speed across the line of sight × exposure; in pixels times the density there. Source: the definition of speed.
 * @param speed    m/s, across the line of sight
 * @param exposure ms
 * @param density  px/m
 */
export const smearOf = (speed: number, exposure: number, density: number): Smear => ({
  millimetres: speed * exposure,
  pixels: (speed * exposure * density) / 1000,
});
