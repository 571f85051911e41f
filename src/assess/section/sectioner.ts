import type { Plane } from '../../base/plane.ts';
import type { Vec2 } from '../../base/vector.ts';
import { faceCapsOf, ruleOf } from '../../coverage/rule.ts';
import type { FaceCap, Target } from '../../coverage/target.ts';
import type { Camera } from '../../optics/camera.ts';
import type { PlanSettings } from '../../plan/plan.ts';
import { lensInside } from '../../sight/lensInside.ts';
import type { Segments } from '../../sight/segment.ts';
import type { Assessment } from '../assessment.ts';
import { Obstacles } from '../ground.ts';
import type { Board, Scene } from '../scene.ts';
import { cutSolids, groundLine, heightAlong } from './cutSolids.ts';
import { directionOf, frameEdges } from '../../optics/frameEdges.ts';
import { hiddenParts } from './hiddenParts.ts';
import { lineStretches, type LineJudge } from './lineStretches.ts';
import type { Section, SectionLine, Stretch } from './section.ts';
import { sectionPlane, siteFromSection } from './sectionPlane.ts';
import { standingPerson } from './standingPerson.ts';

/** What a section is asked besides the plan. */
interface SectionAsked {
  /** Id of the camera. */
  readonly camera: string;
  /** Id of the structure that carries it; null without one. */
  readonly host: string | null;
  /** Where a person stands, m ahead of the point below the lens. */
  readonly person: number;
  readonly settings: Pick<PlanSettings, 'stature' | 'faceHeight' | 'faceLimits'>;
  /** Another height above the ground to be told, m. */
  readonly height?: number | undefined;
}

/** What of an assessment is cut. */
interface Cut extends Pick<Assessment, 'edition' | 'faceCaps'> {
  readonly question: Pick<Assessment['question'], 'target'>;
  readonly scene: Pick<Scene, 'cameras' | 'solids' | 'ground' | 'board' | 'night' | 'closing'>;
}

/** Sections of what is shown; remembers how solids were laid out for rays, by their identity. */
export type Sectioner = (assessment: Cut, asked: SectionAsked) => Section | null;

/** @returns for each call the section, or null where the scene has no such camera */
export function createSectioner(): Sectioner {
  let laid: { readonly solids: Scene['solids']; readonly closing: number; readonly value: Obstacles } | null =
    null;
  return (assessment, asked) => {
    const { scene } = assessment;
    const camera = scene.cameras.find(({ id }) => id === asked.camera);
    if (camera === undefined) return null;
    const { solids, closing } = scene;
    if (laid?.solids !== solids || laid.closing !== closing)
      laid = { solids, closing, value: new Obstacles(solids, closing) };
    return sectionOf(assessment, camera, asked, laid.value);
  };
}

/** Behind the lens the section goes on at least so far, m. */
const BEHIND = 1;

function sectionOf(
  assessment: Cut,
  camera: Camera,
  { host, person, settings, height }: SectionAsked,
  { facets, segments }: Obstacles,
): Section {
  const { scene, edition, faceCaps, question } = assessment;
  const plane = sectionPlane(camera, scene.ground);
  const lens = camera.eye[2] - scene.ground;
  const [start, end] = alongBoard(scene.board, camera);
  const cuts = cutSolids(scene.solids, plane);
  const ground = groundLine(scene.solids, plane, Math.min(start, -BEHIND), Math.max(end, camera.range));
  const [from, to] = [ground[0]?.[0] ?? 0, ground.at(-1)?.[0] ?? 0];
  const frame = frameEdges(camera);
  const inside = lensInside(camera.eye, facets);
  const judgeFor = (target: Target, caps: readonly FaceCap[]): LineJudge => ({
    camera,
    plane,
    cuts,
    frame,
    segments,
    lensInside: inside,
    night: scene.night,
    closing: facets.closing,
    rule: ruleOf(camera, target, edition.bands, caps),
  });
  const capsOf = (target: Target) => faceCapsOf(target, edition.bands, settings.faceLimits);
  const face: Target = { kind: 'face', height: settings.faceHeight };
  const targets = asked(question.target, face, height);
  const lines = targets.map((target): SectionLine => {
    const judge = judgeFor(target, target === question.target ? faceCaps : capsOf(target));
    const line = ground.map(([t, h]): Vec2 => [t, h + target.height]);
    const stretches = lineStretches(line, judge);
    return { target, stretches, nearest: nearestOf(stretches) };
  });
  const judged = judgeFor(face, capsOf(face));
  const groundBelow = heightAlong(ground, 0);
  return {
    camera,
    datum: scene.ground,
    lens,
    groundBelow,
    mountingHeight: lens - groundBelow,
    from,
    to,
    host,
    frame,
    axisEnd: axisEnd(camera, plane, segments, ground.length > 2 ? null : lens, Math.max(-from, to)),
    cuts,
    ground,
    lines,
    hidden: inside === null ? hiddenParts(cuts, lens, frame, 4 * (to - from)) : [],
    person: standingPerson(judged, judged.rule, {
      at: [person, heightAlong(ground, person)],
      stature: settings.stature,
      faceHeight: settings.faceHeight,
    }),
  };
}

/**
 * Where the axis meets the ground or a solid, or ends.
 * @param level how far flat ground lies below the lens, m; null where the ground is a solid among the others
 */
function axisEnd(
  { eye, tilt }: Camera,
  plane: Plane,
  rays: Segments,
  level: number | null,
  far: number,
): Vec2 {
  const [dt, dh] = directionOf(tilt);
  const length = level !== null && dh < 0 ? Math.min(far, -level / dh) : far;
  const lens = eye[2] - plane.origin[2];
  const hit = rays.firstHit(eye, siteFromSection(plane, [dt * length, lens + dh * length]), 'solid');
  const share = hit?.share ?? 1;
  return [dt * length * share, lens + dh * length * share];
}

/** What is told: the chosen target first, a height that was asked for, then the ground and face height; each height once. */
function asked(chosen: Target, face: Target, height: number | undefined): readonly Target[] {
  const first: readonly Target[] = chosen.kind === 'surface' ? [] : [chosen];
  const typed: readonly Target[] = height === undefined ? [] : [{ kind: 'height', height }];
  const ground: Target = { kind: 'ground', height: 0 };
  return [...first, ...typed, ground, face].filter(
    (target, at, all) => all.findIndex((one) => isSame(one, target)) === at,
  );
}

/** Two targets of one height are told once, unless only one of them is a face. */
const isSame = (one: Target, two: Target): boolean =>
  one.height === two.height && (one.kind === 'face') === (two.kind === 'face');

/** Where covered targets ahead begin. */
const nearestOf = (stretches: readonly Stretch[]): number | null => {
  const first = stretches.find(({ state, to }) => state === 'covered' && to > 0);
  return first === undefined ? null : Math.max(0, first.from);
};

/** Between which t the line of a section lies over the board. */
function alongBoard({ left, right, bottom, top }: Board, { eye, pan }: Camera): readonly [number, number] {
  const { u } = sectionPlane({ eye, pan }, 0);
  let [start, end] = [-Infinity, Infinity];
  for (const [at, way, low, high] of [
    [eye[0], u[0], left, right],
    [eye[1], u[1], bottom, top],
  ] as const) {
    if (Math.abs(way) < 1e-12) continue;
    const [one, two] = [(low - at) / way, (high - at) / way];
    start = Math.max(start, Math.min(one, two));
    end = Math.min(end, Math.max(one, two));
  }
  return start < end ? [start, end] : [-BEHIND, BEHIND];
}
