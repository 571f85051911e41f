import { turn } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import { mapped } from '../commands/mapped.ts';
import type { Movable } from '../commands/thing.ts';
import type { Lamp, Patch, Plan, PlanCamera } from '../plan.ts';
import { fixedToMirrored } from './fixedToMirrored.ts';
import type { Motion } from './motion.ts';
import { movedPicture } from './movedPicture.ts';
import { movedStructure } from './movedStructure.ts';

/** The ids of things by their kind. */
export type Chosen = Readonly<Record<Exclude<Movable['kind'], 'boundary'>, ReadonlySet<string>>> & {
  readonly boundary: boolean;
};

/** @throws RangeError where the plan has no such thing */
export function chosen(plan: Plan, things: readonly Movable[]): Chosen {
  const ids = (kind: Exclude<Movable['kind'], 'boundary'>, records: object): Set<string> =>
    new Set(
      things.flatMap((thing) => {
        if (thing.kind !== kind) return [];
        if (!Object.hasOwn(records, thing.id)) throw new RangeError(`the plan has no ${kind} ${thing.id}`);
        return [thing.id];
      }),
    );
  return {
    structure: ids('structure', plan.structures),
    camera: ids('camera', plan.cameras),
    lamp: ids('lamp', plan.lamps),
    patch: ids('patch', plan.patches),
    picture: ids('picture', plan.pictures),
    boundary: things.some(({ kind }) => kind === 'boundary'),
  };
}

/**
 * Things moved, and what is fixed to them: cameras follow the structure that holds them and look the same way from it. A
 * camera that is moved without its structure stays fixed to it; turned, it turns on the spot.
 * @throws RangeError where the plan has no such thing
 */
export function movedThings(plan: Plan, things: readonly Movable[], motion: Motion): Plan {
  const ids = chosen(plan, things);
  const inOf =
    <T extends { readonly id: string }>(set: ReadonlySet<string>, move: (thing: T) => T) =>
    (thing: T): T =>
      set.has(thing.id) ? move(thing) : thing;
  const before = plan.structures;
  const structures = mapped(
    before,
    inOf(ids.structure, (structure) => movedStructure(structure, motion)),
  );
  const next: Plan = {
    ...plan,
    structures,
    cameras: mapped(plan.cameras, (camera) => movedCamera(camera, ids, motion)),
    lamps: mapped(
      plan.lamps,
      inOf(ids.lamp, (lamp) => movedLamp(lamp, motion)),
    ),
    patches: mapped(
      plan.patches,
      inOf(ids.patch, (patch) => movedPatch(patch, motion)),
    ),
    pictures: mapped(
      plan.pictures,
      inOf(ids.picture, (picture) => movedPicture(picture, motion)),
    ),
    boundary: ids.boundary && plan.boundary ? ringMoved(plan.boundary, motion) : plan.boundary,
  };
  return motion.mirrors ? fixedToMirrored(next, before, ids.structure, motion) : next;
}

function movedCamera(camera: PlanCamera, ids: Chosen, motion: Motion): PlanCamera {
  const { mount } = camera;
  const isChosen = ids.camera.has(camera.id);
  if ('host' in mount) {
    const follows = ids.structure.has(mount.host);
    // On a wall that stays, a mirrored camera has nowhere to go.
    if (motion.slides || !(follows || (isChosen && !motion.mirrors))) return camera;
    return turnedCamera(camera, motion);
  }
  if (!isChosen) return camera;
  const turned = motion.slides ? camera : turnedCamera(camera, motion);
  if (mount.kind === 'pole')
    return {
      ...turned,
      mount: { ...mount, at: motion.point(mount.at), facing: motion.bearing(mount.facing) },
    };
  const [x, y] = motion.point([mount.eye[0], mount.eye[1]]);
  return { ...turned, mount: { ...mount, eye: [x, y, mount.eye[2]] } };
}

const turnedCamera = (camera: PlanCamera, motion: Motion): PlanCamera => ({
  ...camera,
  pan: motion.bearing(camera.pan),
  roll: motion.mirrors ? turn(0, 0 - camera.roll) : camera.roll,
});

/** A lamp that is mirrored turns, but goes on throwing the light that its file says. */
const movedLamp = (lamp: Lamp, motion: Motion): Lamp => ({
  ...lamp,
  at: motion.point(lamp.at),
  light:
    lamp.light.kind === 'photometric' && !motion.slides
      ? { ...lamp.light, turn: motion.bearing(lamp.light.turn) }
      : lamp.light,
});

const movedPatch = (patch: Patch, motion: Motion): Patch => ({
  ...patch,
  outline: ringMoved(patch.outline, motion),
  rises: motion.bearing(patch.rises),
});

/** A ring moved; a mirrored one runs the way it ran, from the same first corner. */
function ringMoved(ring: readonly Vec2[], motion: Motion): readonly Vec2[] {
  const [first, ...rest] = ring.map(motion.point);
  return first && motion.mirrors ? [first, ...rest.toReversed()] : first ? [first, ...rest] : [];
}
