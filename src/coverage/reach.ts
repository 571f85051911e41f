import { cos, sin } from '../base/angle.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Facets } from '../sight/facets.ts';
import { footingOf, type Footing } from '../sight/footing.ts';
import type { HalfPlanes } from '../sight/halfPlanes.ts';
import type { Plane } from '../base/plane.ts';
import { shadowsOf, type Shadows } from '../sight/shadows.ts';
import { ShadowLine, Stretches, type Line } from '../sight/spans.ts';
import type { Reach } from './coverage.ts';
import type { BandRule } from './rule.ts';

/** Half the width of the strip in which shadows are sought, m. */
const STRIP = 0.01;
/** Steps along the cut; between them a change is found by halving. */
const STEPS = 1500;

/**
 * How far a camera serves along the vertical plane of its axis, on a horizontal plane: from the point below the lens to
 * the nearest covered target, and to the farthest of each band. Ends are exact to 1 µm.
 * @param lit whether a target, from the lens along site axes, has light enough; null by day
 */
export function reachOf(
  camera: Camera,
  plane: Plane,
  facets: Facets,
  rule: BandRule,
  bands: number,
  lensInside: boolean,
  lit: ((dx: number, dy: number, dz: number) => boolean) | null = null,
): Reach {
  const none: Reach = { nearBlindDistance: null, byBand: Array.from({ length: bands }, () => null) };
  const footing = footingOf(camera.eye, plane);
  const along = reachStrip(camera, footing);
  if (lensInside || along === null) return none;
  const { far, line, strip } = along;
  const clear = new Stretches();
  clear.reset(0, far);
  for (const passage of ['solid', 'screen'] as const)
    subtract(shadowsOf(facets, footing, strip, camera.range, passage));
  function subtract(shadows: Shadows): void {
    new ShadowLine(shadows, far).subtract(line, clear, -1);
  }
  const field = new PixelField(camera);
  const rise = camera.eye[2] - plane.origin[2];
  const bandAt = (t: number): number => {
    const [dx, dy] = [t * line.b, -t * line.a];
    if (!field.at(dx, dy, -rise) || (lit !== null && !lit(dx, dy, -rise))) return 0;
    return rule.band(field.density, dx, dy, rise);
  };
  const farthest = new Array<number | null>(bands).fill(null);
  let nearest: number | null = null;
  clear.each((from, to) => {
    for (const [start, end, band] of constant(
      bandAt,
      from,
      to,
      (to - from) / Math.ceil(((to - from) / far) * STEPS),
    )) {
      if (band === 0) continue;
      nearest ??= start;
      for (let below = 0; below < band; below += 1) farthest[below] = Math.max(farthest[below] ?? 0, end);
    }
  });
  return { nearBlindDistance: nearest, byBand: farthest };
}

/**
 * The strip of a level plane along which a reach is told: half-planes relative to the foot, the line and its length, m. Null
 * where the range does not come down to the plane.
 */
export function reachStrip(
  { pan, range }: Camera,
  { delta }: Footing,
): { readonly far: number; readonly line: Line; readonly strip: HalfPlanes } | null {
  const far2 = range ** 2 - delta ** 2;
  if (!(far2 > 0)) return null;
  const far = Math.sqrt(far2);
  const line = { a: -cos(pan), b: sin(pan), k: 0 };
  const strip: HalfPlanes = [
    [line.a, line.b, STRIP],
    [-line.a, -line.b, STRIP],
    [line.b, -line.a, STRIP],
    [-line.b, line.a, far],
  ];
  return { far, line, strip };
}

/** Stretches on which a step function is constant, found by sampling and halving. */
function constant(
  of: (t: number) => number,
  from: number,
  to: number,
  step: number,
): [number, number, number][] {
  const found: [number, number, number][] = [];
  let start = from;
  // Ends of a clear stretch graze what bounds it: ask just within.
  const inset = Math.min(1e-9, (to - from) / 4);
  let at = from + inset;
  let value = of(at);
  for (let next = Math.min(at + step, to - inset); at < to - inset; next = Math.min(at + step, to - inset)) {
    const there = of(next);
    if (there !== value) {
      const edge = halve(of, at, next, value);
      found.push([start, edge, value]);
      start = edge;
      value = there;
    }
    at = next;
  }
  found.push([start, to, value]);
  return found;
}

function halve(of: (t: number) => number, from: number, to: number, value: number): number {
  let [low, high] = [from, to];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (of(middle) === value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
