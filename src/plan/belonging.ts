import type { Fault } from '../base/fault.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import { faceTopAt, hostFaces } from '../model/faces.ts';
import { signedArea } from '../model/ring.ts';
import type { Building } from '../model/structure.ts';
import type { Plan } from './plan.ts';

/** Groups that name what is not there, or what another group has already. */
export function groupFaults(plan: Plan): readonly Fault[] {
  const owners = new Map<string, string>();
  return Object.values(plan.groups).flatMap(({ id, name, members }) =>
    members.flatMap((member, index) => {
      const path = ['groups', id, 'members', index];
      const isThere = [plan.structures, plan.cameras, plan.lamps].some((records) =>
        Object.hasOwn(records, member),
      );
      if (!isThere) return [{ code: 'group.noMember', path, given: member, subject: name }];
      const owner = owners.get(member);
      owners.set(member, name);
      return owner === undefined
        ? []
        : [{ code: 'group.shared', path, given: member, allowed: owner, subject: name }];
    }),
  );
}

/**
 * What is fixed to a wall that is not there, or lies past its end: points on walls and pictures of walls. Notes, since
 * the plan opens and they can be put elsewhere.
 */
export function fixedNotes(plan: Plan): readonly Fault[] {
  const points = Object.values(plan.structures).flatMap((structure) =>
    structure.kind === 'building' ? serviceNotes(structure) : [],
  );
  const pictures = Object.values(plan.pictures).flatMap(({ id, name, use }) => {
    if (use.kind !== 'wall') return [];
    const host = Object.hasOwn(plan.structures, use.structure) ? plan.structures[use.structure] : undefined;
    const walls = host?.kind === 'building' || host?.kind === 'block' ? host.outline.length : 0;
    if (use.face < walls) return [];
    return [{ code: 'picture.wall', path: ['pictures', id, 'use'], given: use.structure, subject: name }];
  });
  return [...points, ...pictures];
}

/** Points on the walls of a building whose wall is not there, or ends before them or below them. */
export function serviceNotes(building: Building): readonly Fault[] {
  const { id, outline, services, base } = building;
  if (services.length === 0) return [];
  const walls = hostFaces(building).filter(({ sort }) => sort === 'wall');
  // What cannot be built has no walls, and says so itself.
  if (walls.length === 0) return [];
  const isReversed = signedArea(outline) < 0;
  return services.flatMap((service, index): readonly Fault[] => {
    const note = (code: string, key: 'face' | 'along' | 'height', given: number, allowed: string) => [
      { code, path: ['structures', id, 'services', index, key], given, allowed, subject: service.name },
    ];
    const wall = walls.find(({ face }) => face === service.face);
    if (!wall) return note('service.face', 'face', service.face + 1, `a wall from 1 to ${outline.length}`);
    if (service.along > wall.width + SAME_POINT)
      return note('service.outside', 'along', service.along, `from 0 to ${metres(wall.width)}`);
    const top = faceTopAt(wall, isReversed ? wall.width - service.along : service.along) - base;
    return service.height > top + SAME_POINT
      ? note('service.outside', 'height', service.height, `from 0 to ${metres(top)}`)
      : [];
  });
}

const metres = (value: number): string => `${Math.round(value * 1000) / 1000} m`;
