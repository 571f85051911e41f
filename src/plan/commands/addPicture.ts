import { accept, type Outcome } from '../../base/fault.ts';
import type { Picture, Plan } from '../plan.ts';
import type { Added } from './addStructure.ts';
import { admitted } from './admitted.ts';
import { changed } from './changed.ts';
import { freshId, takenIds } from './freshId.ts';
import { freshName, takenNames } from './freshName.ts';
import { withRecord } from './withRecord.ts';

/** A picture that is not in a plan yet. */
export type PictureDraft = Omit<Picture, 'id' | 'name' | 'hidden' | 'locked'> & { readonly name?: string };

/**
 * Puts a picture into the plan, last in order. Its bytes are kept elsewhere, under their hash.
 * @returns refused where the file could not hold it
 */
export function addPicture(plan: Plan, draft: PictureDraft): Outcome<Added> {
  const id = freshId(takenIds(plan), 'picture-');
  const name = freshName(draft.name ?? 'Picture', takenNames(plan));
  const picture: Picture = { ...draft, id, name, hidden: false, locked: false };
  const checked = admitted(plan, {
    ...plan,
    pictures: { ...plan.pictures, [id]: picture },
    pictureOrder: [...plan.pictureOrder, id],
  });
  return checked.ok ? accept({ plan: checked.value, id }) : checked;
}

/**
 * Changes a picture: its use, its file, its name, whether it is hidden or locked.
 * @returns refused where the file could not hold it
 * @throws  RangeError on an unknown picture
 */
export function setPicture(plan: Plan, id: string, change: Partial<Omit<Picture, 'id'>>): Outcome<Plan> {
  const pictures = withRecord(plan.pictures, id, 'picture', (picture) => changed(picture, change));
  return pictures === plan.pictures ? accept(plan) : admitted(plan, { ...plan, pictures });
}
