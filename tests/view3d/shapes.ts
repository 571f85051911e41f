import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';

/** A box from its lowest to its highest corner. */
export function box(id: string, low: Vec3, high: Vec3): Solid {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) => [
    i & 1 ? high[0] : low[0],
    i & 2 ? high[1] : low[1],
    i & 4 ? high[2] : low[2],
  ]);
  return {
    id,
    structure: id,
    name: id,
    passage: 'solid',
    positions: Float64Array.from(corners),
    triangles: Uint32Array.of(
      0,
      2,
      3,
      0,
      3,
      1,
      4,
      5,
      7,
      4,
      7,
      6,
      0,
      1,
      5,
      0,
      5,
      4,
      1,
      3,
      7,
      1,
      7,
      5,
      3,
      2,
      6,
      3,
      6,
      7,
      2,
      0,
      4,
      2,
      4,
      6,
    ),
  };
}

/** An upright prism over a regular polygon. */
export function prism(id: string, sides: number, radius: number, height: number): Solid {
  const ring = Array.from({ length: sides }, (_, i) => {
    const turnRad = (2 * Math.PI * i) / sides;
    return [radius * Math.cos(turnRad), radius * Math.sin(turnRad)] as const;
  });
  const positions = [0, height].flatMap((z) => ring.flatMap(([x, y]) => [x, y, z]));
  const walls = ring.flatMap((_, i) => {
    const next = (i + 1) % sides;
    return [i, next, sides + next, i, sides + next, sides + i];
  });
  const caps = Array.from({ length: sides - 2 }, (_, i) => [
    0,
    i + 2,
    i + 1,
    sides,
    sides + i + 1,
    sides + i + 2,
  ]).flat();
  return {
    id,
    structure: id,
    name: id,
    passage: 'solid',
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from([...walls, ...caps]),
  };
}
