import type { Vec2 } from '../base/vector.ts';

/** Where a place of the picture (px) lands on a plane; null where it does not, or too far away to matter. */
export type Land = (u: number, v: number) => Vec2 | null;

const STEPS = 16;
const MOST_HALVINGS = 8;

/**
 * The edge of a camera's frame as it lies on a plane: lines whose chords keep within `sagitta` (m) of it.
 * Sides whose rays leave the plane end where they do, to a hundredth of a pixel.
 */
export function frameCurve(width: number, height: number, land: Land, sagitta: number): Vec2[][] {
  const corners: readonly Vec2[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return corners.flatMap((from, side) => {
    const to = corners[(side + 1) % 4] ?? from;
    const at = (t: number): Vec2 | null =>
      land(from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t);
    return sideCurves(at, Math.hypot(to[0] - from[0], to[1] - from[1]), sagitta);
  });
}

function sideCurves(at: (t: number) => Vec2 | null, pixels: number, sagitta: number): Vec2[][] {
  const curves: Vec2[][] = [];
  let curve: Vec2[] | null = null;
  let before: { readonly t: number; readonly point: Vec2 | null } | null = null;
  for (let step = 0; step <= STEPS; step += 1) {
    const t = step / STEPS;
    const point = at(t);
    if (point && !before?.point) {
      curve = [];
      curves.push(curve);
      if (before) add(curve, ending(at, t, before.t, pixels), { t, point });
      else curve.push(point);
    } else if (point && curve && before?.point)
      add(curve, { t: before.t, point: before.point }, { t, point });
    else if (!point && curve && before?.point) {
      add(curve, { t: before.t, point: before.point }, ending(at, before.t, t, pixels));
      curve = null;
    }
    before = { t, point };
  }
  return curves.filter((points) => points.length > 1);

  /** Adds what lies between two places, and the second. */
  function add(line: Vec2[], from: Place, to: Place): void {
    if (line.length === 0) line.push(from.point);
    const halve = (a: Place, b: Place, depth: number): void => {
      const t = (a.t + b.t) / 2;
      const point = at(t);
      if (point && depth < MOST_HALVINGS && offChord(a.point, b.point, point) > sagitta) {
        halve(a, { t, point }, depth + 1);
        halve({ t, point }, b, depth + 1);
      } else line.push(b.point);
    };
    halve(from, to, 0);
  }
}

interface Place {
  readonly t: number;
  readonly point: Vec2;
}

/** The last place that lands, between one that does and one that does not. */
function ending(at: (t: number) => Vec2 | null, lands: number, not: number, pixels: number): Place {
  let [good, bad] = [lands, not];
  while (Math.abs(good - bad) * pixels > 0.01) {
    const middle = (good + bad) / 2;
    if (at(middle)) good = middle;
    else bad = middle;
  }
  return { t: good, point: at(good) ?? [0, 0] };
}

function offChord(a: Vec2, b: Vec2, p: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.hypot(dx, dy);
  return size > 0
    ? Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / size
    : Math.hypot(p[0] - a[0], p[1] - a[1]);
}
