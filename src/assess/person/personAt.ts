import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Night } from '../../coverage/light.ts';
import { litAt, pointState, type PointState } from '../../coverage/point.ts';
import { faceCapsOf, ruleOf } from '../../coverage/rule.ts';
import type { Looks, Target } from '../../coverage/target.ts';
import { GROUND } from '../../model/terrainSolid.ts';
import type { Camera } from '../../optics/camera.ts';
import { densityAt, type Density } from '../../optics/density.ts';
import type { Plan } from '../../plan/plan.ts';
import { lensInside } from '../../sight/lensInside.ts';
import type { Assessment } from '../assessment.ts';
import { Obstacles } from '../ground.ts';
import type { Scene } from '../scene.ts';
import { nightOf } from '../sceneOf.ts';

/** What is looked at where somebody stands, and how high its middle is above the ground, m. */
interface PartAsked {
  readonly part: 'face' | 'plate' | 'parcel';
  readonly height: number;
}

/** Where somebody stands, and where they and their car look. */
export interface StandingAsked {
  readonly camera: string;
  readonly at: Vec2;
  readonly looks: Looks;
  /** Another lens than the camera has, all else being the same; null: its own. */
  readonly lens: Pick<Camera, 'focalLength' | 'k'> | null;
  readonly parts: readonly PartAsked[];
}

/** What a camera makes of one part. */
export interface PartSeen extends PartAsked {
  /** Its middle, site frame. */
  readonly point: Vec3;
  readonly density: Density | null;
  readonly day: PointState;
  /** After dark, with the lights that the plan has, whatever conditions are judged. */
  readonly night: PointState;
  /** What lights it after dark; null: nothing. */
  readonly light: 'infrared' | 'lamp' | null;
}

/** What a camera makes of somebody who stands at a place. */
export interface PersonSeen {
  readonly camera: Camera;
  readonly parts: readonly PartSeen[];
}

/** Remembers how solids were laid out for rays, by their identity. */
export type PersonAt = (assessment: Assessment, plan: Plan, asked: StandingAsked) => PersonSeen | null;

/** @returns for each call what is seen, by the rays that judge single points; null where the scene has no such camera */
export function createPersonAt(): PersonAt {
  let laid: { readonly solids: Scene['solids']; readonly closing: number; readonly value: Obstacles } | null =
    null;
  return (assessment, plan, asked) => {
    const { solids, closing } = assessment.scene;
    if (laid?.solids !== solids || laid.closing !== closing)
      laid = { solids, closing, value: new Obstacles(solids, closing) };
    return personIn(assessment, plan, asked, laid.value);
  };
}

function personIn(
  { scene, edition }: Assessment,
  plan: Plan,
  { camera: id, at, looks, lens, parts }: StandingAsked,
  { facets, segments }: Obstacles,
): PersonSeen | null {
  const own = scene.cameras.find((one) => one.id === id);
  if (own === undefined) return null;
  const camera = lens === null ? own : { ...own, ...lens };
  const ground = (place: Vec2): number => groundHeightAt(scene, place);
  const night = scene.night ?? nightOf(plan, ground);
  const inside = lensInside(camera.eye, facets);
  const foot = ground(at);
  const seen = parts.map(({ part, height }): PartSeen => {
    const point: Vec3 = [at[0], at[1], foot + height];
    const target: Target = part === 'face' ? { kind: 'face', height, looks } : { kind: 'height', height };
    const caps = faceCapsOf(target, edition.bands, plan.settings.faceLimits);
    const rule = ruleOf(camera, target, edition.bands, caps);
    const judged = (light: Night | null) =>
      pointState(camera, point, scene.solids, segments, rule, inside, undefined, light);
    const lit = (by: Night): boolean => litAt(camera, point, UP, by, segments);
    const byOwn = lit({ ...night, lamps: [] });
    return {
      part,
      height,
      point,
      density: densityAt(camera, point),
      day: judged(null),
      night: judged(night),
      light: byOwn ? 'infrared' : lit({ ...night, infrared: new Map() }) ? 'lamp' : null,
    };
  });
  return { camera, parts: seen };
}

const UP: Vec3 = [0, 0, 1];
/** From where the ground is looked for, m above and below any. */
const FAR = 10_000;

/** The height of the ground at a place; beyond ground that is not flat its datum. */
function groundHeightAt({ solids, ground }: Scene, [x, y]: Vec2): number {
  const uneven = solids.at(-1);
  if (uneven?.id !== GROUND) return ground;
  const hit = new Obstacles([uneven]).segments.firstHit([x, y, FAR], [x, y, -FAR], 'solid');
  return hit === null ? ground : FAR - hit.share * 2 * FAR;
}
