import { sin, turn } from '../../base/angle.ts';
import { add, cross, dot, length, scale, subtract, type Vec2, type Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Plan } from '../../plan/plan.ts';
import type { SketchMark } from '../tools/chart.ts';
import type { Pointed } from '../tools/pointed.ts';
import { snap } from '../tools/snap.ts';
import { EAST_NORTH, headingOf } from '../tools/drawing/axes.ts';
import { snapAt } from '../tools/snapping/snapAt.ts';
import { pointAtLevel } from '../tools/snapping/workingPoint.ts';
import type { LinePull, PlanePull, Pull, TurnPull } from './pull.ts';

/** What a drag of a handle asks for. */
export interface Asked {
  readonly value: Vec2;
  /** What it snapped to; null for the grid or nothing. */
  readonly name: string | null;
  readonly marks: readonly SketchMark[];
}

/** A face seen under a flatter angle than this is not dragged, °. */
const FLATTEST = 7;
/** How near to a multiple of 15°, or to a neighbour's direction, a turn is drawn to it, °. */
const ANGLE_REACH = 2.5;

/**
 * The value that a drag from one place to another asks of a handle; null where its way is seen end-on.
 * @param plan the plan at the press, without what is held
 */
export function dragged(pull: Pull, plan: Plan, from: Pointed, to: Pointed, snapping: boolean): Asked | null {
  const free = to.free || !snapping;
  switch (pull.kind) {
    case 'line':
      return alongLine(pull, from, to, free);
    case 'turn':
      return aboutPoint(pull, from, to, free);
    case 'plane':
      return pull.ground
        ? overGround(plan, pull, pull.ground.before, to, snapping)
        : onPlane(pull, from, to, free);
  }
}

function alongLine(pull: LinePull, from: Pointed, to: Pointed, free: boolean): Asked | null {
  const [start, end] = [alongOf(pull, from), alongOf(pull, to)];
  if (start === null || end === null) return null;
  const { least, most } = pull.bounds;
  const { value, name } = snap(pull.value + end - start, pull.snaps, metresAlong(pull, to), free);
  return { value: [Math.min(most, Math.max(least, value)), 0], name, marks: [] };
}

/** How far along a line the point nearest to the pointer's ray lies; null where the two run nearly alike. */
function alongOf({ at, along }: Pick<LinePull, 'at' | 'along'>, { ray }: Pointed): number | null {
  const way = subtract(at, ray.from);
  const [far, lean] = [dot(ray.along, ray.along), dot(along, ray.along)];
  const apart = far - lean * lean;
  if (apart < far * sin(FLATTEST) ** 2) return null;
  return (dot(ray.along, way) * lean - dot(along, way) * far) / apart;
}

/** Metres of a line that one pixel covers there. */
function metresAlong(
  { at, along }: Pick<LinePull, 'at' | 'along'>,
  { screen, metresPerPixel }: Pointed,
): number {
  const [a, b] = [screen.place(at), screen.place(add(at, along))];
  const pixels = a && b ? Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
  return pixels > 1 ? 1 / pixels : metresPerPixel;
}

function aboutPoint(pull: TurnPull, from: Pointed, to: Pointed, free: boolean): Asked | null {
  const [start, end] = [pointAtLevel(from, pull.about[2]), pointAtLevel(to, pull.about[2])];
  if (!start || !end) return null;
  const about: Vec2 = [pull.about[0], pull.about[1]];
  const value = pull.value + turn(headingOf(about, start), headingOf(about, end));
  const fifteen = Math.round(value / 15) * 15;
  if (to.shift) return { value: [fifteen, 0], name: null, marks: [] };
  if (!free) {
    const off = (other: number): number => Math.abs(turn(other, value));
    const [best] = pull.parallels.toSorted((a, b) => off(a.value) - off(b.value));
    if (best && off(best.value) <= ANGLE_REACH)
      return { value: [value + turn(value, best.value), 0], name: best.name, marks: [] };
    if (off(fifteen) <= ANGLE_REACH) return { value: [fifteen, 0], name: null, marks: [] };
  }
  return { value: [Math.round(value * 10) / 10, 0], name: null, marks: [] };
}

/** Over level ground the whole plan attracts, at the height of what is held. */
function overGround(
  plan: Plan,
  { at }: PlanePull,
  before: readonly Vec2[],
  to: Pointed,
  snapping: boolean,
): Asked | null {
  const lift = at[2] - groundHeight(plan.ground);
  const chain = { corners: before, axes: EAST_NORTH };
  const ask = { plan, at: lowered(to, lift), snapping, chain, closes: false, held: null };
  const snapped = snapAt(ask);
  if (!snapped) return null;
  const marks = snapped.marks.map((mark) => ({ ...mark, at: add(mark.at, [0, 0, lift]) }));
  return { value: snapped.point, name: snapped.name, marks };
}

/** A pointer as it would be with the whole site so much lower: what lies at a height is then on the ground. */
const lowered = (at: Pointed, by: number): Pointed =>
  by === 0
    ? at
    : {
        ...at,
        ray: { ...at.ray, from: add(at.ray.from, [0, 0, 0 - by]) },
        screen: {
          ...at.screen,
          place: (point) => at.screen.place(add(point, [0, 0, by])),
          seen: (point) => at.screen.seen(add(point, [0, 0, by])),
        },
      };

function onPlane(pull: PlanePull, from: Pointed, to: Pointed, free: boolean): Asked | null {
  const [start, end] = [spotOn(pull, from), spotOn(pull, to)];
  if (!start || !end) return null;
  const run = subtract(end, start);
  const number = (axis: 0 | 1) =>
    snap(
      pull.value[axis] + dot(run, pull.axes[axis]),
      pull.snaps[axis],
      metresAlong({ at: pull.at, along: pull.axes[axis] }, to),
      free,
    );
  const [first, second] = [number(0), number(1)];
  // Shift keeps to the way that the pointer went farther.
  const across = Math.abs(dot(run, pull.axes[0])) >= Math.abs(dot(run, pull.axes[1]));
  const value: Vec2 = to.shift
    ? across
      ? [first.value, pull.value[1]]
      : [pull.value[0], second.value]
    : [first.value, second.value];
  return { value, name: [first.name, second.name].filter(Boolean).join(' · ') || null, marks: [] };
}

function spotOn({ at, axes }: PlanePull, { ray }: Pointed): Vec3 | null {
  const normal = cross(axes[0], axes[1]);
  const down = dot(ray.along, normal);
  if (Math.abs(down) < sin(FLATTEST) * length(ray.along)) return null;
  const t = dot(subtract(at, ray.from), normal) / down;
  return t > 0 ? add(ray.from, scale(ray.along, t)) : null;
}
