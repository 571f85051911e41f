import { useEffect, useRef, useState } from 'react';
import type { KeyboardEvent, ReactNode } from 'react';
import { treeMove, treeTyped } from './treeKeys.ts';
import type { TreeRow } from './treeKeys.ts';
import styles from './tree.module.css';

export interface TreeItem extends TreeRow {
  /** All that a screen reader says of it: "Garage, building, 3.20 by 6.00, 2.40 high". */
  readonly spoken: string;
  readonly detail: string;
  readonly icon: ReactNode;
  /** A rule is drawn above the first of a group. */
  readonly first?: boolean;
  /** Not shown in the picture. */
  readonly faint?: boolean;
}

interface TreeProps {
  readonly label: string;
  /** The visible rows, in order. */
  readonly items: readonly TreeItem[];
  readonly selected: string | null;
  readonly hovered: string | null;
  select(id: string): void;
  hover(id: string | null): void;
  /** Enter on the focused row, after it was selected. */
  enter(id: string): void;
  setOpen(id: string, open: boolean): void;
}

const TYPING_PAUSE = 700;

/** A list in levels with one row in the tab order: arrows walk, letters find, Enter goes on with the row. */
export function Tree({ label, items, selected, hovered, select, hover, enter, setOpen }: TreeProps) {
  const [went, setWent] = useState<{ readonly at: string; readonly under: string | null } | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const typed = useRef({ text: '', when: 0 });
  // What is selected elsewhere becomes where Tab enters; from there the arrows walk.
  const wanted = went?.under === selected ? went.at : selected;
  const focused = items.some(({ id }) => id === wanted) ? wanted : (items[0]?.id ?? null);

  const rowOf = (id: string) => box.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(id)}"]`);

  const go = (id: string) => {
    setWent({ at: id, under: selected });
    rowOf(id)?.focus();
  };

  useEffect(() => {
    if (selected === null) return;
    box.current?.querySelector(`[data-row="${CSS.escape(selected)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [selected]);

  const keyed = (event: KeyboardEvent) => {
    if (focused === null || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      select(focused);
      if (event.key === 'Enter') enter(focused);
      return;
    }
    const move = treeMove(items, focused, event.key);
    if (move) {
      event.preventDefault();
      if (move.kind === 'go') go(move.id);
      else setOpen(move.id, move.kind === 'open');
      return;
    }
    if (event.key.length !== 1) return;
    const fresh = event.timeStamp - typed.current.when > TYPING_PAUSE;
    typed.current = { text: (fresh ? '' : typed.current.text) + event.key, when: event.timeStamp };
    const found = treeTyped(items, focused, typed.current.text);
    if (found !== null) go(found);
  };

  const rowAt = (target: EventTarget): string | undefined =>
    target instanceof Element ? target.closest<HTMLElement>('[data-row]')?.dataset['row'] : undefined;

  return (
    <div
      ref={box}
      role="tree"
      aria-label={label}
      tabIndex={-1}
      className={styles.tree}
      onKeyDown={keyed}
      onClick={({ target }) => {
        const row = rowAt(target);
        if (row !== undefined) select(row);
      }}
      onFocus={({ target }) => {
        const row = rowAt(target);
        if (row !== undefined) setWent({ at: row, under: selected });
      }}
    >
      {items.map((item) => (
        <div
          key={item.id}
          role="treeitem"
          className={styles.row}
          data-row={item.id}
          data-first={item.first}
          data-faint={item.faint}
          data-hovered={item.id === hovered}
          aria-level={item.level}
          aria-selected={item.id === selected}
          aria-expanded={item.open ?? undefined}
          aria-label={item.spoken}
          tabIndex={item.id === focused ? 0 : -1}
          style={{ '--level': item.level - 1 }}
          onPointerEnter={() => hover(item.id)}
          onPointerLeave={() => hover(null)}
        >
          <span className={styles.icon} aria-hidden>
            {item.icon}
          </span>
          <span className={styles.name}>{item.label}</span>
          <span className={styles.detail}>{item.detail}</span>
        </div>
      ))}
    </div>
  );
}
