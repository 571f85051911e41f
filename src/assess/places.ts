import { placeMount } from '../model/mounting.ts';
import type { Mount } from '../optics/mount.ts';

interface Known {
  readonly structures: unknown;
  readonly ground: number;
  readonly placed: ReturnType<typeof placeMount>;
}

/** Places mounts, remembering by the identity of mount and structures: a camera that is turned stays where it is. */
export class Places {
  private readonly known = new WeakMap<Mount, Known>();

  readonly place: typeof placeMount = (mount, structures, level) => {
    const ground = level ?? 0;
    const before = this.known.get(mount);
    if (before?.structures === structures && before.ground === ground) return before.placed;
    const placed = placeMount(mount, structures, ground);
    this.known.set(mount, { structures, ground, placed });
    return placed;
  };
}
