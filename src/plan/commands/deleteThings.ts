import type { Vec3 } from '../../base/vector.ts';
import type { Plan } from '../plan.ts';
import { deleteThing } from './deleteThing.ts';
import { setBoundary } from './setBoundary.ts';
import { removeOpening } from './setOpening.ts';
import { removeService } from './setService.ts';
import type { Removable } from './thing.ts';

/**
 * Takes several things out of the plan. Cameras on deleted structures stay, loose, unless they are among the things; what
 * goes with its structure (an opening in its wall, a picture of it) may be named too.
 * @param eyes where the lens of each hosted camera is, by id
 * @throws     RangeError where the plan has no such thing
 */
export function deleteThings(
  plan: Plan,
  things: readonly Removable[],
  eyes: Readonly<Record<string, Vec3>>,
): Plan {
  const gone = new Set(things.flatMap((thing) => (thing.kind === 'structure' ? [thing.id] : [])));
  return things.reduce((next, thing) => {
    switch (thing.kind) {
      case 'boundary':
        return setBoundary(next, null);
      case 'opening':
        return gone.has(thing.on) ? next : removeOpening(next, thing.on, thing.id);
      case 'service':
        return gone.has(thing.on) ? next : removeService(next, thing.on, thing.id);
      case 'picture':
      case 'group':
        return goesAlong(plan, next, thing.kind, thing.id) ? next : deleteThing(next, thing, eyes);
      default:
        return deleteThing(next, thing, eyes);
    }
  }, plan);
}

/** Whether something was in the plan and is gone with what was deleted before it. */
function goesAlong(plan: Plan, next: Plan, kind: 'picture' | 'group', id: string): boolean {
  const [was, is] = kind === 'picture' ? [plan.pictures, next.pictures] : [plan.groups, next.groups];
  return Object.hasOwn(was, id) && !Object.hasOwn(is, id);
}
