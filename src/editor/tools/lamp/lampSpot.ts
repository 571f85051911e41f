import type { Vec3 } from '../../../base/vector.ts';
import type { LengthUnit } from '../../../base/length.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Lamp, Plan } from '../../../plan/plan.ts';
import type { Selected } from '../../editor.ts';
import { keyedSpot } from '../camera/keyedSpot.ts';
import type { Nudge } from '../chart.ts';
import { placeWords } from '../placeWords.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';

/** Where a lamp would hang; `height` above the ground, m. */
export type LampSpot = Pick<Lamp, 'at' | 'height'>;

/** Off the wall that carries it, and the lowest that a lamp hangs, m. */
const OFF_WALL = 0.1;
const LEAST = 0.1;
/** Beside a door: common practice, no source. */
const FIRST_HEIGHT = 2.4;
const STEP = 0.1;
const LARGE = 1;

const cm = (value: number): number => Math.round(value * 100) / 100;

/**
 * The spot for a lamp under a pointer: on a wall where it points, on a post of `height` over the ground, or null where there
 * is neither.
 */
export function lampSpot(plan: Plan, { struck }: Pointed, height = FIRST_HEIGHT): LampSpot | null {
  if (!struck) return null;
  const [x, y, z] = struck.point;
  // Over ground that is not flat the height of a wall's spot above the ground beside it is not known here.
  const onWall = struck.structure !== null && plan.ground.kind === 'flat' && Math.abs(struck.normal[2]) < 0.5;
  if (!onWall) return { at: [cm(x), cm(y)], height };
  const [nx, ny] = struck.normal;
  return {
    at: [cm(x + nx * OFF_WALL), cm(y + ny * OFF_WALL)],
    height: Math.max(LEAST, cm(z - groundHeight(plan.ground))),
  };
}

/** A spot to begin from without a pointer: beside the wall on which a first camera would hang. */
export function keyedLamp(plan: Plan, selected: Selected | null): LampSpot {
  const wall = keyedSpot(plan, selected, 'flush');
  const [x, y] = wall.fits ? wall.eye : [0, 0];
  return { at: [cm(x), cm(y)], height: FIRST_HEIGHT };
}

/** A spot moved by an arrow key: right is east, up is north. */
export function nudged({ at, height }: LampSpot, way: Nudge, large: boolean): LampSpot {
  const size = large ? LARGE : STEP;
  const east = way === 'right' ? size : way === 'left' ? -size : 0;
  const north = way === 'up' ? size : way === 'down' ? -size : 0;
  return { at: [cm(at[0] + east), cm(at[1] + north)], height };
}

/** "5.03 east · 0.15 south · 2.40 up" */
export const lampWords = ({ at, height }: LampSpot, unit: LengthUnit): string =>
  `${placeWords(at, unit)} · ${lengthWords(height, unit)} up`;

/** Where a lamp hangs in the site, over flat ground. */
export const lampEye = (plan: Plan, { at, height }: LampSpot): Vec3 => [
  at[0],
  at[1],
  groundHeight(plan.ground) + height,
];
