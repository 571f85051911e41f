import type { HostFace } from '../../../model/face.ts';
import { hostFaces } from '../../../model/faces.ts';
import type { Mount } from '../../../optics/mount.ts';
import type { Plan } from '../../../plan/plan.ts';

/** The face that carries a mount; null for a mount without one. */
export function faceOf(plan: Plan, mount: Mount): HostFace | null {
  if (!('host' in mount)) return null;
  const structure = plan.structures[mount.host];
  if (!structure) return null;
  const sort = mount.kind === 'soffit' ? 'soffit' : 'wall';
  return hostFaces(structure).find((face) => face.sort === sort && face.face === mount.face) ?? null;
}
