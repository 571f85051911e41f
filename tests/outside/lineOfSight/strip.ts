import type { Vec2 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';

/**
 * A closed solid between two lines of as many points, drawn in a plane and carried along the axis square to it.
 * @param place where a point (a, b) of the drawing lies at `along`
 */
export function strip(
  id: string,
  near: readonly Vec2[],
  far: readonly Vec2[],
  [from, to]: readonly [number, number],
  place: (a: number, b: number, along: number) => readonly [number, number, number],
): Solid {
  const ring = [...near, ...far.toReversed()];
  const count = ring.length;
  const positions = [from, to].flatMap((along) => ring.flatMap(([a, b]) => place(a, b, along)));
  const triangles: number[] = [];
  // Four corners of a side, in the order of the ring below and above.
  const quad = (a: number, b: number, c: number, d: number): void => void triangles.push(a, b, c, a, c, d);
  ring.forEach((_, at) => {
    const next = (at + 1) % count;
    quad(at, next, count + next, count + at);
  });
  for (let at = 0; at + 1 < near.length; at += 1) {
    const [other, after] = [count - 1 - at, count - 2 - at];
    quad(at, other, after, at + 1);
    quad(count + at, count + at + 1, count + after, count + other);
  }
  const made = {
    id,
    structure: id,
    name: id,
    passage: 'solid' as const,
    positions: Float64Array.from(positions),
  };
  const solid = { ...made, triangles: Uint32Array.from(triangles) };
  // Ways of drawing differ in sense: the side with a positive volume is outwards.
  return volume(solid) > 0 ? solid : { ...made, triangles: Uint32Array.from(triangles.toReversed()) };
}

function volume({ positions, triangles }: Pick<Solid, 'positions' | 'triangles'>): number {
  const corner = (at: number): readonly [number, number, number] => {
    const from = (triangles[at] ?? 0) * 3;
    return [positions[from] ?? 0, positions[from + 1] ?? 0, positions[from + 2] ?? 0];
  };
  let six = 0;
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [corner(at), corner(at + 1), corner(at + 2)];
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) -
      a[1] * (b[0] * c[2] - b[2] * c[0]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}
