/** A label's box on the window: middle, size (px) and turn (°). */
export interface Plate {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly angle: number;
}

/** Whether two turned boxes overlap, with a gap between them, px. */
export function overlap(a: Plate, b: Plate, gap = 0): boolean {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  for (const { angle } of [a, b]) {
    for (const turn of [angle, angle + 90]) {
      const turnRad = (turn * Math.PI) / 180;
      const [ux, uy] = [Math.cos(turnRad), Math.sin(turnRad)];
      if (Math.abs(dx * ux + dy * uy) >= reach(a, turn) + reach(b, turn) + gap) return false;
    }
  }
  return true;
}

/** Half the extent of a box along a direction. */
function reach({ width, height, angle }: Plate, direction: number): number {
  const offRad = ((direction - angle) * Math.PI) / 180;
  return (Math.abs(Math.cos(offRad)) * width + Math.abs(Math.sin(offRad)) * height) / 2;
}

/** Something to be labelled, with the places that would do, best first. */
export interface Wish<T> {
  readonly label: T;
  readonly places: readonly Plate[];
}

export interface Placed<T> {
  readonly label: T;
  readonly place: Plate;
}

/**
 * Gives each wish, in order, its best place that overlaps nothing; a wish without one is dropped.
 * @param taken boxes that no label may cover
 */
export function placeLabels<T>(wishes: readonly Wish<T>[], taken: readonly Plate[], gap = 3): Placed<T>[] {
  const full = [...taken];
  return wishes.flatMap(({ label, places }) => {
    const place = places.find((one) => !full.some((other) => overlap(one, other, gap)));
    if (!place) return [];
    full.push(place);
    return [{ label, place }];
  });
}
