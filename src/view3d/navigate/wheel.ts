import type { Model } from '../Model.ts';
import { slideByPixels, turnByDrag, zoomBy } from './moves.ts';
import { pinchZoom, wheelKind, wheelZoom, type Burst } from './wheelKind.ts';

/** Wheel, trackpad and pinch on the Model. Returns how to stop. */
export function listenToWheel(element: HTMLElement, model: Model): () => void {
  let burst: Burst | null = null;
  const act = (event: WheelEvent): void => {
    event.preventDefault();
    const turn = {
      deltaX: event.deltaX,
      deltaY: event.deltaY,
      deltaMode: event.deltaMode,
      ctrlKey: event.ctrlKey,
      time: event.timeStamp,
    };
    const pageZoom =
      window.outerWidth > 0 && window.innerWidth > 0 ? window.outerWidth / window.innerWidth : 1;
    burst = wheelKind(turn, burst, Math.min(5, Math.max(0.25, pageZoom)));
    const { view } = model;
    const { left, top } = element.getBoundingClientRect();
    const at = model.pointed({ x: event.clientX - left, y: event.clientY - top }, event);
    const about = model.pivotFor(at.struck?.point ?? null);
    if (burst.kind === 'wheel') zoomBy(view, about, wheelZoom(turn));
    else if (burst.kind === 'pinch') zoomBy(view, about, pinchZoom(turn));
    else if (event.shiftKey) turnByDrag(view, about, -turn.deltaX, -turn.deltaY);
    else slideByPixels(view, turn.deltaX, turn.deltaY);
  };
  element.addEventListener('wheel', act, { passive: false });
  return () => element.removeEventListener('wheel', act);
}
