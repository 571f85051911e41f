import { dot, subtract, type Vec2 } from '../../base/vector.ts';
import type { Edition } from '../../coverage/band.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { contours, type Contour, type Grain, type Sector } from '../../draw/contours.ts';
import { withinRings } from '../../draw/region.ts';
import { densityAt } from '../../optics/density.ts';
import { inFrame } from '../../optics/projection.ts';
import type { Sight } from '../../sight/sight.ts';
import { frameEdge } from './frameEdge.ts';
import { pointOn } from '../planeFrame.ts';

const AT_REST: Grain = { bearing: 4, ratio: 1.16, sagitta: 0.002 };
/** While something is dragged, a few pixels are near enough and time is short. */
const DRAGGED: Grain = { bearing: 8, ratio: 1.35, sagitta: 0.03 };
const NEAREST = 0.03;

const made = new WeakMap<
  Sight,
  { readonly edition: Edition; readonly grain: Grain; readonly lines: readonly Contour[] }
>();

/** The band lines of one camera on the target plane, made once. Plane coordinates. */
export function contoursOf({ sight }: CameraCoverage, edition: Edition, dragged = false): readonly Contour[] {
  const kept = made.get(sight);
  const grain = dragged ? DRAGGED : AT_REST;
  if (kept?.edition === edition && (dragged || kept.grain === AT_REST)) return kept.lines;
  const { camera, plane, seen, framed } = sight;
  const sector = sectorOf(sight);
  const lines = sector
    ? contours({
        sector,
        density: (a, b) => densityAt(camera, pointOn(plane, a, b))?.horizontal ?? null,
        seen: (a, b) => withinRings(seen.rings, a, b) && (framed || inFrame(camera, pointOn(plane, a, b))),
        thresholds: edition.bands.map(({ density }) => density),
        grain,
      })
    : [];
  made.set(sight, { edition, grain, lines });
  return lines;
}

/** The sector about the foot that holds the frame within the range; null where they do not meet. */
function sectorOf(sight: Sight): Sector | null {
  const { camera, plane, frame, framed } = sight;
  const lens = subtract(camera.eye, plane.origin);
  const foot: Vec2 = [dot(lens, plane.u), dot(lens, plane.v)];
  const height = dot(lens, plane.normal);
  const reach = Math.sqrt(Math.max(0, camera.range ** 2 - height ** 2));
  const edge = framed ? cornersOf(frame) : frameEdge(sight).flat();
  const away = (points: readonly Vec2[]): number =>
    points.reduce((most, [a, b]) => Math.max(most, Math.hypot(a - foot[0], b - foot[1])), 0);
  const greatest = Math.min(reach, away(cornersOf(frame)));
  if (edge.length < 2 || greatest <= NEAREST) return null;
  const inside = framed
    ? withinRings([frame], foot[0], foot[1])
    : inFrame(camera, pointOn(plane, foot[0], foot[1]));
  if (inside) return { foot, start: 0, span: 360, least: NEAREST, greatest };
  // Seen from outside, the frame leaves one gap: the widest between the bearings of its edge.
  const bearings = edge.map(([a, b]) => (Math.atan2(b - foot[1], a - foot[0]) * 180) / Math.PI);
  bearings.sort((x, y) => x - y);
  let [gap, start] = [0, 0];
  bearings.forEach((bearing, i) => {
    const next = bearings[i + 1] ?? (bearings[0] ?? 0) + 360;
    if (next - bearing > gap) [gap, start] = [next - bearing, next];
  });
  const least = Math.min(Math.max(NEAREST, nearest(edge, foot, framed)), greatest / 2);
  return { foot, start, span: Math.min(360, Math.max(0.1, 360 - gap)), least, greatest };
}

const cornersOf = (frame: Float64Array): Vec2[] =>
  Array.from({ length: frame.length / 2 }, (_, i): Vec2 => [frame[i * 2] ?? 0, frame[i * 2 + 1] ?? 0]);

/** The distance from a point to a line of points, or a little less. */
function nearest(points: readonly Vec2[], foot: Vec2, closed: boolean): number {
  let least = Infinity;
  points.forEach(([x, y], i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined) ?? [x, y];
    const [ax, ay] = [x - foot[0], y - foot[1]];
    const [dx, dy] = [next[0] - x, next[1] - y];
    const t = Math.min(1, Math.max(0, -(ax * dx + ay * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(ax + t * dx, ay + t * dy));
  });
  return least * 0.999;
}
