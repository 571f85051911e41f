import type { Drawer } from './ownDevices.ts';

const NAME = 'soffit devices';

/** The browser's own keeping of the person's devices. */
export const browserDrawer: Drawer = {
  read: () => {
    try {
      return localStorage.getItem(NAME);
    } catch {
      return null;
    }
  },
  write: (text) => {
    try {
      localStorage.setItem(NAME, text);
      return true;
    } catch {
      return false;
    }
  },
};
