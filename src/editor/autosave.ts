import { openDB } from 'idb';
import type { Editor } from './editor.ts';
import { keepPlan } from './keeping.ts';
import type { Keeping } from './keeping.ts';
import type { Shelf } from './shelf.ts';
import type { LetGo, Tabs } from './tabs.ts';

/*
 * The one place that touches the browser's storage: its database for plans, its locks and channel for tabs, and a word
 * about the theme.
 */

/** How long another tab may take to let go, ms; a page that reloads frees its plan well within it. */
const PATIENCE = 700;

/** @throws what the browser throws where it keeps nothing, as in some private windows */
export async function openShelf(): Promise<Shelf> {
  const database = await openDB('soffit', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('plans', { keyPath: 'key' });
      fresh.createObjectStore('device');
    },
  });
  // Committed at once: a page that goes away would break off a transaction that still waits for it.
  const put = async (store: 'plans' | 'device', value: unknown, key?: string) => {
    const transaction = database.transaction(store, 'readwrite');
    const asked = transaction.store.put(value, key);
    transaction.commit();
    await Promise.all([asked, transaction.done]);
  };
  return {
    put: (kept) => put('plans', kept),
    take: (key) => database.get('plans', key),
    list: () => database.getAll('plans'),
    remove: (key) => database.delete('plans', key),
    lastOpen: () => database.get('device', 'open'),
    noteOpen: (key) => put('device', key, 'open'),
  };
}

/** A shelf for where the browser has none: everything is refused, and the bar says so. */
export const noShelf: Shelf = {
  put: () => Promise.reject(new Error('nothing is kept in this window')),
  take: () => Promise.resolve(null),
  list: () => Promise.resolve([]),
  remove: () => Promise.resolve(),
  lastOpen: () => Promise.resolve(null),
  noteOpen: () => Promise.resolve(),
};

/** Keeps the editor's plan from now on, also when the page is put away. */
export function autosave(editor: Editor, shelf: Shelf): Keeping {
  const keeping = keepPlan(editor, shelf, browserTabs(), Date.now);
  window.addEventListener('pagehide', () => keeping.leave());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void keeping.flush();
  });
  // The browser asks before it closes what could not be kept.
  window.addEventListener('beforeunload', (event) => {
    if (editor.store.getState().kept.trouble !== null) event.preventDefault();
  });
  return keeping;
}

function browserTabs(): Tabs {
  const channel = new BroadcastChannel('soffit');
  const lockOf = (plan: string) => `soffit plan ${plan}`;

  const hold = (plan: string, options: LockOptions, lost: () => void): Promise<LetGo | null> =>
    new Promise((resolve) => {
      let mine = false;
      const granted = (lock: Lock | null): Promise<void> => {
        if (!lock) {
          resolve(null);
          return Promise.resolve();
        }
        mine = true;
        return new Promise((letGo) => {
          resolve(() => {
            mine = false;
            letGo();
          });
        });
      };
      // A wait that ends by its signal, or a lock that another tab took by force.
      navigator.locks.request(lockOf(plan), options, granted).catch(() => (mine ? lost() : resolve(null)));
    });

  // Asked at once first: a busy window would let the wait run out although nobody holds the plan.
  const claim = async (plan: string, lost: () => void): Promise<LetGo | null> =>
    (await hold(plan, { ifAvailable: true }, lost)) ??
    (await hold(plan, { signal: AbortSignal.timeout(PATIENCE) }, lost)) ??
    hold(plan, { ifAvailable: true }, lost);

  return {
    claim,
    seize: async (plan, lost) => {
      channel.postMessage({ kind: 'let go', plan });
      return (await claim(plan, lost)) ?? (await hold(plan, { steal: true }, lost)) ?? (() => undefined);
    },
    asked: (listener) => {
      channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
        if (typeof data !== 'object' || data === null || !('kind' in data) || !('plan' in data)) return;
        if (data.kind === 'let go' && typeof data.plan === 'string') listener(data.plan);
      });
    },
  };
}

const THEME = 'soffit theme';

/** The theme that the person chose on this device; null where none was. */
export function keptTheme(): 'light' | 'dark' | null {
  try {
    const theme = localStorage.getItem(THEME);
    return theme === 'light' || theme === 'dark' ? theme : null;
  } catch {
    return null;
  }
}

export function keepTheme(theme: 'light' | 'dark'): void {
  try {
    localStorage.setItem(THEME, theme);
  } catch {
    // Where nothing can be kept, the choice lasts as long as the window.
  }
}
