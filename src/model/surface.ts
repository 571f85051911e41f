import type { Plane } from '../base/plane.ts';
import { cross, dot, subtract, unit, type Vec2, type Vec3 } from '../base/vector.ts';
import { faceTopAt, hostFaces } from './faces.ts';
import type { HostFace } from './face.ts';
import { signedArea } from './ring.ts';
import type { Solid } from './solid.ts';
import type { Structure } from './structure.ts';
import { namedAfter, windNames } from './wind.ts';

/**
 * A flat surface that coverage can be asked for: its plane, with u level and the normal outward, and simple rings that tile
 * it, counter-clockwise, in coordinates of the plane.
 */
export interface FlatSurface {
  readonly of: 'wall' | 'roof' | 'patch';
  /** Id of the structure or patch. */
  readonly owner: string;
  /** Number of the wall as mounts have it, or of the roof's face; 0 for a patch. */
  readonly face: number;
  /** "South wall", "Roof to the south". */
  readonly name: string;
  readonly plane: Plane;
  readonly rings: readonly (readonly Vec2[])[];
}

/** A plane through a point with a given upward or outward normal, u level (along x where the plane is level too). */
export function planeFacing(origin: Vec3, normal: Vec3): Plane {
  const n = unit(normal);
  const flat = Math.hypot(n[0], n[1]);
  const u: Vec3 = flat < 1e-9 ? [1, 0, 0] : [-n[1] / flat, n[0] / flat, 0];
  return { origin, u, v: cross(n, u), normal: n };
}

/** The walls of a structure as surfaces, openings in them included: what stands in front of an opening can be seen too. */
export const wallSurfaces = (structure: Structure): readonly FlatSurface[] =>
  hostFaces(structure)
    .filter(({ sort }) => sort === 'wall')
    .map(wallSurface);

function wallSurface(face: HostFace): FlatSurface {
  const plane = planeFacing(face.start, face.outward);
  // Seen from outside, the left-hand side of a barrier runs the other way.
  const sense = dot(plane.u, face.along) >= 0 ? 1 : -1;
  const top = face.topLine.map(([s]): Vec2 => [sense * s, faceTopAt(face, s) - face.start[2]]);
  const ring: readonly Vec2[] = [
    [sense * (face.topLine[0]?.[0] ?? 0), 0],
    [sense * (face.topLine.at(-1)?.[0] ?? face.width), 0],
    ...top.toReversed(),
  ];
  return {
    of: 'wall',
    owner: face.structure,
    face: face.face,
    name: face.name,
    plane,
    rings: [sense > 0 ? ring : ring.toReversed()],
  };
}

/** Faces steeper than this are walls, °; level faces and slopes below it are roof. */
const STEEPEST = 88;
const LEAST_RISE = Math.cos((STEEPEST * Math.PI) / 180);
/** A normal that rises more than this is that of a level roof. */
const LEVEL = 0.9999;

/** The upper faces over the walls of a structure, one a plane: a slope that a chimney parts is one. */
export function roofSurfaces(structure: Structure, solids: readonly Solid[]): readonly FlatSurface[] {
  const least = roofFoot(structure);
  if (least === null) return [];
  const found: { readonly plane: Plane; readonly rings: (readonly Vec2[])[] }[] = [];
  for (const solid of solids) {
    if (solid.passage !== 'solid') continue;
    for (let at = 0; at < solid.triangles.length; at += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => cornerOf(solid, solid.triangles[at + k] ?? 0));
      if (!a || !b || !c || Math.min(a[2], b[2], c[2]) < least - SAME_PLANE) continue;
      const normal = cross(subtract(b, a), subtract(c, a));
      const size = Math.hypot(...normal);
      if (!(size > 0) || normal[2] < LEAST_RISE * size) continue;
      const known = found.find(({ plane }) => liesIn(plane, [a, b, c]));
      const face = known ?? { plane: planeFacing(a, normal), rings: [] };
      if (!known) found.push(face);
      face.rings.push([a, b, c].map((corner) => inPlane(face.plane, corner)));
    }
  }
  const names = roofNames(found.map(({ plane }) => plane.normal));
  return found.map(({ plane, rings }, face) => ({
    of: 'roof',
    owner: structure.id,
    face,
    name: names[face] ?? '',
    plane,
    rings,
  }));
}

/** The height above which upper faces are roof, m: sills and steps are below it; null for what has no roof. */
function roofFoot(structure: Structure): number | null {
  switch (structure.kind) {
    case 'building':
    case 'block':
      return structure.base + structure.height;
    case 'canopy':
      return structure.top;
    default:
      return null;
  }
}

function roofNames(normals: readonly Vec3[]): string[] {
  const sloped = normals.filter(({ 2: up }) => up < LEVEL);
  const winds = windNames(sloped.map(([x, y]): Vec2 => [x, y]));
  let level = 0;
  return normals.map((normal) => {
    if (normal[2] < LEVEL) return namedAfter(winds[sloped.indexOf(normal)] ?? '', 'roof slope');
    level += 1;
    return level === 1 ? 'Level roof' : `Level roof ${level}`;
  });
}

/** A polygon over ground lifted onto a sloped plane. */
interface Slope {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Vec2[];
  /** Height of the plane at the first corner, m. */
  readonly base: number;
  /** ° above level, towards `rises` (bearing, °). */
  readonly pitch: number;
  readonly rises: number;
}

/** A named sloped patch, such as a drive, as a surface. */
export function patchSurface({ id, name, outline, base, pitch, rises }: Slope): FlatSurface {
  const [rad, way] = [(pitch * Math.PI) / 180, (rises * Math.PI) / 180];
  const normal: Vec3 = [-Math.sin(rad) * Math.sin(way), -Math.sin(rad) * Math.cos(way), Math.cos(rad)];
  const [first] = outline;
  const origin: Vec3 = [first?.[0] ?? 0, first?.[1] ?? 0, base];
  const plane = planeFacing(origin, normal);
  const ring = outline.map(([x, y]): Vec2 => {
    const [dx, dy] = [x - origin[0], y - origin[1]];
    return inPlane(plane, [x, y, base - (normal[0] * dx + normal[1] * dy) / normal[2]]);
  });
  const upright = signedArea(ring) >= 0 ? ring : ring.toReversed();
  return { of: 'patch', owner: id, face: 0, name, plane, rings: [upright] };
}

const cornerOf = ({ positions }: Solid, corner: number): Vec3 => [
  positions[3 * corner] ?? 0,
  positions[3 * corner + 1] ?? 0,
  positions[3 * corner + 2] ?? 0,
];

/** Faces of one plane differ in the last digits of their corners only. */
const SAME_PLANE = 1e-6;

const liesIn = ({ origin, normal }: Plane, corners: readonly Vec3[]): boolean =>
  corners.every((corner) => Math.abs(dot(normal, subtract(corner, origin))) < SAME_PLANE);

const inPlane = ({ origin, u, v }: Plane, point: Vec3): Vec2 => {
  const away = subtract(point, origin);
  return [dot(u, away), dot(v, away)];
};
