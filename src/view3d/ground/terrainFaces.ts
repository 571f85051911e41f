import type { Board, Scene } from '../../assess/scene.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Solid } from '../../model/solid.ts';
import type { GROUND as GROUND_ID } from '../../model/terrainSolid.ts';
import { pick, pickable, type Pickable } from '../picking.ts';
import { onceEach } from '../solids/onceEach.ts';
import { BOARD_EDGE } from './board.ts';

/** The solid of uneven ground; the compiler holds it to that of model. */
export const GROUND: typeof GROUND_ID = 'ground';

/** The upper faces of uneven ground, cut off where the board ends, and the rim there. Site frame, m. */
export interface TerrainFaces {
  readonly solid: Solid;
  readonly board: Board;
  /** x, y, z of each corner, and of others that no face has. */
  readonly positions: Float64Array;
  /** Three corners a face, counter-clockwise from above. */
  readonly triangles: Uint32Array;
  /** Two corners a stretch of the rim, which has the ground on its left. */
  readonly rim: Uint32Array;
  readonly least: number;
  readonly most: number;
}

const kept = new WeakMap<Solid, TerrainFaces>();

/** The faces of a scene's uneven ground, the same while it is; null where the ground is flat. */
export function groundOf({ solids, board }: Pick<Scene, 'solids' | 'board'>): TerrainFaces | null {
  const solid = solids.at(-1);
  if (solid?.id !== GROUND) return null;
  const known = kept.get(solid);
  if (known && SIDES.every((side) => known.board[side] === board[side])) return known;
  const faces = facesOf(solid, board);
  kept.set(solid, faces);
  return faces;
}

const SIDES = ['left', 'bottom', 'right', 'top'] as const;

/** What of the solid below uneven ground is the ground: the faces that look up. It reaches past the board. */
function facesOf(solid: Solid, board: Board): TerrainFaces {
  const { positions: p, triangles: t } = solid;
  const places: number[] = [];
  const [triangles, rim]: [number[], number[]] = [[], []];
  const place = (corner: number): Vec3 => [
    p[corner * 3] ?? 0,
    p[corner * 3 + 1] ?? 0,
    p[corner * 3 + 2] ?? 0,
  ];
  const isWithin = ([x, y]: Vec3): boolean =>
    x > board.left && x < board.right && y > board.bottom && y < board.top;
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i + 2 < t.length; i += 3) {
    const ids = [t[i] ?? 0, t[i + 1] ?? 0, t[i + 2] ?? 0];
    const corners = ids.map(place);
    const [[ax, ay] = [0, 0], [bx, by] = [0, 0], [cx, cy] = [0, 0]] = corners;
    if ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax) <= 0) continue;
    const whole = corners.every(isWithin);
    const ring = whole ? corners : cutOff(corners, board);
    if (ring.length < 3) continue;
    for (const [, , z] of ring) [least, most] = [Math.min(least, z), Math.max(most, z)];
    if (whole) {
      triangles.push(...ids);
      continue;
    }
    const first = (p.length + places.length) / 3;
    places.push(...ring.flat());
    for (let k = 2; k < ring.length; k += 1) triangles.push(first, first + k - 1, first + k);
    ring.forEach((from, k) => {
      const next = (k + 1) % ring.length;
      const to = ring[next] ?? from;
      const onSide = (axis: 0 | 1, side: number): boolean => from[axis] === side && to[axis] === side;
      if (onSide(0, board.left) || onSide(0, board.right) || onSide(1, board.bottom) || onSide(1, board.top))
        rim.push(first + k, first + next);
    });
  }
  const positions = new Float64Array(p.length + places.length);
  positions.set(p);
  positions.set(places, p.length);
  return {
    solid,
    board,
    positions,
    triangles: Uint32Array.from(triangles),
    rim: Uint32Array.from(rim),
    least,
    most,
  };
}

/** What of a convex ring lies on the board (Sutherland and Hodgman's clipping); nothing where that has no area. */
function cutOff(corners: readonly Vec3[], { left, bottom, right, top }: Board): readonly Vec3[] {
  let ring = corners;
  for (const [axis, side, sign] of [
    [0, left, 1],
    [0, right, -1],
    [1, bottom, 1],
    [1, top, -1],
  ] as const) {
    const inwards = (point: Vec3): number => sign * (point[axis] - side);
    ring = ring.flatMap((from, k): Vec3[] => {
      const to = ring[(k + 1) % ring.length] ?? from;
      const [a, b] = [inwards(from), inwards(to)];
      const stays: Vec3[] = a >= 0 ? [from] : [];
      if (a > 0 === b > 0 || a === 0 || b === 0) return stays;
      const s = a / (a - b);
      const [x, y, z] = [0, 1, 2].map((n) => (from[n] ?? 0) + s * ((to[n] ?? 0) - (from[n] ?? 0)));
      // Exactly on the side, by which the rim is known.
      const met: Vec3 = axis === 0 ? [side, y ?? 0, z ?? 0] : [x ?? 0, side, z ?? 0];
      return [...stays, met];
    });
  }
  const twice = ring.reduce((sum, [x, y], k) => {
    const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
    return sum + x * ny - nx * y;
  }, 0);
  return twice > LEAST_TWICE ? ring : [];
}

/** Twice the area below which what is left of a face is a line, m². */
const LEAST_TWICE = 1e-12;

/** So many faces of the ground have a box of their own, so that a ray passes by most of them. */
const PART = 128;

/** The ground in parts for a ray to meet, each with the corners that it has. */
export const groundParts = onceEach((ground: TerrainFaces): readonly Solid[] => {
  const { positions: p, triangles } = ground;
  const parts: Solid[] = [];
  for (let first = 0; first < triangles.length; first += PART * 3) {
    const corners = triangles.subarray(first, first + PART * 3);
    const positions = new Float64Array(corners.length * 3);
    corners.forEach((corner, i) => positions.set(p.subarray(corner * 3, corner * 3 + 3), i * 3));
    parts.push({ ...ground.solid, positions, triangles: Uint32Array.from(corners, (_, i) => i) });
  }
  return parts;
});

const partsToMeet = onceEach((ground: TerrainFaces): Pickable => pickable(groundParts(ground)));

/** Higher than any ground, m. */
const ABOVE = 1e5;

/** The height of uneven ground at a place; null beyond the board. */
export function heightOn(ground: TerrainFaces, x: number, y: number): number | null {
  const hit = pick(partsToMeet(ground), { from: [x, y, ABOVE], along: [0, 0, -1] });
  return hit && hit.point[2];
}

/** A point moved up by as much as uneven ground lies above a level there; flat ground leaves it. */
export function lifted(ground: TerrainFaces | null, level: number, point: Vec3): Vec3 {
  const height = ground && heightOn(ground, point[0], point[1]);
  return height === null ? point : [point[0], point[1], point[2] + height - level];
}

/** The sides of the board under uneven ground, from its rim down to a level below its lowest point. */
export const skirtOf = onceEach(({ solid, positions: p, rim, least }: TerrainFaces): Solid => {
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
  return { ...solid, id: 'baseboard', name: 'Baseboard', positions, triangles };
});
