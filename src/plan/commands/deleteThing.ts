import type { Vec3 } from '../../base/vector.ts';
import type { Plan, PlanCamera, Situation } from '../plan.ts';
import type { Thing } from './thing.ts';

/**
 * Takes a structure or a camera out of the plan. Cameras on a deleted structure stay, loose, at their present eye.
 * @param eyes where the lens of each hosted camera is, by id, as the scene's cameras tell; one that is not among them
 *             (its mount never worked) keeps its mount and waits for another wall
 * @throws     RangeError where the plan has no such thing
 */
export function deleteThing(plan: Plan, { kind, id }: Thing, eyes: Readonly<Record<string, Vec3>>): Plan {
  const things = kind === 'camera' ? plan.cameras : plan.structures;
  if (!Object.hasOwn(things, id)) throw new RangeError(`the plan has no ${kind} ${id}`);
  if (kind === 'camera')
    return {
      ...plan,
      cameras: without(plan.cameras, id),
      cameraOrder: plan.cameraOrder.filter((other) => other !== id),
    };

  const structure = plan.structures[id];
  const openings =
    structure && 'openings' in structure ? structure.openings.map((opening) => opening.id) : [];
  return {
    ...plan,
    structures: without(plan.structures, id),
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

const without = <T>(record: Readonly<Record<string, T>>, id: string): Readonly<Record<string, T>> =>
  Object.fromEntries(Object.entries(record).filter(([key]) => key !== id));

/** A record with its values changed; the same record where no value changed. */
function mapped<T>(
  record: Readonly<Record<string, T>>,
  change: (value: T) => T,
): Readonly<Record<string, T>> {
  const entries = Object.entries(record).map(([key, value]) => [key, change(value)] as const);
  return entries.some(([key, value]) => value !== record[key]) ? Object.fromEntries(entries) : record;
}
