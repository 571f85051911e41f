import type { Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import type { Movable } from '../commands/thing.ts';
import { emptyPlan } from '../emptyPlan.ts';
import { chosen } from '../motion/movedThings.ts';
import type { Plan } from '../plan.ts';

/** Things taken out of a plan, to be put into another or into the same once more. */
export interface Bundle {
  /** A plan that holds nothing but them. */
  readonly plan: Plan;
  /** Where the lens of each camera is whose structure is not among them. */
  readonly eyes: Readonly<Record<string, Vec3>>;
}

/**
 * Things as a bundle: with structures what is in and on their walls, and the groups that are wholly among them. The site
 * boundary is left out, since a plan has one.
 * @throws RangeError where the plan has no such thing
 */
export function bundleOf(plan: Plan, things: readonly Movable[]): Bundle {
  const ids = chosen(plan, things);
  const isMember = (id: string): boolean => ids.structure.has(id) || ids.camera.has(id) || ids.lamp.has(id);
  const groups = plan.groupOrder.filter((id) => plan.groups[id]?.members.every(isMember));
  const pictures = plan.pictureOrder.filter((id) => {
    const use = plan.pictures[id]?.use;
    return ids.picture.has(id) || (use?.kind === 'wall' && ids.structure.has(use.structure));
  });
  const inSet = (order: readonly string[], set: ReadonlySet<string>) => order.filter((id) => set.has(id));
  const orders = {
    structureOrder: inSet(plan.structureOrder, ids.structure),
    cameraOrder: inSet(plan.cameraOrder, ids.camera),
    lampOrder: inSet(plan.lampOrder, ids.lamp),
    patchOrder: inSet(plan.patchOrder, ids.patch),
    groupOrder: groups,
    pictureOrder: pictures,
  };
  const eyes = orders.cameraOrder.flatMap((id) => {
    const mount = plan.cameras[id]?.mount;
    if (!mount || !('host' in mount) || ids.structure.has(mount.host)) return [];
    const placed = placeMount(mount, plan.structures, groundHeight(plan.ground));
    return placed.ok ? [[id, placed.value.eye] as const] : [];
  });
  return {
    plan: {
      ...emptyPlan('copied', 'Copied things'),
      ...orders,
      structures: picked(plan.structures, orders.structureOrder),
      cameras: picked(plan.cameras, orders.cameraOrder),
      lamps: picked(plan.lamps, orders.lampOrder),
      patches: picked(plan.patches, orders.patchOrder),
      groups: picked(plan.groups, orders.groupOrder),
      pictures: picked(plan.pictures, orders.pictureOrder),
      credits: plan.credits,
    },
    eyes: Object.fromEntries(eyes),
  };
}

const picked = <T>(records: Readonly<Record<string, T>>, ids: readonly string[]): Record<string, T> =>
  Object.fromEntries(Object.entries(records).filter(([id]) => ids.includes(id)));

/** Everything of a bundle that has a place of its own, structures first; a picture of a wall among them goes with it. */
export const thingsOf = ({ plan }: Bundle): readonly Movable[] => [
  ...plan.structureOrder.map((id): Movable => ({ kind: 'structure', id })),
  ...plan.patchOrder.map((id): Movable => ({ kind: 'patch', id })),
  ...plan.lampOrder.map((id): Movable => ({ kind: 'lamp', id })),
  ...plan.cameraOrder.map((id): Movable => ({ kind: 'camera', id })),
  ...plan.pictureOrder.flatMap((id): Movable[] => {
    const use = plan.pictures[id]?.use;
    const goesAlong = use?.kind === 'wall' && Object.hasOwn(plan.structures, use.structure);
    return goesAlong ? [] : [{ kind: 'picture', id }];
  }),
];
