import { useEffect, useLayoutEffect, useRef } from 'react';
import type { RefObject } from 'react';
import type { Vec2 } from '../../base/vector.ts';

/** What hands do with a picture; places are pixels of the upright picture. */
export interface PictureHands {
  /** A press that has become a drag; null where nothing can be dragged. */
  drag(from: Vec2): { to(at: Vec2, only: boolean): void; commit(): void; cancel(): void } | null;
  pick(at: Vec2): void;
  /** A key that nothing else took; tells whether it meant something. */
  key(event: KeyboardEvent): boolean;
  /** The lens is drawn out (more than 1) or in. */
  zoom(factor: number): void;
  /** Two fingers, from their press on: by how much they have come apart. */
  pinch(): { to(factor: number): void; commit(): void } | null;
}

/** A press is a drag once the pointer has gone so far, px; a finger wavers more. */
const [STILL, WAVERING] = [4, 9];
/** Growth for a pixel of the wheel. */
const NOTCH = 1.0012;

/** Listens to pointers and wheel over an element. @param scale pixels of the picture a CSS pixel */
export function usePictureHands(
  ref: RefObject<HTMLElement | null>,
  scale: number,
  hands: PictureHands,
): void {
  const now = useRef({ scale, hands });
  useLayoutEffect(() => {
    now.current = { scale, hands };
  });
  useEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const off = new AbortController();
    // An application takes keys, so it takes the focus.
    element.tabIndex = 0;
    listen(element, off.signal, () => now.current);
    return () => off.abort();
  }, [ref]);
}

interface Down {
  readonly from: Vec2;
  at: Vec2;
}

function listen(
  element: HTMLElement,
  signal: AbortSignal,
  now: () => { readonly scale: number; readonly hands: PictureHands },
): void {
  const down = new Map<number, Down>();
  let drag: ReturnType<PictureHands['drag']> = null;
  let pinch: { readonly apart: number; readonly held: ReturnType<PictureHands['pinch']> } | null = null;

  const on = (event: PointerEvent): Vec2 => {
    const box = element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const scaled = ([x, y]: Vec2): Vec2 => [x * now().scale, y * now().scale];
  const apart = (): number => {
    const [a, b] = [...down.values()];
    return a && b ? Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) : 1;
  };

  element.addEventListener(
    'pointerdown',
    (event) => {
      if (event.button !== 0 || (event.target instanceof Element && event.target.closest('button'))) return;
      element.focus({ preventScroll: true });
      element.setPointerCapture(event.pointerId);
      const at = on(event);
      down.set(event.pointerId, { from: at, at });
      if (down.size !== 2) return;
      drag?.cancel();
      drag = null;
      pinch = { apart: apart(), held: now().hands.pinch() };
    },
    { signal },
  );
  element.addEventListener(
    'pointermove',
    (event) => {
      const own = down.get(event.pointerId);
      if (!own) return;
      own.at = on(event);
      if (pinch) {
        pinch.held?.to(apart() / Math.max(1, pinch.apart));
        return;
      }
      const still = event.pointerType === 'mouse' ? STILL : WAVERING;
      if (!drag && Math.hypot(own.at[0] - own.from[0], own.at[1] - own.from[1]) > still)
        drag = now().hands.drag(scaled(own.from));
      drag?.to(scaled(own.at), event.shiftKey);
    },
    { signal },
  );
  const end = (event: PointerEvent, keep: boolean): void => {
    const own = down.get(event.pointerId);
    if (!own) return;
    down.delete(event.pointerId);
    if (pinch) {
      pinch.held?.commit();
      // The finger that stays begins nothing new.
      pinch = null;
      down.clear();
      return;
    }
    if (drag) {
      if (keep) drag.commit();
      else drag.cancel();
      drag = null;
    } else if (keep) now().hands.pick(scaled(own.from));
  };
  element.addEventListener('pointerup', (event) => end(event, true), { signal });
  element.addEventListener('pointercancel', (event) => end(event, false), { signal });
  element.addEventListener(
    'keydown',
    (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === 'Escape' && drag) {
        drag.cancel();
        drag = null;
        down.clear();
      } else if (!now().hands.key(event)) return;
      event.preventDefault();
      event.stopPropagation();
    },
    { signal },
  );
  element.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      now().hands.zoom(NOTCH ** -event.deltaY);
    },
    { signal, passive: false },
  );
}
