import type { Mount } from '../../optics/mount.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Fixes a camera anew, on any kind of mount; its aim stays.
 * @throws RangeError on an unknown camera
 */
export const setMount = (plan: Plan, id: string, mount: Mount): Plan =>
  withCamera(plan, id, (camera) =>
    changed(camera, { mount: sameMount(camera.mount, mount) ? camera.mount : mount }),
  );

const sameMount = (a: Mount, b: Mount): boolean => {
  const keys = Object.keys(b);
  return (
    Object.keys(a).length === keys.length &&
    keys.every((key) => JSON.stringify(Reflect.get(a, key)) === JSON.stringify(Reflect.get(b, key)))
  );
};
