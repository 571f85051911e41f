import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Edition } from '../../coverage/band.ts';
import type { Solid } from '../../model/solid.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Plan, PlanCamera, PlanSettings } from '../../plan/plan.ts';
import type { Obstacles } from '../ground.ts';
import type { Fixing, Scene } from '../scene.ts';
import type { Asked } from './asked.ts';
import type { Place } from './caution.ts';
import type { PictureRays } from './pictureRays.ts';
import type { ThresholdId } from './thresholds.ts';
import type { WallSpot } from './wallSpot.ts';

/** All that a row may ask of one camera in one situation. Site frame, m and °. */
export interface About {
  readonly plan: Plan;
  readonly settings: PlanSettings;
  readonly edition: Edition;
  readonly set: PlanCamera;
  readonly camera: Camera;
  readonly fixing: Fixing;
  readonly scene: Scene;
  readonly obstacles: Obstacles;
  /** It is looked at in the dark: a night of the plan, or as drawn where the camera has infrared and the plan no night. */
  readonly dark: boolean;
  /** What must be seen, with what this camera sees of it. */
  readonly asked: readonly Asked[];
  /** What is in the picture, by rays. */
  readonly picture: PictureRays;
  /** Where on a wall it is fixed; null on a post, under a soffit and where it is fixed to nothing. */
  readonly wall: WallSpot | null;
  /** Height of the ground, m above z = 0. */
  groundAt(place: Vec2): number;
  limit(id: ThresholdId): number;
}

/** The solid of an index. @throws RangeError where the scene has none */
export function solidOf({ scene }: Pick<About, 'scene'>, index: number): Solid {
  const solid = scene.solids[index];
  if (solid === undefined) throw new RangeError(`no solid ${index} of ${scene.solids.length}`);
  return solid;
}

/** A place on a solid, with the thing that a person selects for it: its structure, or the camera whose post it is. */
export function placeOn({ plan }: Pick<About, 'plan'>, { structure }: Solid, at: Vec3): Place {
  if (Object.hasOwn(plan.structures, structure)) return { at, thing: { kind: 'structure', id: structure } };
  if (Object.hasOwn(plan.cameras, structure)) return { at, thing: { kind: 'camera', id: structure } };
  return { at, thing: null };
}

/** A place that concerns the camera itself. */
export const placeOfCamera = ({ set }: Pick<About, 'set'>, at: Vec3): Place => ({
  at,
  thing: { kind: 'camera', id: set.id },
});

/** Whether a solid is leaves: the crown of a tree, or a hedge. */
export function isLeaves({ plan }: Pick<About, 'plan'>, solid: Solid): boolean {
  const structure = plan.structures[solid.structure];
  if (structure?.kind === 'barrier') return structure.sort === 'hedge';
  return structure?.kind === 'tree' && solid.id.endsWith('.crown');
}

/** The ray from a lens along a unit direction, so far. */
export const alongRay = (eye: Vec3, way: Vec3, far: number): Vec3 => [
  eye[0] + way[0] * far,
  eye[1] + way[1] * far,
  eye[2] + way[2] * far,
];

/** An id of letters, digits and hyphens that names a row and what it is about; at most 64 characters. */
export const cautionId = (row: number, ...about: readonly string[]): string =>
  [String(row), ...about]
    .join('-')
    .replace(/[^A-Za-z0-9_-]/g, '-')
    .slice(0, 64);

/**
 * The id of a caution that somebody ticks: it carries the place, to the centimetre, so that a hole that has moved is to be
 * looked at again.
 */
export function stopId(row: number, what: string, at: Vec3): string {
  let hash = 0x811c9dc5;
  for (const n of at) hash = Math.imul(hash ^ (Math.round(n * 100) | 0), 0x01000193) >>> 0;
  return cautionId(row, what.slice(0, 40), hash.toString(16).padStart(8, '0'));
}
