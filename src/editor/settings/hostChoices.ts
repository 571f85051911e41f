import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import type { Structure, StructureKind } from '../../model/structure.ts';
import type { Plan } from '../../plan/plan.ts';

const HOSTS: ReadonlySet<StructureKind> = new Set(['building', 'barrier', 'canopy', 'block']);

/** Structures that a camera can be fixed to, in the order of the plan. */
export const hostsOf = (plan: Plan): readonly Structure[] =>
  plan.structureOrder.flatMap((id) => {
    const structure = plan.structures[id];
    return structure && HOSTS.has(structure.kind) ? [structure] : [];
  });

/** The faces of a structure that a mount can be fixed to: walls, or the soffits under eaves. */
export function facesOf(plan: Plan, host: string, sort: HostFace['sort']): readonly HostFace[] {
  const structure = plan.structures[host];
  return structure ? hostFaces(structure).filter((face) => face.sort === sort) : [];
}
