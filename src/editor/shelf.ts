/** A plan as the device keeps it. `key` is the plan's id, or something else for one that was set aside. */
export interface Kept {
  readonly key: string;
  readonly name: string;
  /** When, ms since 1970. */
  readonly at: number;
  readonly text: string;
}

/** Where the device keeps plans. What comes out is anybody's: it is read by `keptFrom`. */
export interface Shelf {
  put(kept: Kept): Promise<void>;
  take(key: string): Promise<unknown>;
  /** All of them. */
  list(): Promise<readonly unknown[]>;
  remove(key: string): Promise<void>;
  /** Which one was open last. */
  lastOpen(): Promise<unknown>;
  noteOpen(key: string): Promise<void>;
}

/** A kept plan out of whatever the shelf held; null where it is none. The text is not read yet. */
export function keptFrom(held: unknown): Kept | null {
  if (typeof held !== 'object' || held === null) return null;
  const { key, name, at, text } = { key: null, name: null, at: null, text: null, ...held };
  if (typeof key !== 'string' || typeof name !== 'string' || typeof text !== 'string') return null;
  return typeof at === 'number' && Number.isFinite(at) ? { key, name, at, text } : null;
}
