import type { Vec3 } from '../../../base/vector.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import { cautionId, isLeaves, placeOn, type About } from '../about.ts';
import type { Found, Place } from '../caution.ts';
import { cornersOf } from '../closest.ts';

/** Steeper tops than this nobody stands on: the least upward part of a unit normal. Common practice, no source. */
const STANDING = Math.SQRT1_2;

/** Narrower tops than this, such as sills and the tops of fences, nobody stands on, m. Common practice, no source. */
const NARROW = 0.15;

/** The least width of a triangle over ground: its area by its longest side. */
function widthOver([a, b, c]: readonly [Vec3, Vec3, Vec3]): number {
  const twice = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  const side = (p: Vec3, q: Vec3) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  return twice / Math.max(side(a, b), side(b, c), side(c, a));
}

/**
 * The highest point of a triangle within a distance of a place over ground; null where none of it is. On a plane that is a
 * corner within, where an edge enters, or the uphill end of the disc.
 */
export function highestWithin(
  [a, b, c]: readonly [Vec3, Vec3, Vec3],
  [x, y]: Vec3,
  radius: number,
): Vec3 | null {
  let best: Vec3 | null = null;
  const take = (at: Vec3) => {
    if (best === null || at[2] > best[2]) best = at;
  };
  const edges = [
    [a, b],
    [b, c],
    [c, a],
  ] as const;
  for (const [p, q] of edges) {
    const [dx, dy, ex, ey] = [q[0] - p[0], q[1] - p[1], p[0] - x, p[1] - y];
    const [size2, half, rest] = [dx * dx + dy * dy, dx * ex + dy * ey, ex * ex + ey * ey - radius * radius];
    if (rest <= 0) take(p);
    const root2 = half * half - size2 * rest;
    if (size2 === 0 || root2 < 0) continue;
    for (const sign of [-1, 1] as const) {
      const t = (-half + sign * Math.sqrt(root2)) / size2;
      if (t > 0 && t < 1) take([p[0] + dx * t, p[1] + dy * t, p[2] + (q[2] - p[2]) * t]);
    }
  }
  // The plane z = z₀ + g·(p − p₀) is highest in the disc straight uphill of its middle.
  const twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  if (Math.abs(twice) < 1e-12) return best;
  const gx = ((b[2] - a[2]) * (c[1] - a[1]) - (c[2] - a[2]) * (b[1] - a[1])) / twice;
  const gy = ((c[2] - a[2]) * (b[0] - a[0]) - (b[2] - a[2]) * (c[0] - a[0])) / twice;
  const steep = Math.hypot(gx, gy);
  const up: readonly [number, number] =
    steep < 1e-9 ? [x, y] : [x + (radius * gx) / steep, y + (radius * gy) / steep];
  const isWithin = edges.every(
    ([p, q]) => ((q[0] - p[0]) * (up[1] - p[1]) - (q[1] - p[1]) * (up[0] - p[0])) * Math.sign(twice) >= 0,
  );
  if (isWithin) take([up[0], up[1], a[2] + gx * (up[0] - a[0]) + gy * (up[1] - a[1])]);
  return best;
}

/** Row 29: the lens is within reach of something that can be stood on, or of the ground. */
export function withinReach(about: About): readonly Found[] {
  const { camera, scene, obstacles, groundAt, set } = about;
  const [least, sideways] = [about.limit('reach.height'), about.limit('reach.sideways')];
  const { eye } = camera;
  const ground = groundAt([eye[0], eye[1]]);
  let top: { readonly name: string; readonly z: number; readonly place: Place } = {
    name: 'ground',
    z: ground,
    place: { at: [eye[0], eye[1], ground], thing: null },
  };
  const { facets } = obstacles;
  for (const { solid, box, from, to } of facets.groups) {
    const one = scene.solids[solid];
    const isFar =
      (box[0] ?? 0) > eye[0] + sideways ||
      (box[3] ?? 0) < eye[0] - sideways ||
      (box[1] ?? 0) > eye[1] + sideways ||
      (box[4] ?? 0) < eye[1] - sideways;
    if (one === undefined || isFar || one.id === GROUND || one.structure === set.id || isLeaves(about, one))
      continue;
    for (let facet = from; facet < to; facet += 1) {
      const [nx, ny, nz] = [0, 1, 2].map((axis) => facets.normals[facet * 3 + axis] ?? 0);
      if (nx === undefined || ny === undefined || nz === undefined) continue;
      if (nz < STANDING * Math.hypot(nx, ny, nz)) continue;
      const corners = cornersOf(facets, facet);
      const at = widthOver(corners) < NARROW ? null : highestWithin(corners, eye, sideways);
      if (at === null || at[2] >= eye[2] || at[2] <= top.z) continue;
      top = { name: one.name, z: at[2], place: placeOn(about, one, at) };
    }
  }
  const height = eye[2] - top.z;
  if (height >= least || height <= 0) return [];
  return [
    {
      id: cautionId(29),
      severity: 'tell',
      weight: least / Math.max(0.1, height),
      figures: { row: 29, thing: top.name, height },
      places: [top.place],
      thresholds: ['reach.height', 'reach.sideways'],
    },
  ];
}
