import { LEAST_SIZE } from '../../../base/tolerance.ts';
import type { Vec2 } from '../../../base/vector.ts';
import type { Compass } from '../chart.ts';
import { ahead, fourOf, walked } from './axes.ts';
import type { Draft } from './draft.ts';
import type { TypedSide } from './headed.ts';

/** How far a point lies from another across and up the working axes, m. */
function sidesTo(from: Vec2, to: Vec2, across: number, up: number): readonly [number, number] {
  const by: Vec2 = [to[0] - from[0], to[1] - from[1]];
  const on = ([x, y]: Vec2): number => by[0] * x + by[1] * y;
  return [on(ahead(across)), on(ahead(up))];
}

/** The four corners from one, so far across and so far up the working axes. */
function rectangleRing(
  from: Vec2,
  across: number,
  up: number,
  [wide, high]: readonly [number, number],
): readonly Vec2[] {
  const beside = walked(from, across, wide);
  return [from, beside, walked(beside, up, high), walked(from, up, high)];
}

/**
 * The rectangle between the first corner and the place that is meant; null where a side is shorter than 10 mm.
 * @param square both sides as long as the longer
 */
export function rectangleMeant({ corners, meant, axes }: Draft, square: boolean): readonly Vec2[] | null {
  const [first] = corners;
  if (!first || !meant) return null;
  const [up = 0, across = 90] = fourOf(axes);
  const [wide, high] = sidesTo(first, meant.point, across, up);
  const side = Math.max(Math.abs(wide), Math.abs(high));
  const sized = square
    ? ([Math.sign(wide) * side, Math.sign(high) * side] as const)
    : ([wide, high] as const);
  if (Math.abs(sized[0]) < LEAST_SIZE || Math.abs(sized[1]) < LEAST_SIZE) return null;
  return rectangleRing(first, across, up, sized);
}

/**
 * The rectangle of typed sides from the first corner: right and up positive; a side without a sign goes to the
 * pointer's quadrant, if it has moved.
 */
export function rectangleFrom(
  { corners, meant, moved, axes }: Draft,
  across: TypedSide,
  up: TypedSide,
  compass: Compass,
): readonly Vec2[] {
  const from = corners[0] ?? [0, 0];
  const four = fourOf(axes);
  const [right, upward] = [compass('right', four), compass('up', four)];
  const toPointer = meant && moved ? sidesTo(from, meant.point, right, upward) : [0, 0];
  const signed = ({ metres, explicit }: TypedSide, pointer: number): number =>
    !explicit && pointer < 0 ? -metres : metres;
  return rectangleRing(from, right, upward, [
    signed(across, toPointer[0] ?? 0),
    signed(up, toPointer[1] ?? 0),
  ]);
}
