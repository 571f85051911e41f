import type { Editor } from './editor.ts';
import { keepPlan } from './keeping.ts';
import type { Keeping } from './keeping.ts';
import type { Pad } from './pad.ts';
import type { Shelf } from './shelf.ts';
import type { LetGo, Tabs } from './tabs.ts';

/*
 * With `browserShelf.ts` the one place that touches what the browser keeps: its locks and channel for tabs, and a word
 * about the theme and about coverage while shaping.
 */

/** How long another tab may take to let go, ms; a page that reloads frees its plan well within it. */
const PATIENCE = 700;

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

const lockOf = (plan: string) => `soffit plan ${plan}`;

/** The words that the browser keeps for a page, written before the next line runs. */
export const browserPad: Pad = {
  names: () => Object.keys(localStorage),
  read: (name) => localStorage.getItem(name),
  write: (name, text) => (text === null ? localStorage.removeItem(name) : localStorage.setItem(name, text)),
};

/** Does something while no other tab has the plan; where one has it, that tab sees to it. */
export const whileFree = async (plan: string, act: () => Promise<void>): Promise<void> => {
  await navigator.locks.request(lockOf(plan), { ifAvailable: true }, (lock) => (lock ? act() : undefined));
};

function browserTabs(): Tabs {
  const channel = new BroadcastChannel('soffit');

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
const COVER_SHAPING = 'soffit coverage while shaping';

/** The theme that the person chose on this device; null where none was. */
export function keptTheme(): 'light' | 'dark' | null {
  const theme = keptWord(THEME);
  return theme === 'light' || theme === 'dark' ? theme : null;
}

export const keepTheme = (theme: 'light' | 'dark'): void => keepWord(THEME, theme);

/** Whether coverage is worked out while structures are shaped, as it is kept on this device; off where nothing is. */
export const keptCoverShaping = (): boolean => keptWord(COVER_SHAPING) === 'on';

export const keepCoverShaping = (on: boolean): void => keepWord(COVER_SHAPING, on ? 'on' : 'off');

function keptWord(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

function keepWord(name: string, word: string): void {
  try {
    localStorage.setItem(name, word);
  } catch {
    // Where nothing can be kept, the choice lasts as long as the window.
  }
}
