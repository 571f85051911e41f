import { useEffect } from 'react';
import type { RefObject } from 'react';

/** How a drawing lies under its window: px a metre, and the t at its left edge. */
export interface Lie {
  readonly scale: number;
  readonly left: number;
}

/** How far in and out the wheel goes, px a metre. */
const [LEAST_SCALE, MOST_SCALE] = [2, 200];
/** Growth for a pixel of the wheel. */
const NOTCH = 1.0015;

/** Dragging empty paper slides a drawing, the wheel zooms about the pointer, a double click lets it lie as at first. */
export function useSlideZoom(
  ref: RefObject<SVGSVGElement | null>,
  { scale, left }: Lie,
  move: (lie: Lie | null) => void,
): void {
  useEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const off = new AbortController();
    const { signal } = off;
    // React's own wheel listener is passive: the page would scroll too.
    element.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault();
        const x = event.clientX - element.getBoundingClientRect().left;
        const next = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, scale * NOTCH ** -event.deltaY));
        move({ scale: next, left: left + x / scale - x / next });
      },
      { passive: false, signal },
    );
    element.addEventListener(
      'pointerdown',
      (event) => {
        const held = event.target instanceof Element && event.target.closest('[data-held]') !== null;
        if (event.button !== 0 || held) return;
        element.setPointerCapture(event.pointerId);
        slideFrom(element, event.clientX, { scale, left }, move);
      },
      { signal },
    );
    element.addEventListener('dblclick', () => move(null), { signal });
    return () => off.abort();
  }, [ref, scale, left, move]);
}

/** Follows one drag to its end, whatever is drawn anew meanwhile. */
function slideFrom(element: SVGSVGElement, x: number, { scale, left }: Lie, move: (lie: Lie) => void): void {
  const off = new AbortController();
  const { signal } = off;
  element.addEventListener(
    'pointermove',
    (event) => move({ scale, left: left - (event.clientX - x) / scale }),
    { signal },
  );
  for (const end of ['pointerup', 'pointercancel', 'lostpointercapture'] as const)
    element.addEventListener(end, () => off.abort(), { signal });
}
