/*
 * Source: tests/inputs/visibility, office-like right-angled polygons, MIT, from a public repository on guarding polygons.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Vec2 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { boxSolid } from '../../sight/boxSolid.ts';
import { TALL } from './allRound.ts';

export type Wall = readonly [from: Vec2, to: Vec2];

/** File and the first digits of its sha256, so that a change is noticed. */
export const OFFICES = [
  { file: 'office-simple_40_2.graphml', sha256: '797ece8afc04', walls: 44 },
  { file: 'office-general_80_1.graphml', sha256: '0784833314d9', walls: 80 },
] as const;

/**
 * The walls of a plan, outer ones and those of blocks within, in no order.
 * @throws Error where the file is not the one that was copied
 */
export function wallsOf({ file, sha256 }: (typeof OFFICES)[number]): readonly Wall[] {
  const text = readFileSync(path.join(import.meta.dirname, '../../inputs/visibility', file), 'utf8');
  if (!createHash('sha256').update(text).digest('hex').startsWith(sha256))
    throw new Error(`${file} has changed`);
  return [...text.matchAll(/<edge source="\(([^,]+), ([^)]+)\)" target="\(([^,]+), ([^)]+)\)"/g)].map(
    ([, a, b, c, d]): Wall => [
      [Number(a), Number(b)],
      [Number(c), Number(d)],
    ],
  );
}

/** Whether a point lies on the floor: an odd number of walls crosses a line eastwards. */
export const onFloor = (walls: readonly Wall[], [x, y]: Vec2): boolean =>
  walls.filter(
    ([from, to]) =>
      from[1] > y !== to[1] > y && x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0]),
  ).length %
    2 ===
  1;

/** Each wall a quarter of a metre thick, built outwards from its edge of the floor. */
export const builtWalls = (walls: readonly Wall[]): readonly Solid[] =>
  walls.map(([from, to], at) => {
    const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const upright = from[0] === to[0];
    const [nx, ny] = upright ? [1, 0] : [0, 1];
    const side = onFloor(walls, [x + nx * 0.01, y + ny * 0.01]) ? -1 : 1;
    const [width, depth] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
    return boxSolid(
      `wall-${at}`,
      [x + (side * nx) / 8, y + (side * ny) / 8, 0],
      [upright ? 0.25 : width, upright ? depth : 0.25, TALL],
    );
  });
