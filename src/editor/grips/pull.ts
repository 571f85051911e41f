import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Got } from '../../model/structure.ts';
import type { StripField } from '../tools/chart.ts';
import type { Change } from '../shaping/attempt.ts';
import type { Candidate } from '../tools/snap.ts';

/** What a handle does to the plan: one number along a line, a place over the ground or on a face, or an angle. */
export type Pull = LinePull | PlanePull | TurnPull;

interface Common {
  /** The step as undo calls it: "Wall height of House". */
  readonly name: string;
}

/** One number, which follows the pointer along a line through `at`. */
export interface LinePull extends Common {
  readonly kind: 'line';
  readonly at: Vec3;
  /** Unit, towards which the number grows. */
  readonly along: Vec3;
  readonly label: string;
  readonly value: number;
  readonly bounds: { readonly least: number; readonly most: number };
  readonly snaps: readonly Candidate[];
  /** `how` it was got where it was typed; a drag leaves the mark as it was. */
  set(value: number, how?: Got): Change;
}

/** Two numbers: metres along two axes of the plane through `at`. */
export interface PlanePull extends Common {
  readonly kind: 'plane';
  readonly at: Vec3;
  /** Unit and square to one another; the numbers grow along them. */
  readonly axes: readonly [Vec3, Vec3];
  readonly labels: readonly [string, string];
  readonly value: Vec2;
  /** What attracts each number. */
  readonly snaps: readonly [readonly Candidate[], readonly Candidate[]];
  /** Over the ground the plan attracts, except what of it is held; lengths and right angles are from the corners before. */
  readonly ground: { readonly held: readonly string[]; readonly before: readonly Vec2[] } | null;
  set(value: Vec2, how?: Got): Change;
  /** The shape as asked, to be crossed out where it cannot be; null where nothing is drawn. */
  ghost(value: Vec2): { readonly points: readonly Vec3[]; readonly closed: boolean } | null;
}

/** An angle about an upright axis, °, clockwise from north. */
export interface TurnPull extends Common {
  readonly kind: 'turn';
  readonly about: Vec3;
  readonly label: string;
  /** The bearing that the thing has at the press: of a vehicle its heading, else 0. */
  readonly value: number;
  /** Turns at which it lies along something, °, as values. */
  readonly parallels: readonly { readonly value: number; readonly name: string }[];
  set(value: number, how?: Got): Change;
}

/** The strip's fields of a pull at a value. */
export function pullFields(pull: Pull, [first, second]: Vec2): readonly StripField[] {
  if (pull.kind === 'line') return [{ key: 'value', label: pull.label, value: first, measure: 'length' }];
  if (pull.kind === 'turn') return [{ key: 'value', label: pull.label, value: first, measure: 'angle' }];
  return [
    { key: 'value', label: pull.labels[0], value: first, measure: 'length' },
    { key: 'second', label: pull.labels[1], value: second, measure: 'length' },
  ];
}

/** The value of a pull at the press; the second number of a line or a turn is nought. */
export const valueOf = (pull: Pull): Vec2 => (pull.kind === 'plane' ? pull.value : [pull.value, 0]);

/** The change to a value. */
export const changeTo = (pull: Pull, value: Vec2, how?: Got): Change =>
  pull.kind === 'plane' ? pull.set(value, how) : pull.set(value[0], how);
