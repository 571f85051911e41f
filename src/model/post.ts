import type { PoleMount } from '../optics/mount.ts';
import { prism } from './prism.ts';
import type { Solid } from './solid.ts';
import { roundRing } from './tree.ts';

/**
 * The post that a camera stands on: eight-sided, from the ground to the height of its lens.
 * @throws RangeError on a height or diameter that makes no post; `plan` lets none through
 */
export function postSolid(cameraId: string, name: string, mount: PoleMount, ground = 0): Solid {
  const mesh = prism([roundRing(mount.at, mount.diameter)], ground, ground + mount.height);
  if (!mesh || !(mount.height > 0) || !(mount.diameter > 0)) {
    throw new RangeError(
      `a post needs a height and a diameter above 0, got ${mount.height} and ${mount.diameter}`,
    );
  }
  return { id: `${cameraId}.post`, structure: cameraId, name: `Post of ${name}`, passage: 'solid', ...mesh };
}
