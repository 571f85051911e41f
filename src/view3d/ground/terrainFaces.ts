import type { Scene } from '../../assess/scene.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';
import type { GROUND as GROUND_ID } from '../../model/terrainSolid.ts';
import { pick, pickable, type Pickable } from '../picking.ts';
import { onceEach } from '../solids/onceEach.ts';
import { BOARD_EDGE } from './board.ts';

/** The solid of uneven ground; the compiler holds it to that of model. */
export const GROUND: typeof GROUND_ID = 'ground';

/** The upper faces of uneven ground, and its rim. Site frame, m. */
export interface TerrainFaces {
  /** x, y, z of each corner; those of the whole solid. */
  readonly positions: Float64Array;
  /** Three corners a face, of the ground itself alone. */
  readonly triangles: Uint32Array;
  /** Two corners a stretch of the rim, which has the ground on its left. */
  readonly rim: Uint32Array;
  readonly least: number;
  readonly most: number;
}

/** The solid of a scene's uneven ground; null where the ground is flat. */
export const groundOf = ({ solids }: Pick<Scene, 'solids'>): Solid | null => {
  const last = solids.at(-1);
  return last?.id === GROUND ? last : null;
};

/** What of the solid below uneven ground is the ground: the faces that look up. Its sides are upright. */
export const terrainFaces = onceEach(({ positions: p, triangles: t }: Solid): TerrainFaces => {
  const [up, rim]: [number[], number[]] = [[], []];
  let floor = Infinity;
  for (let at = 2; at < p.length; at += 3) floor = Math.min(floor, p[at] ?? 0);
  const isTop = (corner: number): boolean => (p[corner * 3 + 2] ?? 0) > floor;
  for (let i = 0; i + 2 < t.length; i += 3) {
    const [a, b, c] = [t[i] ?? 0, t[i + 1] ?? 0, t[i + 2] ?? 0];
    const tops = [a, b, c].filter(isTop);
    if (tops.length === 3) up.push(a, b, c);
    // A side is two triangles, of which one has both of its upper corners; outward faces run against the rim.
    if (tops.length === 2) {
      const [one, two] = isTop(a) && isTop(b) ? [a, b] : isTop(b) && isTop(c) ? [b, c] : [c, a];
      rim.push(two, one);
    }
  }
  let [least, most] = [Infinity, -Infinity];
  for (const corner of up) {
    const z = p[corner * 3 + 2] ?? 0;
    least = Math.min(least, z);
    most = Math.max(most, z);
  }
  return { positions: p, triangles: Uint32Array.from(up), rim: Uint32Array.from(rim), least, most };
});

/** So many faces of the ground have a box of their own, so that a ray passes by most of them. */
const PART = 128;

/** The ground in parts for a ray to meet, each with the corners that it has. */
export const groundParts = onceEach((ground: Solid): readonly Solid[] => {
  const { positions: p, triangles } = terrainFaces(ground);
  const parts: Solid[] = [];
  for (let first = 0; first < triangles.length; first += PART * 3) {
    const corners = triangles.subarray(first, first + PART * 3);
    const positions = new Float64Array(corners.length * 3);
    corners.forEach((corner, i) => positions.set(p.subarray(corner * 3, corner * 3 + 3), i * 3));
    parts.push({ ...ground, positions, triangles: Uint32Array.from(corners, (_, i) => i) });
  }
  return parts;
});

const partsToMeet = onceEach((ground: Solid): Pickable => pickable(groundParts(ground)));

/** Higher than any ground, m. */
const ABOVE = 1e5;

/** The height of uneven ground at a place; null beyond its rim. */
export function heightOn(ground: Solid, x: number, y: number): number | null {
  const hit = pick(partsToMeet(ground), { from: [x, y, ABOVE], along: [0, 0, -1] });
  return hit && hit.point[2];
}

/** A point moved up by as much as uneven ground lies above a level there; flat ground leaves it. */
export function lifted(ground: Solid | null, level: number, point: Vec3): Vec3 {
  const height = ground && heightOn(ground, point[0], point[1]);
  return height === null ? point : [point[0], point[1], point[2] + height - level];
}

/** The sides of the board under uneven ground, from its rim down to a level below its lowest point. */
export const skirtOf = onceEach((ground: Solid): Solid => {
  const { positions: p, rim, least } = terrainFaces(ground);
  const stretches = rim.length / 2;
  const positions = new Float64Array(stretches * 12);
  const triangles = new Uint32Array(stretches * 6);
  for (let i = 0; i < stretches; i += 1) {
    const [a, b] = [(rim[i * 2] ?? 0) * 3, (rim[i * 2 + 1] ?? 0) * 3];
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [bx, by, bz] = [p[b] ?? 0, p[b + 1] ?? 0, p[b + 2] ?? 0];
    const low = least - BOARD_EDGE;
    positions.set([ax, ay, low, bx, by, low, bx, by, bz, ax, ay, az], i * 12);
    triangles.set(
      [0, 1, 2, 0, 2, 3].map((corner) => i * 4 + corner),
      i * 6,
    );
  }
  return { ...ground, id: 'baseboard', name: 'Baseboard', positions, triangles };
});
