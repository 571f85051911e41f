import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { Lack } from './caution.ts';
import { thresholdOf } from './thresholds.ts';

/** What a plan does not say, so that some cautions about a camera cannot be told: none of them is an all-clear. */
export function lacksOf(
  plan: Plan,
  { mount, infrared, exposure, housing, sheet }: PlanCamera,
): readonly Lack[] {
  const host = 'host' in mount ? plan.structures[mount.host] : undefined;
  const hasNight = infrared !== null || Object.values(plan.situations).some(({ night }) => night);
  const isIn = host?.kind === 'building' && mount.kind !== 'soffit';
  const lacks: readonly (readonly [Lack, boolean])[] = [
    ['requirements', plan.requirementOrder.length === 0],
    ['night', !hasNight],
    ['origin', plan.origin === null],
    ['boundary', plan.boundary === null],
    ['housing', housing === null],
    ['exposure', exposure === null],
    ['focus', sheet.focusDistance === null],
    ['imagesPerSecond', sheet.imagesPerSecond === null],
    ['floors', isIn && host.floors.length === 0],
    ['thickness', isIn && host.wallThickness === null],
    ['budget', !(thresholdOf(plan.settings, 'power.budget') > 0)],
  ];
  return lacks.flatMap(([lack, is]) => (is ? [lack] : []));
}
