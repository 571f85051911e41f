import { accept, type Outcome } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount } from '../../model/mounting.ts';
import { hostFaces } from '../../model/faces.ts';
import type { Mount } from '../../optics/mount.ts';
import { bundleOf, type Bundle } from '../bundle/bundle.ts';
import { putIn } from '../bundle/putIn.ts';
import type { Plan } from '../plan.ts';
import { sound } from './admitted.ts';
import { changed } from './changed.ts';
import type { Movable } from './thing.ts';
import { withCamera } from './withCamera.ts';

/** Copies and the plan that they are in. */
export interface Copied {
  readonly plan: Plan;
  readonly things: readonly Movable[];
}

/**
 * Copies things, each copy so far from the last, m. A camera whose structure is not copied with it goes along its wall where
 * the wall goes on, and is loose elsewhere.
 * @param times how often; 0 copies nothing
 * @returns     refused where a copy would be farther out than a site reaches
 * @throws      RangeError where the plan has no such thing, or `times` is no whole number from 0
 */
export function copyThings(plan: Plan, things: readonly Movable[], offset: Vec2, times = 1): Outcome<Copied> {
  if (!Number.isInteger(times) || times < 0) throw new RangeError(`copies are counted, got ${times}`);
  const bundle = bundleOf(plan, things);
  let next = plan;
  const copies: Movable[] = [];
  for (let k = 1; k <= times; k += 1) {
    const by: Vec2 = [offset[0] * k, offset[1] * k];
    const put = putIn(next, bundle, by);
    next = onTheirWalls(put.plan, bundle, put.things, by);
    copies.push(...put.things);
  }
  const checked = sound(plan, next);
  return checked.ok ? accept({ plan: checked.value, things: copies }) : checked;
}

/** Cameras that came loose, back on the wall of those they were copied from, where that goes on so far. */
function onTheirWalls(plan: Plan, bundle: Bundle, things: readonly Movable[], by: Vec2): Plan {
  const copies = things.flatMap((thing) => (thing.kind === 'camera' ? [thing.id] : []));
  // A camera without an eye was left out, so that only those that came count.
  const sources = bundle.plan.cameraOrder.filter((id) => {
    const mount = bundle.plan.cameras[id]?.mount;
    return mount && (!('host' in mount) || isIn(bundle, mount.host) || Object.hasOwn(bundle.eyes, id));
  });
  return copies.reduce((next, copy, index) => {
    const mount = bundle.plan.cameras[sources[index] ?? '']?.mount;
    if (!mount || !('host' in mount) || isIn(bundle, mount.host)) return next;
    const slid = slidAlong(mount, plan, by);
    return slid ? withCamera(next, copy, (camera) => changed(camera, { mount: slid })) : next;
  }, plan);
}

const isIn = ({ plan }: Bundle, structure: string): boolean => Object.hasOwn(plan.structures, structure);

function slidAlong(mount: Mount, plan: Plan, by: Vec2): Mount | null {
  if (!('distance' in mount) || !Object.hasOwn(plan.structures, mount.host)) return null;
  const host = plan.structures[mount.host];
  const sort = mount.kind === 'soffit' ? 'soffit' : 'wall';
  const face = host && hostFaces(host).find((other) => other.face === mount.face && other.sort === sort);
  if (!face) return null;
  const along = by[0] * face.along[0] + by[1] * face.along[1];
  const distance = mount.distance + (mount.corner === 'start' ? along : 0 - along);
  const slid = { ...mount, distance };
  return placeMount(slid, plan.structures, groundHeight(plan.ground)).ok ? slid : null;
}
