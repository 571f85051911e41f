import type { Mount, MountLimits, Plate } from '../../optics/mount.ts';
import type { Plan } from '../plan.ts';
import { setMount } from './setMount.ts';

/** The measures of mounts of all kinds; one kind has some of them. */
export interface MountMeasures {
  readonly host?: string;
  readonly face?: number;
  readonly corner?: 'start' | 'end';
  readonly distance?: number;
  readonly height?: number;
  readonly standOff?: number;
  readonly reach?: number;
  readonly drop?: number;
  readonly inset?: number;
  readonly at?: readonly [x: number, y: number];
  readonly facing?: number;
  readonly diameter?: number;
  readonly eye?: readonly [x: number, y: number, z: number];
  readonly plate?: Plate;
  readonly limits?: MountLimits;
}

/**
 * Changes measures of a camera's mount and leaves its kind: slides it, raises it, lengthens its arm.
 * @throws RangeError on an unknown camera, a measure that this kind lacks (a soffit gives the height), or a number that
 *         is not finite
 */
export function moveMount(plan: Plan, id: string, measures: MountMeasures): Plan {
  const mount = Object.hasOwn(plan.cameras, id) ? plan.cameras[id]?.mount : undefined;
  if (!mount) throw new RangeError(`the plan has no camera ${id}`);
  for (const [key, value] of Object.entries(measures) as [string, unknown][]) {
    if (!Object.hasOwn(mount, key)) throw new RangeError(`a ${mount.kind} mount has no ${key}`);
    const numbers = Array.isArray(value) ? value : [value];
    if (numbers.some((number) => typeof number === 'number' && !Number.isFinite(number)))
      throw new RangeError(`${key} must be finite, got ${numbers.join(', ')}`);
  }
  // Every key was found in the mount itself, so the kind keeps its shape.
  const moved: Mount = { ...mount, ...measures };
  return setMount(plan, id, moved);
}
