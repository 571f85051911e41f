import { dot, subtract, type Vec2, type Vec3 } from '../../base/vector.ts';
import type { FlatSurface } from '../../model/surface.ts';
import type { Structure } from '../../model/structure.ts';
import { pointOn } from '../planeFrame.ts';

const key = ([a, b]: Vec2): string => `${a.toFixed(4)},${b.toFixed(4)}`;

/** The edges of a surface that no two of its rings share, as segments relative to an origin: six numbers each. */
export function outlineOf({ plane, rings }: FlatSurface, origin: Vec3): number[] {
  const sides = rings.flatMap((ring) =>
    ring.map((from, k): readonly [Vec2, Vec2] => [from, ring[(k + 1) % ring.length] ?? from]),
  );
  const known = new Set(sides.map(([from, to]) => `${key(from)} ${key(to)}`));
  return sides
    .filter(([from, to]) => !known.has(`${key(to)} ${key(from)}`))
    .flatMap(([from, to]) => [...placed(from), ...placed(to)]);

  function placed([a, b]: Vec2): Vec3 {
    return subtract(pointOn(plane, a, b), origin);
  }
}

/** The openings of a wall as they are drawn over its wash, as segments relative to an origin. */
export function openingsOn(
  { of, owner, face, plane }: FlatSurface,
  structures: Structures,
  origin: Vec3,
): number[] {
  const structure = structures[owner];
  if (of !== 'wall' || structure?.kind !== 'building') return [];
  const { outline, base } = structure;
  const [from, to] = [outline[face], outline[(face + 1) % outline.length]];
  if (!from || !to) return [];
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const at = (along: number, z: number): Vec3 => {
    const share = along / size;
    const site: Vec3 = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]), z];
    const away = subtract(site, plane.origin);
    return subtract(pointOn(plane, dot(away, plane.u), dot(away, plane.v)), origin);
  };
  return structure.openings
    .filter((opening) => opening.face === face)
    .flatMap(({ along, width, sill, height }) => {
      const [left, right, low, high] = [along, along + width, base + sill, base + sill + height];
      const corners = [at(left, low), at(right, low), at(right, high), at(left, high)];
      return corners.flatMap((corner, k) => [...corner, ...(corners[(k + 1) % 4] ?? corner)]);
    });
}

type Structures = Readonly<Record<string, Structure>>;
