import type { Board } from '../../assess/scene.ts';
import type { Solid } from '../../model/solid.ts';

/** How thick the baseboard is drawn, m. */
export const BOARD_EDGE = 0.34;

/** The baseboard under the site, as a box from the ground downwards. */
export function boardSolid({ left, bottom, right, top }: Board, ground: number): Solid {
  const low = ground - BOARD_EDGE;
  const positions = [low, ground].flatMap((z) => [
    left,
    bottom,
    z,
    right,
    bottom,
    z,
    right,
    top,
    z,
    left,
    top,
    z,
  ]);
  const sides = [0, 1, 2, 3].flatMap((i) => {
    const next = (i + 1) % 4;
    return [i, next, next + 4, i, next + 4, i + 4];
  });
  return {
    id: 'baseboard',
    structure: '',
    name: 'Baseboard',
    passage: 'solid',
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from([...sides, 0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7]),
  };
}
