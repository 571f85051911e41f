import type { HostFace } from '../../../model/face.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Candidate } from '../snap.ts';

/** What attracts a mount along its face: the middle, and the centres of the openings in it. */
export function alongCandidates(plan: Plan, face: HostFace): Candidate[] {
  const structure = plan.structures[face.structure];
  const openings =
    structure && 'openings' in structure ? structure.openings.filter((one) => one.face === face.face) : [];
  return [
    { value: face.width / 2, pixels: 10, name: 'middle' },
    ...openings.map(({ along, width, name }) => ({
      value: along + width / 2,
      pixels: 6,
      name: `centre of ${name}`,
    })),
  ];
}

/** What attracts a mount in height: the other cameras. */
export const heightCandidates = (plan: Plan, camera: string | null): Candidate[] =>
  plan.cameraOrder.flatMap((id) => {
    const other = plan.cameras[id];
    if (!other || id === camera || !('height' in other.mount)) return [];
    return [{ value: other.mount.height, pixels: 6, name: `height of ${other.name}` }];
  });
