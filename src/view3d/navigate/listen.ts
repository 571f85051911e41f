import type { Model } from '../Model.ts';
import { keyPressed } from './keys.ts';
import { Pointers } from './Pointers.ts';
import { listenToWheel } from './wheel.ts';

export interface Listening {
  readonly pointers: Pointers;
  stop(): void;
}

/** Joins pointer, wheel and keys over an element to the Model. */
export function listenTo(element: HTMLElement, model: Model): Listening {
  const pointers = new Pointers(element, model);
  const stopWheel = listenToWheel(element, model);
  const keyed = (event: KeyboardEvent): void => {
    if (event.target !== element) return;
    modified(event);
    if (!keyPressed(event, model, pointers)) return;
    event.preventDefault();
    // What the Model used is not the window's as well.
    event.stopPropagation();
  };
  /** Shift and Ctrl change what is meant also while the pointer rests. */
  const modified = (event: KeyboardEvent): void => {
    if (!['Shift', 'Control', 'Meta'].includes(event.key) || event.repeat) return;
    const { tool, gesturing } = model.editor.store.getState();
    const shown = model.cursor.at !== null || model.pointer.getState().spot !== null;
    if (tool !== 'rest' && !gesturing && shown) model.toolbox.hover(model.pointedNow(event));
  };
  element.addEventListener('keydown', keyed);
  element.addEventListener('keyup', modified);
  return {
    pointers,
    stop: () => {
      element.removeEventListener('keydown', keyed);
      element.removeEventListener('keyup', modified);
      stopWheel();
      pointers.dispose();
    },
  };
}
