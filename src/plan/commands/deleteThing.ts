import type { Vec3 } from '../../base/vector.ts';
import type { Plan, PlanCamera } from '../plan.ts';
import { forgetting } from './forgetting.ts';
import { mapped } from './mapped.ts';
import type { Thing } from './thing.ts';
import { withoutMembers } from './withoutMembers.ts';
import { withoutRecord } from './withRecord.ts';

/**
 * Takes a thing out of the plan. Cameras on a deleted structure stay, loose, at their present eye; pictures of its walls
 * go with it. Of a group only the bond goes, and a group that has nothing left in it goes too.
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
      return withoutMembers(
        { ...plan, cameras: withoutRecord(plan.cameras, id), cameraOrder: rest(plan.cameraOrder) },
        [id],
      );
    case 'lamp':
      return withoutMembers(
        { ...plan, lamps: withoutRecord(plan.lamps, id), lampOrder: rest(plan.lampOrder) },
        [id],
      );
    case 'patch':
      return { ...plan, patches: withoutRecord(plan.patches, id), patchOrder: rest(plan.patchOrder) };
    case 'situation':
      return {
        ...plan,
        situations: withoutRecord(plan.situations, id),
        situationOrder: rest(plan.situationOrder),
      };
    case 'picture':
      return { ...plan, pictures: withoutRecord(plan.pictures, id), pictureOrder: rest(plan.pictureOrder) };
    case 'group':
      return { ...plan, groups: withoutRecord(plan.groups, id), groupOrder: rest(plan.groupOrder) };
    case 'structure':
      return withoutMembers(withoutStructure(plan, id, eyes), [id]);
  }
}

function recordsOf(plan: Plan, kind: Thing['kind']): object {
  return {
    structure: plan.structures,
    camera: plan.cameras,
    lamp: plan.lamps,
    patch: plan.patches,
    situation: plan.situations,
    picture: plan.pictures,
    group: plan.groups,
  }[kind];
}

function withoutStructure(plan: Plan, id: string, eyes: Readonly<Record<string, Vec3>>): Plan {
  const structure = plan.structures[id];
  const openings =
    structure && 'openings' in structure ? structure.openings.map((opening) => opening.id) : [];
  return {
    ...withoutWallPictures(plan, id),
    structures: withoutRecord(plan.structures, id),
    structureOrder: plan.structureOrder.filter((other) => other !== id),
    cameras: mapped(plan.cameras, (camera) => loosened(camera, id, eyes)),
    situations: mapped(plan.situations, (situation) => forgetting(situation, id, openings)),
  };
}

function withoutWallPictures(plan: Plan, structure: string): Plan {
  const isOnIt = (id: string): boolean => {
    const use = plan.pictures[id]?.use;
    return use?.kind === 'wall' && use.structure === structure;
  };
  const gone = plan.pictureOrder.filter(isOnIt);
  return gone.reduce((next, id) => deleteThing(next, { kind: 'picture', id }, {}), plan);
}

function loosened(camera: PlanCamera, host: string, eyes: Readonly<Record<string, Vec3>>): PlanCamera {
  if (!('host' in camera.mount) || camera.mount.host !== host || !Object.hasOwn(eyes, camera.id))
    return camera;
  const eye = eyes[camera.id];
  return eye ? { ...camera, mount: { kind: 'loose', eye } } : camera;
}
