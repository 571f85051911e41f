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
  /** The last of them is the one that Tab enters at. */
  readonly selected: readonly string[];
  readonly hovered: string | null;
  /** `more` adds the row to what is selected, or takes it out. */
  select(id: string, more: boolean): void;
  hover(id: string | null): void;
  /** Enter on the focused row, after it was selected. */
  enter(id: string): void;
  setOpen(id: string, open: boolean): void;
  /** Acts on the row, at a place of the window; absent where there is no menu. */
  menu?(id: string, x: number, y: number): void;
}

const TYPING_PAUSE = 700;

/** Rows a stretch; a tree of two or fewer is made whole. */
const STRETCH = 60;

/** A list in levels with one row in the tab order: arrows walk, letters find, Enter goes on with the row. */
export function Tree({
  label,
  items,
  selected: all,
  hovered,
  select,
  hover,
  enter,
  setOpen,
  menu,
}: TreeProps) {
  const selected = all.at(-1) ?? null;
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
    if (focused === null || event.altKey) return;
    const more = event.ctrlKey || event.metaKey || event.shiftKey;
    if (event.key === ' ' || (event.key === 'Enter' && !more)) {
      event.preventDefault();
      select(focused, more);
      if (event.key === 'Enter') enter(focused);
      return;
    }
    if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) {
      event.preventDefault();
      openMenu(focused, null);
      return;
    }
    if (event.ctrlKey || event.metaKey) return;
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

  /** A menu is for what is selected, so a row that is not is selected first. */
  const openMenu = (id: string, at: { readonly x: number; readonly y: number } | null) => {
    if (!menu) return;
    if (!all.includes(id)) select(id, false);
    const box = rowOf(id)?.getBoundingClientRect();
    menu(id, at?.x ?? (box ? box.left + 24 : 0), at?.y ?? (box ? box.bottom : 0));
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
      aria-multiselectable
      onClick={({ target, shiftKey, ctrlKey, metaKey }) => {
        const row = rowAt(target);
        if (row === undefined) return;
        const twist = target instanceof Element ? target.closest<HTMLElement>('[data-twist]') : null;
        if (twist) setOpen(row, twist.dataset['twist'] === 'closed');
        else select(row, shiftKey || ctrlKey || metaKey);
      }}
      onContextMenu={(event) => {
        const row = rowAt(event.target);
        if (row === undefined || !menu) return;
        event.preventDefault();
        openMenu(row, { x: event.clientX, y: event.clientY });
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
            selected={all.filter((id) => stretch.some((item) => item.id === id)).join('\n')}
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
