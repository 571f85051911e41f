import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { clearPlace } from './clearPlace.ts';
import { rectsOver } from './rectsOver.ts';

/** Keeps a row over the Model clear of the pointer and of what else lies there. Returns how to stop. */
export function keepClear(element: HTMLElement, model: Model): () => void {
  const frame = element.parentElement ?? element;
  let last: Spot | null = null;
  let asked = false;
  const place = (): void => {
    // Nothing moves under what is being typed, and an empty row is nowhere.
    if (element.dataset['shown'] !== 'true' || element.contains(document.activeElement)) return;
    const size = { width: element.offsetWidth, height: element.offsetHeight };
    // What asks is there to be pointed at: it keeps clear where it comes up, and then it stays.
    const asks = element.dataset['asks'] === 'true';
    const { spot } = model.pointer.getState();
    last = clearPlace(size, model.view, rectsOver(frame), asks && asked ? null : spot, last);
    asked = asks;
    element.style.transform = `translate(${Math.round(last.x)}px, ${Math.round(last.y)}px)`;
  };
  const resized = new ResizeObserver(place);
  resized.observe(element);
  resized.observe(frame);
  const stops = [
    model.pointer.subscribe(place),
    model.view.subscribe(place),
    // The keypad comes up under it: once it is there.
    model.typing.store.subscribe(({ pad }, before) => {
      if (pad !== before.pad) requestAnimationFrame(place);
    }),
  ];
  return () => {
    resized.disconnect();
    for (const stop of stops) stop();
  };
}
