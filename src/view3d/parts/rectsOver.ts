import type { Plate } from '../../draw/labelPlaces.ts';
import type { Rect } from './clearPlace.ts';

/** Numbers on the model: nothing else may cover them, but they give way to one another by themselves. */
const NUMBERS = '[data-dimension]';

/**
 * What lies over the Model at present, by its own attribute: each part of whatever carries `data-over`, and the drawer. Nothing that the
 * Model places by itself may cover these.
 */
export function rectsOver(model: Element, numbers = true): readonly Rect[] {
  const origin = model.getBoundingClientRect();
  const around = model.closest('main') ?? model.parentElement ?? model;
  const parts = around.querySelectorAll<HTMLElement>(`[data-over] > *${numbers ? `, ${NUMBERS}` : ''}`);
  const drawer = document.querySelectorAll<HTMLElement>('[data-drawer="true"]');
  return [...parts, ...drawer].flatMap((part) => {
    if (part.style.visibility === 'hidden') return [];
    const { left, top, width, height } = part.getBoundingClientRect();
    return width > 1 && height > 1
      ? [{ left: left - origin.left, top: top - origin.top, width, height }]
      : [];
  });
}

/** The same as boxes that no label may run under. */
export const platesOver = (model: Element | null): readonly Plate[] =>
  model === null
    ? []
    : rectsOver(model).map(({ left, top, width, height }) => ({
        x: left + width / 2,
        y: top + height / 2,
        width,
        height,
        angle: 0,
      }));
