import type { Vec3 } from '../base/vector.ts';
import { PARTS, WAIST } from '../coverage/figure.ts';
import { GROUND } from '../model/terrainSolid.ts';
import type { PlanSettings } from '../plan/plan.ts';
import type { Assessment, PointAnswer } from './assessment.ts';
import type { Session } from './session.ts';

type Part = (typeof PARTS)[number];

/** What one camera makes of a person standing at a place: an answer a part, from the ground up. */
export interface FigureAnswer {
  readonly camera: string;
  readonly parts: readonly { readonly part: Part; readonly answer: PointAnswer }[];
}

/** Feet are asked for just above the ground, so that they do not lie in it, m. */
export const FEET = 0.02;

/**
 * Whether feet, waist and face of a person of the plan's stature are seen who stands where a point is, by the camera that
 * serves the point best.
 * @param point as the probe was asked, at the target's height; over uneven ground the ground itself
 * @returns     null on a wall or a roof, within a structure, and where that camera has none of the parts in its frame
 */
export function figureAt(
  session: Pick<Session, 'probe'>,
  assessment: Assessment,
  point: Vec3,
  best: PointAnswer | undefined,
  { stature, faceHeight }: Pick<PlanSettings, 'stature' | 'faceHeight'>,
): FigureAnswer | null {
  const { scene, surface } = assessment;
  if (surface !== null || best === undefined || best.state === 'inside') return null;
  const isUneven = scene.solids.at(-1)?.id === GROUND;
  const foot = isUneven ? point[2] : scene.ground;
  const heights: Readonly<Record<Part, number>> = { feet: FEET, waist: WAIST * stature, face: faceHeight };
  const parts = PARTS.flatMap((part) => {
    const at: Vec3 = [point[0], point[1], foot + heights[part]];
    const [answer] = session.probe(assessment, at, best.camera);
    return answer === undefined ? [] : [{ part, answer }];
  });
  const isNowhere = parts.every(({ answer }) => answer.state === 'out of frame' || answer.state === 'inside');
  return isNowhere ? null : { camera: best.camera, parts };
}
