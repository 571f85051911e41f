import { useEffect, useId, useState } from 'react';
import type { ReactNode } from 'react';
import styles from './tooltip.module.css';

interface TooltipProps {
  readonly tip: string;
  readonly children: ReactNode;
}

/** A few words under what is hovered or focused; Esc takes them away, and they may be hovered themselves (WCAG 1.4.13). */
export function Tooltip({ tip, children }: TooltipProps) {
  const id = useId();
  const [shown, setShown] = useState(false);

  useEffect(() => {
    if (!shown) return undefined;
    const escape = (event: KeyboardEvent) => {
      if (event.key === 'Escape') setShown(false);
    };
    window.addEventListener('keydown', escape);
    return () => window.removeEventListener('keydown', escape);
  }, [shown]);

  return (
    <span
      className={styles.anchor}
      onPointerEnter={(event) => setShown(event.pointerType === 'mouse')}
      onPointerLeave={() => setShown(false)}
      onFocus={(event) => setShown(event.target.matches(':focus-visible'))}
      onBlur={() => setShown(false)}
    >
      {children}
      {shown && (
        <span id={id} role="tooltip" className={styles.tip}>
          {tip}
        </span>
      )}
    </span>
  );
}
