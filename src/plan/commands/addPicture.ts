import type { Picture, Plan } from '../plan.ts';
import { freshId, takenIds } from './freshId.ts';

/**
 * Adds a picture, last in order, under an id of its own. Its bytes are kept elsewhere, under `file.sha`.
 * @returns the plan and the id
 */
export function addPicture(
  plan: Plan,
  picture: Omit<Picture, 'id' | 'hidden' | 'locked'>,
): { readonly plan: Plan; readonly id: string } {
  const id = freshId(takenIds(plan), 'p');
  const whole: Picture = { ...picture, id, hidden: false, locked: false };
  return {
    id,
    plan: {
      ...plan,
      pictures: { ...plan.pictures, [id]: whole },
      pictureOrder: [...plan.pictureOrder, id],
    },
  };
}
