import type { Passage } from '../../src/model/passage.ts';
import type { Solid } from '../../src/model/solid.ts';

/** An upright box turned by `turn` degrees about its middle. */
export function boxSolid(
  id: string,
  [x, y, z]: readonly [number, number, number],
  [width, depth, height]: readonly [number, number, number],
  turn = 0,
  passage: Passage = 'solid',
): Solid {
  const [s, c] = [Math.sin((turn * Math.PI) / 180), Math.cos((turn * Math.PI) / 180)];
  const ring = [
    [-width / 2, -depth / 2],
    [width / 2, -depth / 2],
    [width / 2, depth / 2],
    [-width / 2, depth / 2],
  ] as const;
  const at = (level: number) => ring.flatMap(([a, b]) => [x + c * a - s * b, y + s * a + c * b, level]);
  const quad = (a: number, b: number, e: number, f: number) => [a, b, e, a, e, f];
  return {
    id,
    structure: id,
    name: id,
    passage,
    positions: Float64Array.from([...at(z), ...at(z + height)]),
    triangles: Uint32Array.from([
      ...quad(3, 2, 1, 0),
      ...quad(4, 5, 6, 7),
      ...quad(0, 1, 5, 4),
      ...quad(1, 2, 6, 5),
      ...quad(2, 3, 7, 6),
      ...quad(3, 0, 4, 7),
    ]),
  };
}

/** A random yard of boxes, the same for the same numbers. */
export function randomYard(next: () => number, count: number, screens = 0): Solid[] {
  return Array.from({ length: count }, (_, at) =>
    boxSolid(
      `box-${at}`,
      [next() * 30 - 15, next() * 30 - 15, next() < 0.2 ? next() * 2 : 0],
      [0.05 + next() * 5, 0.05 + next() * 5, 0.2 + next() * 4],
      next() < 0.5 ? 0 : next() * 360,
      at < screens ? 'screen' : 'solid',
    ),
  );
}
