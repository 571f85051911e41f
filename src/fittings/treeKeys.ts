/** A row as the keys see it: branches carry whether they are open. */
export interface TreeRow {
  readonly id: string;
  readonly level: number;
  readonly label: string;
  /** Null for a leaf. */
  readonly open: boolean | null;
}

export type TreeMove =
  | { readonly kind: 'go'; readonly id: string }
  | { readonly kind: 'open' | 'close'; readonly id: string }
  | null;

/** What a key does in a tree (WAI-ARIA tree pattern): rows are the visible ones in order, `at` the focused one. */
export function treeMove(rows: readonly TreeRow[], at: string, key: string): TreeMove {
  const index = rows.findIndex(({ id }) => id === at);
  const row = rows[index];
  if (!row) return null;
  const go = (target: TreeRow | undefined): TreeMove => (target ? { kind: 'go', id: target.id } : null);
  switch (key) {
    case 'ArrowDown':
      return go(rows[index + 1]);
    case 'ArrowUp':
      return go(rows[index - 1]);
    case 'Home':
      return go(rows[0]);
    case 'End':
      return go(rows.at(-1));
    case 'ArrowRight':
      if (row.open === false) return { kind: 'open', id: at };
      return row.open ? go(rows[index + 1]) : null;
    case 'ArrowLeft':
      if (row.open) return { kind: 'close', id: at };
      return go(rows.slice(0, index).findLast(({ level }) => level < row.level));
    default:
      return null;
  }
}

/** The next row whose label begins with what was typed, after the focused one, round and round; null where none does. */
export function treeTyped(rows: readonly TreeRow[], at: string, typed: string): string | null {
  const wanted = typed.toLocaleLowerCase();
  const index = rows.findIndex(({ id }) => id === at);
  // One letter goes on to the next; more of the same word may stay.
  const from = typed.length === 1 ? index + 1 : index;
  const order = [...rows.slice(from), ...rows.slice(0, from)];
  return order.find(({ label }) => label.toLocaleLowerCase().startsWith(wanted))?.id ?? null;
}
