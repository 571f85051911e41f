import { memo, useEffect, useRef, useState } from 'react';
import type { TreeItem } from './treeItem.ts';
import styles from './tree.module.css';

interface TreeRowsProps {
  /** A stretch of the tree, and where it begins. */
  readonly items: readonly TreeItem[];
  readonly from: number;
  /** How many rows the tree has. */
  readonly total: number;
  /** Rows of this stretch that are selected, a line each, so that a stretch without a change is not made anew. */
  readonly selected: string;
  /** Rows of this stretch that are marked; null where they lie in another. */
  readonly hovered: string | null;
  readonly focused: string | null;
  /** A short tree is shown whole. */
  readonly always: boolean;
  hover(id: string | null): void;
}

/** How far outside the window a stretch begins to be made, px. */
const AHEAD = '600px';

/** A stretch of rows, made only near the window: a town of buildings is a long list. */
export const TreeRows = memo(function TreeRows(props: TreeRowsProps) {
  const { items, from, total, selected, hovered, focused, always, hover } = props;
  const box = useRef<HTMLDivElement>(null);
  const [near, setNear] = useState(from === 0);

  useEffect(() => {
    if (always || !box.current) return undefined;
    const watch = new IntersectionObserver(([seen]) => setNear(seen?.isIntersecting === true), {
      rootMargin: AHEAD,
    });
    watch.observe(box.current);
    return () => watch.disconnect();
  }, [always]);

  const chosen = new Set(selected.split('\n'));
  const made = always || near || selected !== '' || focused !== null;
  return (
    <div ref={box} role="none" className={styles.stretch} style={{ '--rows': items.length }} data-made={made}>
      {made &&
        items.map((item, index) => (
          <div
            key={item.id}
            role="treeitem"
            className={styles.row}
            data-row={item.id}
            data-first={item.first === true && from + index > 0}
            data-faint={item.faint}
            data-hovered={item.id === hovered}
            aria-level={item.level}
            aria-setsize={always ? undefined : total}
            aria-posinset={always ? undefined : from + index + 1}
            aria-selected={chosen.has(item.id)}
            aria-expanded={item.open ?? undefined}
            tabIndex={item.id === focused ? 0 : -1}
            style={{ '--level': item.level - 1 }}
            onPointerEnter={() => hover(item.id)}
            onPointerLeave={() => hover(null)}
          >
            {item.open !== null && (
              <span className={styles.twist} data-twist={item.open ? 'open' : 'closed'} aria-hidden />
            )}
            <span className={styles.icon} aria-hidden>
              {item.icon}
            </span>
            <span className={styles.name}>
              {item.label}
              <span className={styles.spoken}>{item.spoken.slice(item.label.length)}</span>
            </span>
            <span className={styles.detail} aria-hidden>
              {item.detail}
            </span>
          </div>
        ))}
    </div>
  );
});
