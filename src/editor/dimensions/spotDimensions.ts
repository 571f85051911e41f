import { setGround } from '../../plan/commands/setGround.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import { dimension, type Dimension } from './dimension.ts';

/** The height of the ground: where it is flat, or at each spot. */
export function spotDimensions({ ground }: Plan): readonly Dimension[] {
  if (ground.kind === 'grid') return [];
  if (ground.kind === 'flat')
    return [
      dimension({
        key: 'height',
        label: 'Height',
        measure: 'length',
        value: ground.height,
        bounds: LIMITS.level,
        between: null,
        change: (height) => (plan) => setGround(plan, { kind: 'flat', height }),
      }),
    ];
  return ground.spots.map(({ at, height }, index) =>
    dimension({
      key: `spot ${index}`,
      label: `Spot ${index + 1}`,
      measure: 'length',
      value: height,
      bounds: LIMITS.level,
      between: [
        [at[0], at[1], 0],
        [at[0], at[1], height],
      ],
      change: (next) => (plan) =>
        plan.ground.kind === 'spots'
          ? setGround(plan, {
              ...plan.ground,
              spots: plan.ground.spots.map((spot, k) =>
                k === index ? { ...spot, height: next, got: 'measured' } : spot,
              ),
            })
          : plan,
    }),
  );
}
