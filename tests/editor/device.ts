import type { Kept, KeptStep, KeptVersion, Shelf, Trail } from '../../src/editor/shelf.ts';
import type { LetGo, Tabs } from '../../src/editor/tabs.ts';

/** A device's storage in memory: what is put in is copied, as a database does. */
export function memoryShelf() {
  const plans = new Map<string, unknown>();
  const steps = new Map<string, unknown[]>();
  const versions = new Map<string, KeptVersion>();
  const pictures = new Map<string, unknown>();
  const drafts = new Map<string, unknown>();
  const trails = new Map<string, unknown>();
  const putSteps = (plan: string, trail: Trail, news: readonly KeptStep[]) => {
    const held = (steps.get(plan) ?? []).slice(0, trail.length);
    for (const { number, step } of news) held[number] = structuredClone(step);
    steps.set(plan, held);
  };
  let open: string | null = null;
  let full: Error | null = null;
  const shelf: Shelf = {
    put: (kept, news = []) => {
      if (full) return Promise.reject(full);
      plans.set(kept.key, structuredClone(kept));
      const trail = kept.trail ?? { version: 0, length: 0, at: 0 };
      trails.set(kept.key, trail);
      putSteps(kept.key, trail, news);
      return Promise.resolve();
    },
    take: (key) => Promise.resolve(structuredClone(plans.get(key))),
    list: () => Promise.resolve([...plans.values()].map((kept) => structuredClone(kept))),
    remove: (key) => {
      plans.delete(key);
      return Promise.resolve();
    },
    lastOpen: () => Promise.resolve(open),
    noteOpen: (key) => {
      open = key;
      return Promise.resolve();
    },
    note: (plan, trail, news) => {
      if (full) return Promise.reject(full);
      trails.set(plan, structuredClone(trail));
      putSteps(plan, trail, news);
      return Promise.resolve();
    },
    trail: (plan) => Promise.resolve(structuredClone(trails.get(plan))),
    steps: (plan) => Promise.resolve(structuredClone(steps.get(plan) ?? [])),
    putVersion: (version) => {
      versions.set(version.key, structuredClone(version));
      return Promise.resolve();
    },
    versions: (plan) => Promise.resolve([...versions.values()].filter((version) => version.plan === plan)),
    removeVersion: (key) => {
      versions.delete(key);
      return Promise.resolve();
    },
    putPicture: (picture) => {
      pictures.set(picture.sha, structuredClone(picture));
      return Promise.resolve();
    },
    putDraft: (plan, text) => {
      if (full) return Promise.reject(full);
      if (text === null) drafts.delete(plan);
      else drafts.set(plan, text);
      return Promise.resolve();
    },
    draft: (plan) => Promise.resolve(drafts.get(plan)),
    picture: (sha) => Promise.resolve(structuredClone(pictures.get(sha))),
  };
  return {
    shelf,
    plans,
    steps,
    drafts,
    putRaw: (key: string, held: unknown) => {
      plans.set(key, held);
      open = key;
    },
    text: (key: string) => (plans.get(key) as Kept | undefined)?.text,
    fail: (error: Error | null) => {
      full = error;
    },
  };
}

/** A browser's tabs in memory: one holder a plan, others are asked to let go. */
export function memoryTabs() {
  const holders = new Map<string, { letGo: LetGo; lost: () => void }>();
  const listeners = new Set<(plan: string) => void>();
  const tab = (): Tabs => {
    const claim = (plan: string, lost: () => void): Promise<LetGo | null> => {
      if (holders.has(plan)) return Promise.resolve(null);
      const letGo = () => holders.delete(plan);
      holders.set(plan, { letGo, lost });
      return Promise.resolve(letGo);
    };
    let mine: ((plan: string) => void) | null = null;
    return {
      claim,
      seize: async (plan, lost) => {
        for (const listener of listeners) if (listener !== mine) listener(plan);
        await settled();
        const right = await claim(plan, lost);
        if (right) return right;
        holders.get(plan)?.lost();
        holders.delete(plan);
        return (await claim(plan, lost)) ?? (() => undefined);
      },
      asked: (listener) => {
        mine = listener;
        listeners.add(listener);
      },
    };
  };
  return { tab, deaf: () => listeners.clear() };
}

/** Until all that was begun on the shelf and among the tabs has come to rest. */
export const settled = () => new Promise((resolve) => setTimeout(resolve, 5));
