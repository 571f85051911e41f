import type { Vec2 } from '../../../src/base/vector.ts';

/** How far a place lies off the nearest of some lines (x, y in turn), px. */
export function offLine(parts: readonly Float64Array[], [x, y]: Vec2): number {
  let least = Infinity;
  for (const part of parts)
    for (let at = 2; at + 1 < part.length; at += 2) {
      const [x0, y0] = [part[at - 2] ?? 0, part[at - 1] ?? 0];
      const [dx, dy] = [(part[at] ?? 0) - x0, (part[at + 1] ?? 0) - y0];
      const size2 = dx * dx + dy * dy;
      const t = size2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / size2));
      least = Math.min(least, Math.hypot(x - x0 - t * dx, y - y0 - t * dy));
    }
  return least;
}
