import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Fault } from '../../base/fault.ts';
import type { DeviceEntry } from '../../plan/devices/deviceEntry.ts';
import { devicesText, readDevices } from '../../plan/devices/devicesFile.ts';

/** Where the device keeps one text; what comes out is anybody's. */
export interface Drawer {
  read(): string | null;
  /** False where nothing can be kept: what was made lasts as long as the window. */
  write(text: string): boolean;
}

interface Own {
  readonly devices: readonly DeviceEntry[];
  /** False once something could not be kept on the device. */
  readonly kept: boolean;
}

/** A person's own kinds of cameras. */
export interface OwnDevices {
  readonly store: StoreApi<Own>;
  /** Adds one, or replaces the one of the same id. */
  put(entry: DeviceEntry): void;
  remove(id: string): void;
  /** Takes those of a file, which replace own ones of the same id; the faults where it cannot be read. */
  take(text: string): { readonly taken: number; readonly faults: readonly Fault[] };
  /** All of them as a file. */
  text(): string;
  /** An id that none has yet. */
  freshId(): string;
}

/** The person's own devices as the drawer holds them; a text that cannot be read is left in it until something is put. */
export function createOwnDevices(drawer: Drawer): OwnDevices {
  const held = drawer.read();
  const read = held === null ? null : readDevices(held);
  const store = createStore<Own>(() => ({ devices: read?.ok ? read.value : [], kept: true }));
  const show = (devices: readonly DeviceEntry[]): void =>
    store.setState({ devices, kept: drawer.write(devicesText(devices)) });
  const merged = (more: readonly DeviceEntry[]): readonly DeviceEntry[] => {
    const ids = new Set(more.map(({ id }) => id));
    return [...store.getState().devices.filter(({ id }) => !ids.has(id)), ...more];
  };
  return {
    store,
    put: (entry) => show(merged([entry])),
    remove: (id) => show(store.getState().devices.filter((entry) => entry.id !== id)),
    take: (text) => {
      const file = readDevices(text);
      if (!file.ok) return { taken: 0, faults: file.faults };
      show(merged(file.value));
      return { taken: file.value.length, faults: [] };
    },
    text: () => devicesText(store.getState().devices),
    freshId: () => {
      const ids = new Set(store.getState().devices.map(({ id }) => id));
      let k = 1;
      while (ids.has(`own-${k}`)) k += 1;
      return `own-${k}`;
    },
  };
}
