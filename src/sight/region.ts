import type { Vec2 } from '../base/vector.ts';
import type { HalfPlanes } from './halfPlanes.ts';
import { STRIDE, type Shadows } from './shadows.ts';
import type { OutlinePiece } from './sight.ts';
import { ShadowLine, Stretches, withinHalfPlanes, type Line } from './spans.ts';

/** A convex window by its half-planes, each with what lies beyond it (FRAME_EDGE, WINDOW_EDGE). */
export interface Bounds {
  readonly halfPlanes: HalfPlanes;
  readonly beyond: readonly number[];
  /** Greatest distance from the foot to a corner, m. */
  readonly radius: number;
}

/** Outline pieces relative to the foot, and the area that they enclose. */
export interface Outline {
  readonly pieces: readonly OutlinePiece[];
  readonly area: number;
}

/**
 * What shadows leave of a convex window: the stretches of every edge that no other shadow covers, and the area as a sum
 * over them (Green's theorem), without a union and without a grid.
 * Cost: candidate edges × shadows near them.
 */
export function uncovered(shadows: Shadows, bounds: Bounds): Outline {
  const pieces: OutlinePiece[] = [];
  const stretches = new Stretches();
  const lines = new ShadowLine(shadows, bounds.radius);
  let area = 0;
  const keep = (line: Line, beyond: number, forwards: boolean): void =>
    stretches.each((from, to) => {
      area += ((forwards ? line.k : -line.k) * (to - from)) / 2;
      const [p, q] = [pointAt(line, from), pointAt(line, to)];
      pieces.push(forwards ? { from: p, to: q, beyond } : { from: q, to: p, beyond });
    });

  bounds.halfPlanes.forEach(([a, b, k], at) => {
    const line = { a, b, k };
    const others = bounds.halfPlanes.filter((_, other) => other !== at);
    stretches.reset(...withinHalfPlanes(line, others, bounds.radius));
    lines.subtract(line, stretches, -1);
    keep(line, bounds.beyond[at] ?? 0, true);
  });

  for (let shadow = 0; shadow < shadows.count; shadow += 1) {
    for (let side = 0; side < (shadows.sides[shadow] ?? 0); side += 1) {
      if (((shadows.outline[shadow] ?? 0) & (1 << side)) === 0) continue;
      const at = shadow * STRIDE + side * 3;
      const line = {
        a: shadows.numbers[at] ?? 0,
        b: shadows.numbers[at + 1] ?? 0,
        k: shadows.numbers[at + 2] ?? 0,
      };
      const [from, to] = lines.own(shadow, side, line);
      // Along a bound of the window the bound itself is the outline, not the shadow's edge.
      const [first, last] = withinHalfPlanes(line, bounds.halfPlanes, bounds.radius, false);
      stretches.reset(Math.max(from, first), Math.min(to, last));
      if (stretches.empty) continue;
      if (shadows.dark?.holdsStretch(line.a, line.b, line.k, stretches.first, stretches.last)) continue;
      lines.subtract(line, stretches, shadow);
      keep(line, shadows.solid[shadow] ?? 0, false);
    }
  }
  return { pieces, area };
}

const pointAt = (line: Line, t: number): Vec2 => [
  -line.k * line.a + t * line.b,
  -line.k * line.b - t * line.a,
];
