import type { ReactNode } from 'react';
import { Tooltip } from './Tooltip.tsx';
import styles from './button.module.css';

interface ButtonProps {
  readonly children: ReactNode;
  /** `main` is the one thing to do here, `plain` has an edge, `quiet` none, `icon` shows a sign alone. */
  readonly look?: 'main' | 'plain' | 'quiet' | 'icon';
  /** Spoken and shown as a tip; needed where there is only a sign. */
  readonly label?: string;
  /** Keys that do the same, shown in the tip. */
  readonly keys?: string;
  /** Why it cannot be pressed; it keeps its place in the order, so that the reason can be read. */
  readonly off?: string | null;
  readonly pressed?: boolean;
  press(): void;
}

export function Button({ children, look = 'plain', label, keys, off = null, pressed, press }: ButtonProps) {
  const button = (
    <button
      type="button"
      className={styles.button}
      data-look={look}
      aria-label={label}
      aria-pressed={pressed}
      aria-disabled={off === null ? undefined : true}
      onClick={() => {
        if (off === null) press();
      }}
    >
      {children}
    </button>
  );
  const tip = [off ?? label, off === null && keys ? `(${keys})` : null].filter(Boolean).join(' ');
  return tip === '' ? button : <Tooltip tip={tip}>{button}</Tooltip>;
}
