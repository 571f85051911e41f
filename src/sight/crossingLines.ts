import { coverOf, sideOn } from './cover.ts';
import { BOX, DEPTH, STRIDE, type Shadows } from './shadows.ts';
import { SAME_LINE, Stretches, type Line } from './spans.ts';

/** A stretch along which the faces of two owners are equally far from the lens. */
export interface CrossingLine {
  readonly line: Line;
  readonly from: number;
  readonly to: number;
}

/**
 * Where faces of different owners cut through one another, as seen on the plane. Stretches along a side of either shadow are
 * left out: that side is asked itself.
 */
export function* crossingLines(
  shadows: Shadows,
  owner: Int32Array,
  rank: Uint8Array,
  radius: number,
): Generator<CrossingLine> {
  const found: CrossingLine[] = [];
  const left = new Stretches();
  for (let one = 0; one < shadows.count; one += 1)
    for (let two = one + 1; two < shadows.count; two += 1) {
      if (owner[one] === owner[two] || rank[one] !== rank[two] || apart(shadows, one, two)) continue;
      const line = equalDepth(shadows, one, two);
      if (line === null) continue;
      const first = coverOf(shadows, one, line, [-1e9, 1e9], radius);
      const both = first && coverOf(shadows, two, line, [first.from, first.to], radius);
      if (both === null || sideOn(shadows, one, line, radius) >= 0 || sideOn(shadows, two, line, radius) >= 0)
        continue;
      // Faces that meet in one line are asked once, each over what earlier ones left of it.
      left.reset(both.from, both.to);
      for (const earlier of found) takeSame(left, earlier, line, radius);
      const crossings: CrossingLine[] = [];
      left.each((from, to) => crossings.push({ line, from, to }));
      found.push(...crossings);
      yield* crossings;
    }
}

function apart({ numbers }: Shadows, one: number, two: number): boolean {
  const [i, j] = [one * STRIDE + BOX, two * STRIDE + BOX];
  return (
    (numbers[i] ?? 0) > (numbers[j + 2] ?? 0) ||
    (numbers[j] ?? 0) > (numbers[i + 2] ?? 0) ||
    (numbers[i + 1] ?? 0) > (numbers[j + 3] ?? 0) ||
    (numbers[j + 1] ?? 0) > (numbers[i + 3] ?? 0)
  );
}

function equalDepth({ numbers }: Shadows, one: number, two: number): Line | null {
  const [i, j] = [one * STRIDE + DEPTH, two * STRIDE + DEPTH];
  const a = (numbers[i] ?? 0) - (numbers[j] ?? 0);
  const b = (numbers[i + 1] ?? 0) - (numbers[j + 1] ?? 0);
  const k = (numbers[i + 2] ?? 0) - (numbers[j + 2] ?? 0);
  const size = Math.hypot(a, b);
  const scale = Math.hypot(numbers[i] ?? 0, numbers[i + 1] ?? 0, numbers[i + 2] ?? 0);
  return size > 1e-9 * scale ? { a: a / size, b: b / size, k: k / size } : null;
}

/** Takes from stretches of a line what an earlier crossing on the same line has. */
function takeSame(left: Stretches, earlier: CrossingLine, line: Line, radius: number): void {
  const sense = earlier.line.a * line.a + earlier.line.b * line.b;
  const slope = earlier.line.a * line.b - earlier.line.b * line.a;
  if (Math.abs(slope) * radius > SAME_LINE || Math.abs(line.k - sense * earlier.line.k) > SAME_LINE) return;
  if (sense > 0) left.remove(earlier.from, earlier.to);
  else left.remove(-earlier.to, -earlier.from);
}
