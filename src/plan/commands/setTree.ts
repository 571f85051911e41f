import { accept, type Outcome } from '../../base/fault.ts';
import type { Got, Structure, Tree, Vehicle } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { withStructure } from './withStructure.ts';

export type TreeChange = Partial<
  Pick<Tree, 'at' | 'base' | 'height' | 'crownRadius' | 'clear' | 'trunkDiameter' | 'inLeaf'>
>;
export type VehicleChange = Partial<
  Pick<Vehicle, 'sort' | 'at' | 'heading' | 'base' | 'length' | 'width' | 'height'>
>;

/** Which mark of `got` a measure falls under. */
const treeMarks = {
  at: 'at',
  height: 'height',
  crownRadius: 'crown',
  clear: 'crown',
  trunkDiameter: 'crown',
} as const;
const vehicleMarks = { at: 'at', heading: 'at', length: 'size', width: 'size', height: 'size' } as const;

/**
 * Moves a tree or gives it other measures, m.
 * @param how how they were got; left out (a drag), the marks stay
 * @returns   refused where the file could not hold them
 * @throws    RangeError where there is no such tree, or a number is not finite
 */
export const setTree = (plan: Plan, id: string, change: TreeChange, how?: Got): Outcome<Plan> =>
  settled(plan, id, (structure) => {
    if (structure.kind !== 'tree') throw new RangeError(`${id} is no tree`);
    return marked(changed<Tree>(structure, placeKept(structure, change)), change, treeMarks, how);
  });

/**
 * Moves or turns a vehicle, or gives it other measures, m and °.
 * @param how how they were got; left out (a drag), the marks stay
 * @returns   refused where the file could not hold them
 * @throws    RangeError where there is no such vehicle, or a number is not finite
 */
export const setVehicle = (plan: Plan, id: string, change: VehicleChange, how?: Got): Outcome<Plan> =>
  settled(plan, id, (structure) => {
    if (structure.kind !== 'vehicle') throw new RangeError(`${id} is no vehicle`);
    return marked(changed<Vehicle>(structure, placeKept(structure, change)), change, vehicleMarks, how);
  });

function settled(plan: Plan, id: string, change: (structure: Structure) => Structure): Outcome<Plan> {
  const next = withStructure(plan, id, change);
  return next === plan ? accept(plan) : admitted(plan, next);
}

/** The change with the very place that the thing has, where it is the same. */
const placeKept = <C extends { readonly at?: readonly [number, number] }>(
  { at }: { readonly at: readonly [number, number] },
  change: C,
): C => (change.at && change.at[0] === at[0] && change.at[1] === at[1] ? { ...change, at } : change);

function marked<T extends { readonly got: object }>(
  thing: T,
  change: object,
  marks: Readonly<Record<string, keyof T['got']>>,
  how: Got | undefined,
): T {
  if (how === undefined) return thing;
  const news: Record<string, Got> = {};
  for (const key of Object.keys(change)) {
    const mark = marks[key];
    if (mark !== undefined) news[String(mark)] = how;
  }
  const got: T['got'] = changed<object>(thing.got, news);
  return got === thing.got ? thing : { ...thing, got };
}
