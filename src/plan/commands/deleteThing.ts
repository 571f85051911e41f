import type { Vec3 } from '../../base/vector.ts';
import type { Plan, PlanCamera, Situation } from '../plan.ts';
import type { Thing } from './thing.ts';
import { withoutRecord } from './withRecord.ts';

/**
 * Takes a thing out of the plan. Cameras on a deleted structure stay, loose, at their present eye.
 * @param eyes where the lens of each hosted camera is, by id, as the scene's cameras tell; one that is not among them
 *             (its mount never worked) keeps its mount and waits for another wall
 * @throws     RangeError where the plan has no such thing
 */
export function deleteThing(plan: Plan, { kind, id }: Thing, eyes: Readonly<Record<string, Vec3>>): Plan {
  const records = recordsOf(plan, kind);
  if (!Object.hasOwn(records, id)) throw new RangeError(`the plan has no ${kind} ${id}`);
  const rest = (order: readonly string[]) => order.filter((other) => other !== id);
  switch (kind) {
    case 'camera':
      return { ...plan, cameras: withoutRecord(plan.cameras, id), cameraOrder: rest(plan.cameraOrder) };
    case 'lamp':
      return { ...plan, lamps: withoutRecord(plan.lamps, id), lampOrder: rest(plan.lampOrder) };
    case 'patch':
      return { ...plan, patches: withoutRecord(plan.patches, id), patchOrder: rest(plan.patchOrder) };
    case 'situation':
      return {
        ...plan,
        situations: withoutRecord(plan.situations, id),
        situationOrder: rest(plan.situationOrder),
      };
    case 'structure':
      return withoutStructure(plan, id, eyes);
  }
}

function recordsOf(plan: Plan, kind: Thing['kind']): object {
  const { structures, cameras, lamps, patches, situations } = plan;
  return { structure: structures, camera: cameras, lamp: lamps, patch: patches, situation: situations }[kind];
}

function withoutStructure(plan: Plan, id: string, eyes: Readonly<Record<string, Vec3>>): Plan {
  const structure = plan.structures[id];
  const openings =
    structure && 'openings' in structure ? structure.openings.map((opening) => opening.id) : [];
  return {
    ...plan,
    structures: withoutRecord(plan.structures, id),
    structureOrder: plan.structureOrder.filter((other) => other !== id),
    cameras: mapped(plan.cameras, (camera) => loosened(camera, id, eyes)),
    situations: mapped(plan.situations, (situation) => forgetting(situation, id, openings)),
  };
}

function loosened(camera: PlanCamera, host: string, eyes: Readonly<Record<string, Vec3>>): PlanCamera {
  if (!('host' in camera.mount) || camera.mount.host !== host || !Object.hasOwn(eyes, camera.id))
    return camera;
  const eye = eyes[camera.id];
  return eye ? { ...camera, mount: { kind: 'loose', eye } } : camera;
}

function forgetting(situation: Situation, id: string, openings: readonly string[]): Situation {
  const leaves = Object.entries(situation.leaves).filter(([opening]) => !openings.includes(opening));
  const away = situation.away.filter((other) => other !== id);
  if (away.length === situation.away.length && leaves.length === Object.keys(situation.leaves).length)
    return situation;
  return { ...situation, away, leaves: Object.fromEntries(leaves) };
}

/** A record with its values changed; the same record where no value changed. */
function mapped<T>(
  record: Readonly<Record<string, T>>,
  change: (value: T) => T,
): Readonly<Record<string, T>> {
  const entries = Object.entries(record).map(([key, value]) => [key, change(value)] as const);
  return entries.some(([key, value]) => value !== record[key]) ? Object.fromEntries(entries) : record;
}
