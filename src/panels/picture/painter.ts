/** How strongly what is covered is tinted, so that the picture can still be read through it. */
export const TINT = 0.42;

/** Lent by the window: paints what a camera sees into a canvas, for as long as that is there. */
export interface Painter {
  /** @param wash how much of what is covered is tinted, 0 to 1 */
  show(camera: string | null, wash: number): void;
  dispose(): void;
}
