import type { HostFace } from '../../model/face.ts';
import { faceTopAt } from '../../model/faces.ts';
import { groundHeight } from '../../model/ground.ts';
import type { Mount } from '../../optics/mount.ts';
import { moveMount } from '../../plan/commands/moveMount.ts';
import type { MountMeasures } from '../../plan/commands/moveMount.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Limit } from '../../plan/limits.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { cornerNames } from '../tools/mount/cornerNames.ts';
import { faceOf } from '../tools/mount/faceOf.ts';
import type { Setting } from './setting.ts';

/** How far below the top of its wall a hole keeps, m. */
const EDGE = 0.01;

/** The measures of a camera's mount that can be typed, in the order of the sheet. */
export function mountSettings(plan: Plan, { id, mount }: PlanCamera): readonly Setting[] {
  const measure = (
    key: string,
    label: string,
    value: number,
    bounds: Limit,
    measures: (value: number) => MountMeasures,
    kind: Setting['measure'] = 'length',
  ): Setting => ({
    key,
    label,
    measure: kind,
    bounds,
    value,
    change: (now, next) => moveMount(now, id, measures(next)),
  });
  const own = (
    key: 'standOff' | 'reach' | 'drop' | 'inset' | 'diameter',
    label: string,
    value: number,
    bounds: Limit,
  ) => measure(key, label, value, bounds, (next) => ({ [key]: next }));
  const face = faceOf(plan, mount);
  const height = (value: number) =>
    measure('height', 'Mounting height', value, heightBounds(plan, mount, face), (next) => ({
      height: next,
    }));
  const distance = (corner: 'start' | 'end', value: number) => {
    const name = face ? cornerNames(face)[corner] : corner;
    const bounds = { least: 0, most: face?.width ?? LIMITS.size.most };
    return measure('distance', `From the ${name} corner`, value, bounds, (next) => ({ distance: next }));
  };
  switch (mount.kind) {
    case 'flush':
      return [
        height(mount.height),
        distance(mount.corner, mount.distance),
        own('standOff', 'Lens off the wall', mount.standOff, LIMITS.standOff),
      ];
    case 'arm':
      return [
        height(mount.height),
        distance(mount.corner, mount.distance),
        own('reach', 'Reach of the arm', mount.reach, LIMITS.reach),
        own('drop', 'Lens below the hole', mount.drop, LIMITS.reach),
      ];
    case 'soffit':
      return [
        distance(mount.corner, mount.distance),
        own('inset', 'Out from the wall', mount.inset, { least: 0, most: face?.depth ?? LIMITS.reach.most }),
        own('drop', 'Lens below the soffit', mount.drop, LIMITS.reach),
      ];
    case 'corner':
      return [height(mount.height), own('reach', 'Reach of the arm', mount.reach, LIMITS.reach)];
    case 'pole': {
      const [x, y] = mount.at;
      return [
        height(mount.height),
        measure('at x', 'East', x, LIMITS.coordinate, (next) => ({ at: [next, y] })),
        measure('at y', 'North', y, LIMITS.coordinate, (next) => ({ at: [x, next] })),
        own('reach', 'Lens off the axis', mount.reach, LIMITS.reach),
        measure(
          'facing',
          'Arm points to',
          mount.facing,
          LIMITS.bearing,
          (next) => ({ facing: next }),
          'bearing',
        ),
        own('diameter', 'Pole across', mount.diameter, { least: 0.01, most: LIMITS.standOff.most }),
      ];
    }
    case 'loose': {
      const [x, y, z] = mount.eye;
      return [
        measure('eye x', 'East', x, LIMITS.coordinate, (next) => ({ eye: [next, y, z] })),
        measure('eye y', 'North', y, LIMITS.coordinate, (next) => ({ eye: [x, next, z] })),
        measure('eye z', 'Lens above z = 0', z, LIMITS.level, (next) => ({ eye: [x, y, next] })),
      ];
    }
  }
}

/** The heights at which the hole lies on the face; above ground, where the mount has none. */
export function heightBounds(plan: Plan, mount: Mount, face: HostFace | null): Limit {
  if (!face || !('distance' in mount)) return LIMITS.height;
  const along = mount.corner === 'start' ? mount.distance : face.width - mount.distance;
  const below = groundHeight(plan.ground) + (mount.kind === 'arm' ? mount.drop : 0);
  // A hand's breadth of wall above the hole, where there is as much.
  const most = faceTopAt(face, along) - below - EDGE;
  const least = Math.max(LIMITS.height.least, face.foot - below);
  return most > least ? { least, most } : LIMITS.height;
}

/** Measures the camera's place from the other corner of its face; the camera stays where it is. */
export function switchCorner(plan: Plan, { id, mount }: PlanCamera): Plan {
  const face = faceOf(plan, mount);
  if (!face || !('corner' in mount)) return plan;
  const corner = mount.corner === 'start' ? 'end' : 'start';
  return moveMount(plan, id, { corner, distance: Math.max(0, rounded(face.width - mount.distance)) });
}

/** To a nanometre, so that there and back is the same number. */
const rounded = (metres: number): number => Math.round(metres * 1e9) / 1e9;
