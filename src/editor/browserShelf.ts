import { openDB, type DBSchema } from 'idb';
import type { StepMade } from '../plan/history.ts';
import type { Kept, KeptPicture, KeptStep, KeptVersion, Shelf, Trail } from './shelf.ts';

interface Stores extends DBSchema {
  plans: { key: string; value: Kept };
  device: { key: string; value: string };
  trails: { key: string; value: { plan: string } & Trail };
  steps: { key: [string, number]; value: { plan: string; number: number; step: StepMade } };
  versions: { key: string; value: KeptVersion; indexes: { plan: string } };
  pictures: { key: string; value: KeptPicture };
}

const NO_STEPS: Trail = { version: 0, length: 0, at: 0 };

/** The key of a plan's draft in the store of the device. */
const draftOf = (plan: string): string => `draft of ${plan}`;

/** Every number of a plan's steps from one on. */
const stepsFrom = (plan: string, number: number) => IDBKeyRange.bound([plan, number], [plan, Infinity]);

/**
 * The browser's own database. It holds what any page of this origin put there, so readers check what comes out.
 * @throws what the browser throws where it keeps nothing, as in some private windows
 */
export async function openShelf(): Promise<Shelf> {
  const database = await openDB<Stores>('soffit', 2, {
    upgrade: (fresh, from) => {
      if (from < 1) {
        fresh.createObjectStore('plans', { keyPath: 'key' });
        fresh.createObjectStore('device');
      }
      fresh.createObjectStore('steps', { keyPath: ['plan', 'number'] });
      fresh.createObjectStore('trails', { keyPath: 'plan' });
      fresh.createObjectStore('versions', { keyPath: 'key' }).createIndex('plan', 'plan');
      fresh.createObjectStore('pictures', { keyPath: 'sha' });
    },
    // A tab with a newer program may bring the database up to date; this one goes on with what it has in hand.
    blocking: (_, __, event) => {
      if (event.target instanceof IDBDatabase) event.target.close();
    },
  });
  const keep = async (plan: string, trail: Trail, steps: readonly KeptStep[], kept: Kept | null) => {
    const transaction = database.transaction(['plans', 'trails', 'steps'], 'readwrite');
    const held = transaction.objectStore('steps');
    const asked: Promise<unknown>[] = [
      ...(kept ? [transaction.objectStore('plans').put(kept)] : []),
      transaction.objectStore('trails').put({ plan, ...trail }),
      held.delete(stepsFrom(plan, trail.length)),
      ...steps.map(({ number, step }) => held.put({ plan, number, step })),
    ];
    // Committed at once: a page that goes away would break off a transaction that still waits for it.
    transaction.commit();
    await Promise.all([...asked, transaction.done]);
  };
  return {
    put: (kept, steps = []) => keep(kept.key, kept.trail ?? NO_STEPS, steps, kept),
    note: (plan, trail, steps) => keep(plan, trail, steps, null),
    trail: (plan) => database.get('trails', plan),
    take: (key) => database.get('plans', key),
    list: () => database.getAll('plans'),
    remove: async (key) => {
      const transaction = database.transaction(
        ['plans', 'trails', 'steps', 'versions', 'device'],
        'readwrite',
      );
      const versions = transaction.objectStore('versions');
      const keys = await versions.index('plan').getAllKeys(key);
      await Promise.all([
        transaction.objectStore('plans').delete(key),
        transaction.objectStore('trails').delete(key),
        transaction.objectStore('device').delete(draftOf(key)),
        transaction.objectStore('steps').delete(stepsFrom(key, 0)),
        ...keys.map((version) => versions.delete(version)),
        transaction.done,
      ]);
    },
    lastOpen: () => database.get('device', 'open'),
    noteOpen: async (key) => {
      const transaction = database.transaction('device', 'readwrite');
      const asked = transaction.store.put(key, 'open');
      transaction.commit();
      await Promise.all([asked, transaction.done]);
    },
    putDraft: async (plan, text) => {
      const transaction = database.transaction('device', 'readwrite');
      const key = draftOf(plan);
      const asked = text === null ? transaction.store.delete(key) : transaction.store.put(text, key);
      transaction.commit();
      await Promise.all([asked, transaction.done]);
    },
    draft: (plan) => database.get('device', draftOf(plan)),
    steps: async (plan) => (await database.getAll('steps', stepsFrom(plan, 0))).map(({ step }) => step),
    putVersion: async (version) => {
      await database.put('versions', version);
    },
    versions: (plan) => database.getAllFromIndex('versions', 'plan', plan),
    removeVersion: (key) => database.delete('versions', key),
    putPicture: async (picture) => {
      await database.put('pictures', picture);
    },
    picture: (sha) => database.get('pictures', sha),
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
  note: () => Promise.reject(new Error('nothing is kept in this window')),
  trail: () => Promise.resolve(null),
  steps: () => Promise.resolve([]),
  putVersion: () => Promise.reject(new Error('nothing is kept in this window')),
  versions: () => Promise.resolve([]),
  removeVersion: () => Promise.resolve(),
  putPicture: () => Promise.reject(new Error('nothing is kept in this window')),
  picture: () => Promise.resolve(null),
  putDraft: () => Promise.reject(new Error('nothing is kept in this window')),
  draft: () => Promise.resolve(null),
};
