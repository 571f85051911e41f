import { accept, refuse, type Fault, type Outcome } from '../../base/fault.ts';
import type { Structure } from '../../model/structure.ts';
import { mapped, mappedList } from '../commands/mapped.ts';
import type { Picture, Plan, PlanCamera } from '../plan.ts';
import { carriedMount } from './carriedMount.ts';
import { carriedAlong } from './carriedAlong.ts';
import { chainOf, withCorners } from './chainOf.ts';
import type { Reshaped } from './reshaped.ts';

/**
 * The plan with a structure on new corners, and with it what is fixed to its edges: openings, points on walls, cameras and
 * pictures keep their distance to the corner from which they are measured, on the edge that theirs became. What has no
 * edge left, or stands where a corner would be, is a fault: the change is refused.
 * @throws RangeError on a structure without corners
 */
export function carried(plan: Plan, structure: Structure, reshaped: Reshaped): Outcome<Plan> {
  const chain = chainOf(structure);
  if (!chain) throw new RangeError(`a ${structure.kind} has no corners`);
  const faults: Fault[] = [];
  const taken = <T>(outcome: Outcome<T>, otherwise: T): T => {
    if (outcome.ok) return outcome.value;
    faults.push(...outcome.faults);
    return otherwise;
  };
  const next = withParts(structure, reshaped, taken);
  const cameras = mapped(plan.cameras, (camera): PlanCamera => {
    const { mount } = camera;
    if (!('host' in mount) || mount.host !== structure.id) return camera;
    const moved = taken(carriedMount(mount, camera.name, structure, next, reshaped), mount);
    return moved === mount ? camera : { ...camera, mount: moved };
  });
  const pictures = mapped(plan.pictures, (picture): Picture => {
    const { use } = picture;
    if (use.kind !== 'wall' || use.structure !== structure.id || use.face >= reshaped.parts.length)
      return picture;
    const { face, along } = taken(carriedAlong(use, picture.name, reshaped, true), use);
    if (face === use.face && along === use.along && !reshaped.reversed) return picture;
    const [one, two, three, four] = use.corners;
    // Where the wall is turned over, so is what is seen of it.
    const corners = reshaped.reversed ? ([two, one, four, three] as const) : use.corners;
    return { ...picture, use: { ...use, face, along, corners } };
  });
  if (faults.length > 0) return refuse(...faults);
  return accept({ ...plan, structures: { ...plan.structures, [next.id]: next }, cameras, pictures });
}

function withParts(
  structure: Structure,
  reshaped: Reshaped,
  taken: <T>(outcome: Outcome<T>, otherwise: T) => T,
): Structure {
  const moved = withCorners(structure, reshaped.corners);
  const placed = <T extends { readonly name: string; readonly face: number; readonly along: number }>(
    part: T,
  ): T => {
    if (part.face >= reshaped.parts.length) return part;
    const { face, along } = taken(carriedAlong(part, part.name, reshaped), part);
    return face === part.face && along === part.along ? part : { ...part, face, along };
  };
  if (moved.kind === 'barrier') return { ...moved, openings: mappedList(moved.openings, placed) };
  if (moved.kind !== 'building') return moved;
  return {
    ...moved,
    openings: mappedList(moved.openings, placed),
    services: mappedList(moved.services, placed),
  };
}
