import type { Structure } from '../../model/structure.ts';
import { mapped } from '../commands/mapped.ts';
import type { Plan, PlanCamera } from '../plan.ts';
import { carried } from '../reshape/carried.ts';
import type { Motion } from './motion.ts';
import { mirroredEdges } from './movedStructure.ts';

/** Puts what is fixed to mirrored structures where the mirror has it: what was on the left is on the right. */
export function fixedToMirrored(
  plan: Plan,
  before: Plan['structures'],
  ids: ReadonlySet<string>,
  motion: Motion,
): Plan {
  let next = plan;
  for (const id of ids) {
    const [was, is] = [before[id], plan.structures[id]];
    if (!was || !is) continue;
    if (was.kind === 'barrier') next = { ...next, cameras: mapped(next.cameras, (c) => otherSide(c, was)) };
    const edges = mirroredEdges(was, motion);
    if (!edges) continue;
    // Of a ring run round the other way every edge and corner is still there, so that nothing is refused.
    const moved = carried({ ...next, structures: before }, was, edges);
    if (!moved.ok) throw new RangeError(`${id} cannot be mirrored: ${moved.faults[0]?.code}`);
    const { cameras, pictures, structures } = moved.value;
    next = {
      ...next,
      cameras,
      pictures,
      structures: { ...next.structures, [id]: withParts(is, structures[id]) },
    };
  }
  return next;
}

/** A mirrored structure with its openings and points on walls where they belong on it. */
function withParts(structure: Structure, carriedOne: Structure | undefined): Structure {
  if (structure.kind !== 'building' || carriedOne?.kind !== 'building') return structure;
  return { ...structure, openings: carriedOne.openings, services: carriedOne.services };
}

/** A camera on the left of a barrier is on its right now: its line is kept as it was drawn. */
function otherSide(camera: PlanCamera, barrier: Extract<Structure, { kind: 'barrier' }>): PlanCamera {
  const { mount } = camera;
  if (!('host' in mount) || mount.host !== barrier.id) return camera;
  const edges = barrier.closed ? barrier.line.length : barrier.line.length - 1;
  if (mount.face >= 2 * edges) return camera;
  const face = mount.face < edges ? mount.face + edges : mount.face - edges;
  return { ...camera, mount: { ...mount, face } };
}
