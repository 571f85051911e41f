import { setGround } from '../../plan/commands/setGround.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { wordsFor } from '../shaping/selection.ts';
import { cornerPull, edgePull } from './cornerPull.ts';
import type { Grip } from './grip.ts';
import { gripsOf } from './gripsOf.ts';
import { openingPull } from './openingPull.ts';
import { picturePull } from './picturePull.ts';
import type { LinePull, Pull } from './pull.ts';
import { sizePull } from './sizePull.ts';
import { headingPull, turnPull } from './turnPull.ts';

/** What a handle of the selection does; null where the plan has no such handle. */
export function pullOf(plan: Plan, selection: readonly Selected[], grip: Grip): Pull | null {
  const placed = gripsOf(plan, selection).find((one) => sameGrip(one.grip, grip));
  switch (grip.part) {
    case 'turn':
      return turnPull(plan, selection, wordsFor(plan, selection));
    case 'boundary':
      return cornerPull(plan, 'boundary', grip.index);
    case 'spot':
      return spotPull(plan, grip.index);
    case 'corner':
      return cornerPull(plan, grip.structure, grip.index);
    case 'edge':
      return edgePull(plan, grip.structure, grip.index);
    case 'picture': {
      const picture = Object.hasOwn(plan.pictures, grip.picture) ? plan.pictures[grip.picture] : undefined;
      return picture ? picturePull(plan, picture, grip.point) : null;
    }
    case 'body':
      return null;
    default:
      break;
  }
  const structure = plan.structures[grip.structure];
  if (!structure || !placed) return null;
  switch (grip.part) {
    case 'heading':
      return structure.kind === 'vehicle' ? headingPull(plan, structure) : null;
    case 'opening': {
      const openings = 'openings' in structure ? structure.openings : [];
      const opening = openings.find(({ id }) => id === grip.opening);
      return opening ? openingPull(structure, opening, grip.side, placed) : null;
    }
    default:
      return sizePull(plan, structure, grip.part, placed);
  }
}

/** Whether two handles are the same one. */
export const sameGrip = (a: Grip, b: Grip): boolean => JSON.stringify(a) === JSON.stringify(b);

function spotPull({ ground }: Plan, index: number): LinePull | null {
  const spot = ground.kind === 'spots' ? ground.spots[index] : undefined;
  if (!spot) return null;
  return {
    kind: 'line',
    name: `Spot height ${index + 1}`,
    at: [spot.at[0], spot.at[1], spot.height],
    along: [0, 0, 1],
    label: 'Height',
    value: spot.height,
    bounds: LIMITS.level,
    snaps: [],
    set: (height) => (plan) =>
      plan.ground.kind === 'spots'
        ? setGround(plan, {
            ...plan.ground,
            spots: plan.ground.spots.map((other, k) =>
              k === index ? { ...other, height, got: 'measured' } : other,
            ),
          })
        : plan,
  };
}
