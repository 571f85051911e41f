import type { Plan } from '../plan.ts';
import type { Thing } from './thing.ts';

/** The list that gives the order of each kind. */
const orders = {
  structure: 'structureOrder',
  camera: 'cameraOrder',
  lamp: 'lampOrder',
  patch: 'patchOrder',
  situation: 'situationOrder',
  picture: 'pictureOrder',
  group: 'groupOrder',
} as const satisfies Readonly<Record<Thing['kind'], keyof Plan>>;

/**
 * Puts a thing at a place in the order of its kind, from 0; past either end is the end.
 * @throws RangeError where the plan has no such thing, or the place is no whole number
 */
export function reorder(plan: Plan, { kind, id }: Thing, place: number): Plan {
  if (!Number.isInteger(place)) throw new RangeError(`places are counted, got ${place}`);
  const list = orders[kind];
  const order: readonly string[] = plan[list];
  const from = order.indexOf(id);
  if (from < 0) throw new RangeError(`the plan has no ${kind} ${id}`);
  const rest = order.filter((other) => other !== id);
  const to = Math.min(rest.length, Math.max(0, place));
  return to === from ? plan : { ...plan, [list]: [...rest.slice(0, to), id, ...rest.slice(to)] };
}
