import { useLayoutEffect, useState } from 'react';
import type { RefObject } from 'react';

/** The size of an element, px, as it changes; nought until it stands on the page. */
export function useBox(ref: RefObject<HTMLElement | null>): {
  readonly width: number;
  readonly height: number;
} {
  const [box, setBox] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => {
      const [width, height] = [element.clientWidth, element.clientHeight];
      setBox((now) => (now.width === width && now.height === height ? now : { width, height }));
    };
    const resized = new ResizeObserver(measure);
    resized.observe(element);
    measure();
    return () => resized.disconnect();
  }, [ref]);
  return box;
}
