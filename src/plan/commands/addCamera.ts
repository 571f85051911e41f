import type { Mount } from '../../optics/mount.ts';
import { defaultDevice, unknownSheet } from '../defaultDevice.ts';
import type { Plan, PlanCamera } from '../plan.ts';
import { freshId, takenIds } from './freshId.ts';

/** How far a new camera counts, m: beyond it a yard is no longer one camera's business; common practice, no source. */
const FIRST_RANGE = 30;

/**
 * A camera for this plan that is not in it yet, with the next free name: C1, C2 …, its id the same where that is free.
 * @param aim where it shall look, °
 */
export function newCamera(
  plan: Plan,
  mount: Mount,
  aim: { readonly pan: number; readonly tilt: number },
): PlanCamera {
  const names = new Set(Object.values(plan.cameras).map((camera) => camera.name));
  const taken = takenIds(plan);
  const id = freshId(new Set([...taken, ...names]), 'C');
  return {
    id,
    name: id,
    mount,
    pan: aim.pan,
    tilt: aim.tilt,
    roll: 0,
    device: defaultDevice,
    housing: null,
    sheet: unknownSheet,
    range: FIRST_RANGE,
    infrared: null,
    exposure: null,
    card: { ticked: [], asBuilt: {} },
    hidden: false,
    locked: false,
  };
}

/**
 * Puts a camera into the plan, last in order.
 * @throws RangeError where its id is taken
 */
export function addCamera(plan: Plan, camera: PlanCamera): Plan {
  if (takenIds(plan).has(camera.id)) throw new RangeError(`the id ${camera.id} is taken`);
  return {
    ...plan,
    cameras: { ...plan.cameras, [camera.id]: camera },
    cameraOrder: [...plan.cameraOrder, camera.id],
  };
}
