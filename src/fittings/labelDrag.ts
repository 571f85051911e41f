import { useEffect, useRef } from 'react';
import type { PointerEvent } from 'react';
import type { Bounds, NumberDrag, NumberEdit } from './edit.ts';
import { stepped } from './fieldWords.ts';

const PIXELS_A_STEP = 4;

interface Held {
  readonly pointer: number;
  readonly from: number;
  readonly value: number;
  drag: NumberDrag | null;
}

/** Lets a number be dragged sideways on its label, 4 px a step, Shift ten steps; Esc restores. */
export function useLabelDrag(value: number, step: number, bounds: Bounds, edit: NumberEdit, off: boolean) {
  const held = useRef<Held | null>(null);

  const end = (keep: boolean) => {
    const drag = held.current?.drag;
    held.current = null;
    if (keep) drag?.commit();
    else drag?.cancel();
  };

  useEffect(() => {
    const escape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !held.current?.drag) return;
      event.stopPropagation();
      end(false);
    };
    window.addEventListener('keydown', escape, true);
    return () => {
      window.removeEventListener('keydown', escape, true);
      // A field that goes away in mid-drag leaves the drag where it is.
      end(true);
    };
  }, []);

  if (off) return {};
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      held.current = { pointer: event.pointerId, from: event.clientX, value, drag: null };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const now = held.current;
      if (!now || now.pointer !== event.pointerId) return;
      const steps = Math.round((event.clientX - now.from) / PIXELS_A_STEP);
      if (!now.drag && steps === 0) return;
      now.drag ??= edit.drag();
      now.drag.to(stepped(now.value, steps * (event.shiftKey ? 10 : 1), step, bounds));
    },
    onPointerUp: () => end(true),
    onPointerCancel: () => end(false),
    onLostPointerCapture: () => end(true),
  };
}
