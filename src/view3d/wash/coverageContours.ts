import { dot, subtract, type Vec2 } from '../../base/vector.ts';
import type { Edition } from '../../coverage/band.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { contours, type Contour, type Sector } from '../../draw/contours.ts';
import { withinRings } from '../../draw/region.ts';
import { densityAt } from '../../optics/density.ts';
import { inFrame } from '../../optics/projection.ts';
import type { Sight } from '../../sight/sight.ts';
import { pointOn } from '../planeFrame.ts';

/** Chords nearer than this to the curve are drawn straight, m. */
const SAGITTA = 0.004;
const NEAREST = 0.03;

const made = new WeakMap<Sight, { readonly edition: Edition; readonly lines: readonly Contour[] }>();

/** The band lines of one camera on the target plane, made once. Plane coordinates. */
export function contoursOf({ sight }: CameraCoverage, edition: Edition): readonly Contour[] {
  const kept = made.get(sight);
  if (kept?.edition === edition) return kept.lines;
  const { camera, plane, seen, framed } = sight;
  const sector = sectorOf(sight);
  const lines = sector
    ? contours({
        sector,
        density: (a, b) => densityAt(camera, pointOn(plane, a, b))?.horizontal ?? null,
        seen: (a, b) => withinRings(seen.rings, a, b) && (framed || inFrame(camera, pointOn(plane, a, b))),
        thresholds: edition.bands.map(({ density }) => density),
        sagitta: SAGITTA,
      })
    : [];
  made.set(sight, { edition, lines });
  return lines;
}

/** The sector about the foot that holds the frame within the range; null where they do not meet. */
function sectorOf({ camera, plane, frame }: Sight): Sector | null {
  const lens = subtract(camera.eye, plane.origin);
  const foot: Vec2 = [dot(lens, plane.u), dot(lens, plane.v)];
  const height = dot(lens, plane.normal);
  const reach = Math.sqrt(Math.max(0, camera.range ** 2 - height ** 2));
  const bearings: number[] = [];
  let farthest = 0;
  for (let i = 0; i + 1 < frame.length; i += 2) {
    const [a, b] = [(frame[i] ?? 0) - foot[0], (frame[i + 1] ?? 0) - foot[1]];
    farthest = Math.max(farthest, Math.hypot(a, b));
    bearings.push((Math.atan2(b, a) * 180) / Math.PI);
  }
  const greatest = Math.min(farthest, reach);
  if (bearings.length < 3 || greatest <= NEAREST) return null;
  if (withinRings([frame], foot[0], foot[1])) return { foot, start: 0, span: 360, least: NEAREST, greatest };
  // Seen from outside, a convex frame leaves one gap of more than half a turn.
  const sorted = bearings.toSorted((x, y) => x - y);
  let [gap, start] = [0, sorted[0] ?? 0];
  sorted.forEach((bearing, i) => {
    const next = sorted[i + 1] ?? (sorted[0] ?? 0) + 360;
    if (next - bearing > gap) [gap, start] = [next - bearing, next];
  });
  return { foot, start, span: Math.min(360, Math.max(0.1, 360 - gap)), least: nearest(frame, foot), greatest };
}

/** The distance from a point outside a convex polygon to it, or a little less. */
function nearest(frame: Float64Array, foot: Vec2): number {
  let least = Infinity;
  const count = frame.length;
  for (let i = 0; i < count; i += 2) {
    const j = (i + 2) % count;
    const [ax, ay] = [(frame[i] ?? 0) - foot[0], (frame[i + 1] ?? 0) - foot[1]];
    const [dx, dy] = [(frame[j] ?? 0) - foot[0] - ax, (frame[j + 1] ?? 0) - foot[1] - ay];
    const t = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(ax + t * dx, ay + t * dy));
  }
  return Math.max(NEAREST, least * 0.999);
}
