import type { Mount } from '../../../optics/mount.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Nudge } from '../chart.ts';
import { faceOf } from './faceOf.ts';

const STEP = 0.01;
const LARGE = 0.1;

/**
 * A mount moved by a key: left and right along its wall as seen from outside, up and down in height; under a soffit up is
 * towards the wall; on the ground right is east and up is north.
 */
export function nudgeMount(plan: Plan, mount: Mount, way: Nudge, large: boolean): Mount {
  const size = large ? LARGE : STEP;
  const right = way === 'right' ? size : way === 'left' ? -size : 0;
  const up = way === 'up' ? size : way === 'down' ? -size : 0;
  const sum = (value: number, by: number): number => Math.round((value + by) * 1000) / 1000;
  const least = (value: number, by: number): number => Math.max(STEP, sum(value, by));
  switch (mount.kind) {
    case 'flush':
    case 'arm':
    case 'soffit': {
      const face = faceOf(plan, mount);
      // Seen from outside, a face may run either way.
      const { along, outward } = face ?? { along: [1, 0, 0], outward: [0, -1, 0] };
      const runsRight = along[1] * outward[0] - along[0] * outward[1] > 0;
      const moved = sum(mount.distance, (mount.corner === 'start') === runsRight ? right : -right);
      const distance = Math.min(face?.width ?? Infinity, Math.max(0, moved));
      if (mount.kind === 'soffit') {
        const inset = Math.min(face?.depth ?? Infinity, least(mount.inset, -up));
        return { ...mount, distance, inset };
      }
      return { ...mount, distance, height: least(mount.height, up) };
    }
    case 'corner':
      return { ...mount, height: least(mount.height, up) };
    case 'pole':
      return { ...mount, at: [sum(mount.at[0], right), sum(mount.at[1], up)] };
    case 'loose':
      return { ...mount, eye: [sum(mount.eye[0], right), sum(mount.eye[1], up), mount.eye[2]] };
  }
}
