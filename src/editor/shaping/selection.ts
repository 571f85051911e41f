import type { Vec2 } from '../../base/vector.ts';
import type { Movable } from '../../plan/commands/thing.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { groundCornersOf } from '../grips/shapeOf.ts';
import { nameOfSelected } from '../recordsOf.ts';

/** A selection with the members of its groups in their place, each once. */
export function expanded(plan: Plan, selection: readonly Selected[]): readonly Selected[] {
  const seen = new Set<string>();
  return selection
    .flatMap((thing) => (thing.kind === 'group' ? membersOf(plan, thing.id) : [thing]))
    .filter((thing) => {
      const key = 'id' in thing ? `${thing.kind} ${thing.id}` : thing.kind;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}

function membersOf(plan: Plan, group: string): Selected[] {
  const members = Object.hasOwn(plan.groups, group) ? plan.groups[group]?.members : undefined;
  return (members ?? []).flatMap((id): Selected[] => {
    if (Object.hasOwn(plan.structures, id)) return [{ kind: 'structure', id }];
    if (Object.hasOwn(plan.cameras, id)) return [{ kind: 'camera', id }];
    return Object.hasOwn(plan.lamps, id) ? [{ kind: 'lamp', id }] : [];
  });
}

/** What of a selection has a place of its own, for the commands that move things. */
export const thingsOf = (plan: Plan, selection: readonly Selected[]): readonly Movable[] =>
  expanded(plan, selection).flatMap((thing): Movable[] => {
    switch (thing.kind) {
      case 'structure':
      case 'camera':
      case 'lamp':
      case 'patch':
      case 'picture':
        return [{ kind: thing.kind, id: thing.id }];
      case 'boundary':
        return [{ kind: 'boundary' }];
      default:
        return [];
    }
  });

/** Whether a thing is locked; what has no lock is not. */
export function isLocked(plan: Plan, thing: Selected): boolean {
  switch (thing.kind) {
    case 'structure':
      return plan.structures[thing.id]?.locked ?? false;
    case 'camera':
      return plan.cameras[thing.id]?.locked ?? false;
    case 'picture':
      return plan.pictures[thing.id]?.locked ?? false;
    case 'opening':
    case 'service':
      return plan.structures[thing.on]?.locked ?? false;
    default:
      return false;
  }
}

/** "Garage", "Garage and Van", "4 things": what a step on a selection is called. */
export function wordsFor(plan: Plan, selection: readonly Selected[]): string {
  const names = selection.map((thing) => nameOfSelected(plan, thing) ?? 'something');
  return names.length <= 2 ? names.join(' and ') : `${names.length} things`;
}

/** Corners over ground of everything selected that stands somewhere. */
export const cornersSelected = (plan: Plan, selection: readonly Selected[]): readonly Vec2[] =>
  expanded(plan, selection).flatMap((thing): readonly Vec2[] => {
    switch (thing.kind) {
      case 'structure': {
        const structure = own(plan.structures, thing.id);
        return structure ? groundCornersOf(structure) : [];
      }
      case 'patch':
        return own(plan.patches, thing.id)?.outline ?? [];
      case 'lamp': {
        const lamp = own(plan.lamps, thing.id);
        return lamp ? [lamp.at] : [];
      }
      case 'camera': {
        const mount = own(plan.cameras, thing.id)?.mount;
        if (mount?.kind === 'pole') return [mount.at];
        return mount?.kind === 'loose' ? [[mount.eye[0], mount.eye[1]]] : [];
      }
      case 'boundary':
        return plan.boundary ?? [];
      default:
        return [];
    }
  });

const own = <T>(records: Readonly<Record<string, T>>, id: string): T | undefined =>
  Object.hasOwn(records, id) ? records[id] : undefined;
