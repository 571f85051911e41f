import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { isVariantOf } from './trial.ts';

/** The plan with other settings of one camera beside it, as cameras of their own. */
export const planWith = (plan: Plan, variants: readonly PlanCamera[]): Plan =>
  variants.length === 0
    ? plan
    : {
        ...plan,
        cameras: { ...plan.cameras, ...Object.fromEntries(variants.map((one) => [one.id, one])) },
        cameraOrder: [...plan.cameraOrder, ...variants.map(({ id }) => id)],
      };

/** What a change of the plan with its variants comes to: the plan's own part, and the variants. */
export interface Parted {
  /** The very plan where nothing of its own changed. */
  readonly plan: Plan;
  readonly variants: readonly PlanCamera[];
}

/**
 * Takes a changed plan with variants apart again.
 * @param next   after the change
 * @param before the plan with variants that was changed
 * @param plan   the same without them
 */
export function parted(next: Plan, before: Plan, plan: Plan, of: string): Parted {
  const variants = next.cameraOrder.flatMap((id) => (isVariantOf(of, id) ? (next.cameras[id] ?? []) : []));
  if (next === before) return { plan, variants };
  const own = ownCameras(next, plan, of);
  const rest = { ...next, cameras: plan.cameras, cameraOrder: plan.cameraOrder };
  const isSame = own === plan.cameras && sameParts(rest, { ...before, ...cameraParts(plan) });
  const order = next.cameraOrder.filter((id) => !isVariantOf(of, id));
  const cameraOrder = sameList(order, plan.cameraOrder) ? plan.cameraOrder : order;
  return {
    plan: isSame && cameraOrder === plan.cameraOrder ? plan : { ...next, cameras: own, cameraOrder },
    variants,
  };
}

const cameraParts = ({ cameras, cameraOrder }: Plan) => ({ cameras, cameraOrder });

function ownCameras(next: Plan, { cameras }: Plan, of: string): Plan['cameras'] {
  const own = Object.entries(next.cameras).filter(([id]) => !isVariantOf(of, id));
  const isSame =
    own.length === Object.keys(cameras).length && own.every(([id, camera]) => cameras[id] === camera);
  return isSame ? cameras : Object.fromEntries(own);
}

function sameParts(one: Plan, two: Plan): boolean {
  const other = new Map<string, unknown>(Object.entries(two));
  return Object.entries(one).every(([key, value]) => other.get(key) === value);
}

const sameList = (one: readonly string[], two: readonly string[]): boolean =>
  one.length === two.length && one.every((id, at) => id === two[at]);
