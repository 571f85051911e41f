import { useEffect, useMemo, useRef, useState } from 'react';
import type { KeyboardEvent } from 'react';
import type { TreeItem } from './treeItem.ts';
import { reveal } from './reveal.ts';
import { treeMove, treeTyped } from './treeKeys.ts';
import { TreeRows } from './TreeRows.tsx';
import styles from './tree.module.css';

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

/** Rows a stretch; a tree of two or fewer is made whole. */
const STRETCH = 60;

/** A list in levels with one row in the tab order: arrows walk, letters find, Enter goes on with the row. */
export function Tree({ label, items, selected, hovered, select, hover, enter, setOpen }: TreeProps) {
  const [went, setWent] = useState<{ readonly at: string; readonly under: string | null } | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const typed = useRef({ text: '', when: 0 });
  const toFocus = useRef<string | null>(null);
  const ids = useMemo(() => new Set(items.map(({ id }) => id)), [items]);
  const stretches = useMemo(
    () =>
      Array.from({ length: Math.ceil(items.length / STRETCH) }, (_, k) =>
        items.slice(k * STRETCH, (k + 1) * STRETCH),
      ),
    [items],
  );
  // What is selected elsewhere becomes where Tab enters; from there the arrows walk.
  const wanted = went?.under === selected ? went.at : selected;
  const focused = wanted !== null && ids.has(wanted) ? wanted : (items[0]?.id ?? null);

  const rowOf = (id: string) => box.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(id)}"]`);

  const go = (id: string) => {
    toFocus.current = id;
    setWent({ at: id, under: selected });
  };

  // A row may be made only now that it is wanted.
  useEffect(() => {
    if (toFocus.current === null) return;
    rowOf(toFocus.current)?.focus();
    toFocus.current = null;
  });

  useEffect(() => {
    const row = selected === null ? null : rowOf(selected);
    if (row) reveal(row);
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
      {stretches.map((stretch, k) => {
        const here = (id: string | null) =>
          id !== null && stretch.some((item) => item.id === id) ? id : null;
        return (
          <TreeRows
            key={stretch[0]?.id ?? k}
            items={stretch}
            from={k * STRETCH}
            total={items.length}
            selected={here(selected)}
            hovered={here(hovered)}
            focused={here(focused)}
            always={stretches.length <= 2}
            hover={hover}
          />
        );
      })}
    </div>
  );
}
