import type { Spot } from '../sheet.ts';

/** A rectangle on the window, CSS px from the Model's top left corner. */
export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** From the edge of the Model, and between what lies over it, px. */
const EDGE = 12;
const GAP = 10;
/** From the pointer, px. */
const FROM_WORK = 24;
const STEP = 4;

/**
 * Where a row lies clear of what is over the Model already and of the pointer: as low as it can, else as high as it can.
 * It stays where it was for as long as that will do. Where nothing is clear of the pointer, it is clear of the rest.
 * @returns its top left corner
 */
export function clearPlace(
  size: { readonly width: number; readonly height: number },
  within: { readonly width: number; readonly height: number },
  over: readonly Rect[],
  pointer: Spot | null,
  before: Spot | null,
): Spot {
  const free = (place: Spot): boolean =>
    inside(place, size, within) && !over.some((rect) => near(place, size, rect, GAP));
  const clear = (place: Spot): boolean =>
    free(place) &&
    (pointer === null ||
      !near(place, size, { left: pointer.x, top: pointer.y, width: 0, height: 0 }, FROM_WORK));
  const middle = Math.max(EDGE, (within.width - size.width) / 2);
  // Beside what stands at the left edge, where the middle is too far left for that.
  const aside = over.flatMap(({ left, width }) => (left < within.width / 4 ? [left + width + GAP] : []));
  const columns = [middle, ...aside.toSorted((a, b) => a - b), within.width - size.width - EDGE];
  if (before && clear(before)) return before;
  const lowest = within.height - EDGE - size.height;
  const half = (lowest + EDGE) / 2;
  const tries: Spot[] = [];
  for (let up = 0; up <= lowest - EDGE; up += STEP) {
    const y = lowest - up;
    // The lower half from below, then the upper half from above.
    for (const x of columns) tries.push({ x, y: y > half ? y : EDGE + (half - y) });
  }
  return tries.find(clear) ?? tries.find(free) ?? { x: middle, y: EDGE };
}

const inside = (
  { x, y }: Spot,
  size: { readonly width: number; readonly height: number },
  within: { readonly width: number; readonly height: number },
): boolean => x >= 0 && y >= 0 && x + size.width <= within.width && y + size.height <= within.height;

const near = (
  { x, y }: Spot,
  { width, height }: { readonly width: number; readonly height: number },
  rect: Rect,
  gap: number,
): boolean =>
  x < rect.left + rect.width + gap &&
  rect.left < x + width + gap &&
  y < rect.top + rect.height + gap &&
  rect.top < y + height + gap;
