import type { Vec2 } from '../base/vector.ts';
import type { TerrainBoard } from './terrain.ts';
import type { Surface } from './terrainSolid.ts';

/** The widest fan, rad, that one triangle of the rim has at a corner of the hull. */
const FAN = Math.PI / 6;
/** Below this turn, rad, the hull goes straight on. */
const STRAIGHT = 1e-9;

/**
 * A triangulation with a rim around it that reaches past the board: off each edge of the hull a level-going strip, off each
 * corner a fan at the corner's height. So each place of the rim has the height of the nearest point of the hull.
 * @param corners   x, y, z of each
 * @param halfedges as the Delaunay library has them: the twin of each edge, −1 on the hull
 */
export function goneOnLevel(
  corners: readonly number[],
  triangles: Uint32Array,
  halfedges: Int32Array,
  board: TerrainBoard,
): Surface {
  const place = (id: number): Vec2 => [corners[id * 3] ?? 0, corners[id * 3 + 1] ?? 0];
  const leftwards = turned(triangles, place);
  const hull = hullOf(triangles, halfedges, leftwards);
  const reach = reachPast(hull.map(place), board);
  const positions = [...corners];
  const all = Array.from(triangles);
  if (!leftwards) all.reverse();

  const outwards = hull.map((id, at) => squareTo(place(id), place(hull[(at + 1) % hull.length] ?? id)));
  const fans = hull.map((id, at) => {
    const before = outwards[(at + hull.length - 1) % hull.length] ?? [0, 0];
    const fan = directions(before, outwards[at] ?? before);
    const [x, y] = place(id);
    return fan.map(([dx, dy]) => {
      positions.push(x + dx * reach, y + dy * reach, corners[id * 3 + 2] ?? 0);
      return positions.length / 3 - 1;
    });
  });
  hull.forEach((a, at) => {
    const fan = fans[at] ?? [];
    for (let k = 0; k + 1 < fan.length; k += 1) all.push(a, fan[k] ?? a, fan[k + 1] ?? a);
    const next = (at + 1) % hull.length;
    const [b, from, to] = [hull[next] ?? a, fan[fan.length - 1] ?? a, fans[next]?.[0] ?? a];
    all.push(from, to, b, from, b, a);
  });
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(all), ring: fans.flat() };
}

/** Whether triangles run counter-clockwise. */
function turned(triangles: Uint32Array, place: (id: number) => Vec2): boolean {
  let twice = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [place(triangles[t] ?? 0), place(triangles[t + 1] ?? 0), place(triangles[t + 2] ?? 0)];
    twice += (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  }
  return twice > 0;
}

/** Corner ids around a triangulation, counter-clockwise. */
function hullOf(triangles: Uint32Array, halfedges: Int32Array, leftwards: boolean): number[] {
  const next = new Map<number, number>();
  halfedges.forEach((twin, edge) => {
    if (twin >= 0) return;
    const from = triangles[edge] ?? 0;
    const to = triangles[edge % 3 === 2 ? edge - 2 : edge + 1] ?? 0;
    if (leftwards) next.set(from, to);
    else next.set(to, from);
  });
  const [start] = next.keys();
  const hull: number[] = [];
  for (let id = start; id !== undefined && hull.length < next.size; id = next.get(id)) hull.push(id);
  return hull;
}

/** How far the rim must reach for no corner of the board to lie beyond it, chords of the fans taken into account. */
function reachPast(hull: readonly Vec2[], { left, bottom, right, top }: TerrainBoard): number {
  const corners: readonly Vec2[] = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
  const farthest = corners.map(([x, y]) => Math.min(...hull.map(([a, b]) => Math.hypot(x - a, y - b))));
  return (Math.max(...farthest) + 1) / Math.cos(FAN / 2);
}

/** The unit vector to the right of a way. */
function squareTo(from: Vec2, to: Vec2): Vec2 {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
}

/** Directions from one unit vector round to another, in steps of at most FAN; one where they are the same. */
function directions(from: Vec2, to: Vec2): Vec2[] {
  const turn = Math.atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]);
  if (turn < STRAIGHT) return [to];
  const steps = Math.ceil(turn / FAN);
  return Array.from({ length: steps + 1 }, (_, k): Vec2 => {
    if (k === steps) return to;
    const angle = (turn * k) / steps;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [from[0] * cos - from[1] * sin, from[0] * sin + from[1] * cos];
  });
}
