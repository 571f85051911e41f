import { add, scale, subtract, type Vec2, type Vec3 } from '../../base/vector.ts';
import { PARTS, WAIST } from '../../coverage/figure.ts';
import { pointState } from '../../coverage/point.ts';
import { faceCapsOf, ruleOf } from '../../coverage/rule.ts';
import type { Target } from '../../coverage/target.ts';
import type { Camera } from '../../optics/camera.ts';
import type { PlanSettings } from '../../plan/plan.ts';
import type { Segments } from '../../sight/segment.ts';
import type { Assessment } from '../assessment.ts';
import { FEET } from '../figureAt.ts';
import { seenStretches, type HidingFaces } from './hidingFaces.ts';
import type { LensPicture } from './lensPicture.ts';
import type { PicturePerson } from './picture.ts';

/** Half the outline of the body in shares of the stature, from a foot up to the neck: across, up. */
const BODY: readonly Vec2[] = [
  [0.06, 0],
  [0.085, 0.45],
  [0.11, 0.78],
  [0.1, 0.82],
  [0.07, 0.845],
  [0, 0.85],
];
/** Half the width and the height of the head, and how many corners stand for its round. */
const [HEAD, ROUND] = [0.066, 20];

/** By what a person in the picture is judged. */
export interface PersonJudge {
  readonly assessment: Assessment;
  readonly camera: Camera;
  readonly segments: Segments;
  readonly lensInside: number | null;
  readonly hiding: HidingFaces;
  readonly lens: LensPicture;
}

/**
 * A card figure that stands somewhere and is turned to the lens, with what is seen of it.
 * @param at the ground below them, site frame
 */
export function personIn(
  { assessment, camera, segments, lensInside, hiding, lens }: PersonJudge,
  at: Vec3,
  { stature, faceHeight, faceLimits }: Pick<PlanSettings, 'stature' | 'faceHeight' | 'faceLimits'>,
): PicturePerson {
  const { edition, scene, question } = assessment;
  const asked = question.target;
  const face: Target = asked.kind === 'face' ? asked : { kind: 'face', height: faceHeight };
  const rule = ruleOf(camera, face, edition.bands, faceCapsOf(face, edition.bands, faceLimits));
  const heights = { feet: FEET, waist: WAIST * stature, face: faceHeight };
  const told = PARTS.map((part) => {
    const point: Vec3 = [at[0], at[1], at[2] + heights[part]];
    const judged = pointState(
      camera,
      point,
      scene.solids,
      segments,
      rule,
      lensInside,
      undefined,
      scene.night,
    );
    const place = lens.place(point);
    return { part, judged, x: place?.[0] ?? null, y: place?.[1] ?? null };
  });
  const rings = outlines(camera.eye, at, stature);
  return {
    at,
    body: rings.flatMap((ring) => lens.path(ring)),
    seen: lensInside === null ? rings.flatMap((ring) => seenOf(ring, camera.eye, hiding, lens)) : [],
    parts: told.map(({ part, judged: { state, hider }, x, y }) => ({ part, state, hider, x, y })),
    density: told.find(({ part }) => part === 'face')?.judged.density ?? null,
  };
}

/** Body and head as closed lines of the site, square to the bearing from the lens. */
function outlines(eye: Vec3, at: Vec3, stature: number): readonly (readonly Vec3[])[] {
  const [dx, dy] = [at[0] - eye[0], at[1] - eye[1]];
  const over = Math.hypot(dx, dy);
  const across: Vec3 = over < 1e-9 ? [1, 0, 0] : [dy / over, -dx / over, 0];
  const on = ([side, up]: Vec2): Vec3 => add(add(at, scale(across, side * stature)), [0, 0, up * stature]);
  const right = BODY.map(on);
  const left = BODY.toReversed().map(([side, up]) => on([-side, up]));
  const head = Array.from({ length: ROUND + 1 }, (_, k): Vec3 => {
    const toRad = (2 * Math.PI * k) / ROUND;
    return on([HEAD * 0.8 * Math.sin(toRad), 1 - HEAD + HEAD * Math.cos(toRad)]);
  });
  const [first] = right;
  return [first ? [...right, ...left, first] : [], head];
}

/** The stretches of an outline that nothing hides. */
function seenOf(ring: readonly Vec3[], eye: Vec3, hiding: HidingFaces, lens: LensPicture): Float64Array[] {
  const found: Float64Array[] = [];
  let open: Vec3[] = [];
  const close = (): void => {
    if (open.length > 1) found.push(...lens.path(open));
    open = [];
  };
  ring.forEach((to, k) => {
    const from = ring[k - 1];
    if (from === undefined) return;
    const stretches = seenStretches(hiding, subtract(from, eye), subtract(to, eye));
    const on = (share: number): Vec3 => add(from, scale(subtract(to, from), share));
    if (stretches[0] !== 0) close();
    for (let at = 0; at < stretches.length; at += 2) {
      const [start, end] = [stretches[at] ?? 0, stretches[at + 1] ?? 0];
      if (start > 0 || open.length === 0) {
        close();
        open.push(on(start));
      }
      open.push(on(end));
      if (end < 1) close();
    }
  });
  close();
  return found;
}
