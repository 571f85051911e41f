import type { Vec2 } from '../../base/vector.ts';
import { PARTS, WAIST } from '../../coverage/figure.ts';
import { pointState } from '../../coverage/point.ts';
import type { BandRule } from '../../coverage/rule.ts';
import { solidsAround } from './breakpoints.ts';
import type { LineJudge } from './lineStretches.ts';
import type { StandingPerson } from './section.ts';
import { siteFromSection } from './sectionPlane.ts';

/** Width of a face, m: the pages that tell pixels across a face take 16 cm (facts D3). */
export const FACE_WIDTH = 0.16;
/** Feet are asked for just above the ground, so that they do not lie in it, m. */
const FEET = 0.02;

/** Where the person stands, and how tall they are. */
interface Standing {
  /** t, and the height of the ground there. */
  readonly at: Vec2;
  readonly stature: number;
  readonly faceHeight: number;
}

/**
 * What a camera makes of a person standing in the section, part by part, judged by rays.
 * @param rule that of a face at face height
 */
export function standingPerson(
  judge: LineJudge,
  rule: BandRule,
  { at: [distance, ground], stature, faceHeight }: Standing,
): StandingPerson {
  const { camera, plane, segments, lensInside, night, cuts } = judge;
  const heights = { feet: FEET, waist: WAIST * stature, face: faceHeight };
  const told = PARTS.map((part) => {
    const place: Vec2 = [distance, ground + heights[part]];
    const point = siteFromSection(plane, place);
    const seen = pointState(camera, point, [], segments, rule, lensInside, undefined, night);
    const inside = solidsAround(cuts, place);
    return { part, ...seen, ...(inside ? ({ state: 'inside', hider: null, band: 0 } as const) : {}) };
  });
  const face = told.find(({ part }) => part === 'face');
  if (face === undefined) throw new Error('a figure has a face');
  const { state, band, hider, lost, density, depression } = face;
  return {
    distance,
    ground,
    stature,
    faceHeight,
    parts: told.map((one) => ({ part: one.part, state: one.state, hider: one.hider })),
    face: { from: distance, to: distance, state, band, hider, lost },
    density,
    across: density === null ? null : density * FACE_WIDTH,
    above: depression,
  };
}
