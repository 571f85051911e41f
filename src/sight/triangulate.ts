import earcut from 'earcut';
import { ringArea } from './rings.ts';
import { trapezoids } from './trapezoids.ts';

/** A ring that is no wider than this, m, holds nothing: there and back along one line. The library makes nonsense of such holes. */
const THINNEST = 1e-7;
/** What triangles may differ in area from their rings, m² per m². */
const SLACK = 1e-9;

/**
 * Triangles of rings that do not cross, whose outer ones run counter-clockwise: six numbers a triangle, a and b of its corners.
 * Where rings touch one another the library may leave something out or cover it twice: then by strips.
 */
export function trianglesOf(all: readonly Float64Array[]): Float64Array {
  const rings = all.filter((ring) => Math.abs(ringArea(ring)) > THINNEST * perimeter(ring));
  const triangles = byLibrary(rings);
  const whole = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  return Math.abs(trianglesArea(triangles) - whole) <= SLACK * Math.max(1, whole)
    ? triangles
    : trapezoids(rings);
}

function byLibrary(rings: readonly Float64Array[]): Float64Array {
  const areas = rings.map(ringArea);
  const outers = rings.flatMap((ring, at) =>
    (areas[at] ?? 0) > 0 ? [{ ring, area: areas[at] ?? 0, holes: [] as Float64Array[] }] : [],
  );
  rings.forEach((hole, at) => {
    if ((areas[at] ?? 0) >= 0) return;
    const around = outers
      .filter(({ ring, area }) => area >= -(areas[at] ?? 0) && holds(ring, hole))
      .sort((one, two) => one.area - two.area)[0];
    around?.holes.push(hole);
  });
  const triangles: number[] = [];
  for (const { ring, holes } of outers) {
    const corners = [...ring];
    const starts: number[] = [];
    for (const hole of holes) {
      starts.push(corners.length / 2);
      for (const number of hole) corners.push(number);
    }
    for (const corner of earcut(corners, starts))
      triangles.push(corners[corner * 2] ?? 0, corners[corner * 2 + 1] ?? 0);
  }
  return Float64Array.from(triangles);
}

/** The area of triangles, each counted as it is, m². */
export function trianglesArea(triangles: Float64Array): number {
  let twice = 0;
  for (let at = 0; at < triangles.length; at += 6) {
    const n = (k: number) => triangles[at + k] ?? 0;
    twice += Math.abs((n(2) - n(0)) * (n(5) - n(1)) - (n(4) - n(0)) * (n(3) - n(1)));
  }
  return twice / 2;
}

function perimeter(ring: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < ring.length; at += 2) {
    const next = (at + 2) % ring.length;
    sum += Math.hypot((ring[next] ?? 0) - (ring[at] ?? 0), (ring[next + 1] ?? 0) - (ring[at + 1] ?? 0));
  }
  return sum;
}

/** Whether most corners of a hole lie within a ring; some may touch it. */
function holds(ring: Float64Array, hole: Float64Array): boolean {
  let inside = 0;
  for (let at = 0; at < hole.length; at += 2)
    if (contains(ring, hole[at] ?? 0, hole[at + 1] ?? 0)) inside += 1;
  return inside * 4 > hole.length;
}

/** Even-odd test of a point against a ring of a, b corners. */
function contains(ring: Float64Array, a: number, b: number): boolean {
  let inside = false;
  for (let at = 0; at < ring.length; at += 2) {
    const next = (at + 2) % ring.length;
    const [a0, b0, a1, b1] = [ring[at] ?? 0, ring[at + 1] ?? 0, ring[next] ?? 0, ring[next + 1] ?? 0];
    if (b0 > b !== b1 > b && a < a0 + ((b - b0) / (b1 - b0)) * (a1 - a0)) inside = !inside;
  }
  return inside;
}
