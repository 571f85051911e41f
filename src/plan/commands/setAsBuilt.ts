import type { Plan } from '../plan.ts';
import { withCamera } from './withCamera.ts';

/**
 * Notes on a camera's drill card how it was built; an empty text takes the note away.
 * @param field id of the field of the card
 * @throws RangeError on an unknown camera
 */
export function setAsBuilt(plan: Plan, id: string, field: string, text: string): Plan {
  return withCamera(plan, id, (camera) => {
    const { asBuilt } = camera.card;
    if ((asBuilt[field] ?? '') === text) return camera;
    const { [field]: _, ...others } = asBuilt;
    const next = text === '' ? others : { ...others, [field]: text };
    return { ...camera, card: { ...camera.card, asBuilt: next } };
  });
}
