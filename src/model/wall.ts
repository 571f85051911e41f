import type { Vec2, Vec3 } from '../base/vector.ts';
import { heading, moved } from './segment.ts';
import type { Shell } from './shell.ts';

/** A rectangle cut out of a wall: metres along it, heights above z = 0. One that begins at the wall's foot is open below. */
export interface Cut {
  readonly from: number;
  readonly to: number;
  readonly foot: number;
  readonly head: number;
}

/** The corner ids of a cut: low at its start, low at its end, high at its end, high at its start. */
export type CutCorners = readonly [lowStart: number, lowEnd: number, highEnd: number, highStart: number];

/**
 * Adds an upright face from `a` to `b`, outside on the right.
 * @param top   the line along its top, from above `b` back to above `a`
 * @param cuts  apart from one another and from the face's ends and top
 * @returns     the corners of each cut, in the order given; their other sides are still open
 */
export function addWall(
  shell: Shell,
  a: Vec2,
  b: Vec2,
  foot: number,
  top: readonly Vec3[],
  cuts: readonly Cut[] = [],
): CutCorners[] {
  if (cuts.length === 0) {
    shell.face(wallLoop(shell, a, b, foot, top, []));
    return [];
  }
  const along = heading(a, b);
  const at = (s: number, z: number): number => shell.corner(a[0] + along[0] * s, a[1] + along[1] * s, z);
  const made = cuts.map((cut) => ({
    cut,
    corners: [
      at(cut.from, cut.foot),
      at(cut.to, cut.foot),
      at(cut.to, cut.head),
      at(cut.from, cut.head),
    ] as const,
  }));
  const notches = made
    .filter(({ cut }) => cut.foot === foot)
    .sort((p, q) => p.cut.from - q.cut.from)
    .flatMap(({ corners: [lowStart, lowEnd, highEnd, highStart] }) => [lowStart, highStart, highEnd, lowEnd]);
  const holes = made
    .filter(({ cut }) => cut.foot !== foot)
    .map(({ corners: [lowStart, lowEnd, highEnd, highStart] }) => [lowStart, highStart, highEnd, lowEnd]);
  shell.face(wallLoop(shell, a, b, foot, top, notches), ...holes);
  return made.map(({ corners }) => corners);
}

/** The outer loop of a wall: along its foot, in and out of its notches, and back along its top. */
function wallLoop(
  shell: Shell,
  a: Vec2,
  b: Vec2,
  foot: number,
  top: readonly Vec3[],
  notches: readonly number[],
): number[] {
  const loop = [shell.corner(a[0], a[1], foot), ...notches, shell.corner(b[0], b[1], foot)];
  for (const [x, y, z] of top) {
    const id = shell.corner(x, y, z);
    if (id !== loop[loop.length - 1]) loop.push(id);
  }
  return loop;
}

/** The level top of a wall. */
export const levelTop = (a: Vec2, b: Vec2, z: number): readonly Vec3[] => [
  [b[0], b[1], z],
  [a[0], a[1], z],
];

/** Joins a cut in one face to the matching cut behind it: jambs, head, and sill unless it stands on the foot. */
export function addReveal(shell: Shell, front: CutCorners, back: CutCorners, onFoot: boolean): void {
  const [f0, f1, f2, f3] = front;
  const [b0, b1, b2, b3] = back;
  shell.face([f3, f0, b0, b3]);
  shell.face([f1, f2, b2, b1]);
  shell.face([f2, f3, b3, b2]);
  if (!onFoot) shell.face([f0, f1, b1, b0]);
}

/** Makes a cut a recess: a back face `depth` inwards, and the reveal between. */
export function addRecess(
  shell: Shell,
  front: CutCorners,
  inwards: Vec2,
  depth: number,
  onFoot: boolean,
): void {
  const behind = (id: number): number => {
    const [x, y] = moved([shell.x(id), shell.y(id)], inwards, depth);
    return shell.corner(x, y, shell.z(id));
  };
  const back: CutCorners = [behind(front[0]), behind(front[1]), behind(front[2]), behind(front[3])];
  shell.face(back);
  addReveal(shell, front, back, onFoot);
}
