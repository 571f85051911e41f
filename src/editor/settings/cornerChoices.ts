import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import type { CornerMount } from '../../optics/mount.ts';
import { moveMount } from '../../plan/commands/moveMount.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { facesOf } from './hostChoices.ts';

/** A corner that a bracket can go around: the face that begins there, and the two walls that meet. */
export interface CornerChoice {
  readonly face: number;
  /** "south wall, east wall" */
  readonly walls: string;
}

/** The outer corners of what carries a corner mount, as high as that is. */
export function cornersOf(plan: Plan, mount: CornerMount): readonly CornerChoice[] {
  return facesOf(plan, mount.host, 'wall').flatMap(({ face }): readonly CornerChoice[] => {
    const placed = placeMount({ ...mount, face }, plan.structures, groundHeight(plan.ground));
    const told = placed.ok ? /^Corner of the (.+) and the (.+) of /.exec(placed.value.host ?? '') : null;
    const [, one, other] = told ?? [];
    return one !== undefined && other !== undefined ? [{ face, walls: `${one}, ${other}` }] : [];
  });
}

/** The plan with a camera around another corner of its host. */
export const moveToCorner = (plan: Plan, { id }: PlanCamera, face: number): Plan =>
  moveMount(plan, id, { face });
