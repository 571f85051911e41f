import { faceOf } from '../../editor/tools/mount/faceOf.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';

/** Where a camera is, in a few words: "House, south wall". */
export function placeText(plan: Plan, { mount }: PlanCamera): string {
  if (mount.kind === 'pole') return 'On a pole';
  if (mount.kind === 'loose') return 'Fixed to nothing';
  const host = plan.structures[mount.host]?.name;
  if (host === undefined) return 'Lost its wall';
  if (mount.kind === 'corner') return `${host}, around a corner`;
  const face = faceOf(plan, mount)?.name.replace(/^Soffit over the /, '');
  return face === undefined ? host : `${host}, ${face.charAt(0).toLowerCase()}${face.slice(1)}`;
}
