import { cos, sin } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { GROUND } from '../../model/terrainSolid.ts';
import type { Camera } from '../../optics/camera.ts';
import { inFrame } from '../../optics/projection.ts';
import { quarterOf } from '../../optics/upright.ts';
import type { Plan } from '../../plan/plan.ts';
import { lensInside } from '../../sight/lensInside.ts';
import type { Assessment } from '../assessment.ts';
import { Obstacles } from '../ground.ts';
import type { Scene } from '../scene.ts';
import { bandLines } from './bandLines.ts';
import { edgeLines } from './edgeLines.ts';
import { hidingFaces, type HidingFaces } from './hidingFaces.ts';
import { fixedPlaces } from './landmarks.ts';
import { lensPicture, type LensPicture } from './lensPicture.ts';
import { personIn } from './person.ts';
import type { Landmark, Picture, PictureAround, PicturePerson } from './picture.ts';
import { spotAt, type PictureSpot } from './spotAt.ts';
import { solidEdges, type SolidEdges } from './solidEdges.ts';
import { hidingLines, horizonLines, modeFrames, rimLines } from './surround.ts';

/** Where somebody stands: m ahead of the point below the lens, or a place of the site. */
interface Stands {
  readonly ahead: number;
  readonly at: Vec2 | null;
}

/** The pictures of what is shown; remembers, by its identity, what it laid out of a scene. */
export interface Picturer {
  /** The whole picture, in steps between which it can be left; null where the scene has no such camera. */
  steps(assessment: Assessment, plan: Plan, camera: string): Generator<null, Picture | null, void>;
  /** The same at once. */
  picture(assessment: Assessment, plan: Plan, camera: string): Picture | null;
  /** What is known of it at once; quick enough for a drag. */
  around(assessment: Assessment, plan: Plan, camera: string): PictureAround | null;
  /** Somebody who stands there as this camera sees them; quick enough for a drag. */
  person(assessment: Assessment, plan: Plan, camera: string, stands: Stands): PicturePerson | null;
  /** What a place of the upright picture shows, px; null where that is nothing of the site. */
  spot(assessment: Assessment, camera: string, place: Vec2): PictureSpot | null;
}

/** What is laid out of solids, for all cameras. */
interface Laid {
  readonly scene: Scene;
  readonly obstacles: Obstacles;
  edges: SolidEdges | null;
}

/** What a camera's place among solids gives. */
interface Seen {
  readonly camera: Camera;
  readonly laid: Laid;
  readonly hiding: HidingFaces;
  readonly lensInside: number | null;
  readonly lens: LensPicture;
}

/** @returns a maker of pictures that remembers the last scene and camera */
export function createPicturer(): Picturer {
  let kept: Laid | null = null;
  let last: Seen | null = null;

  const laidOut = (scene: Scene): Laid => {
    if (kept?.scene.solids !== scene.solids || kept.scene.closing !== scene.closing)
      kept = { scene, obstacles: new Obstacles(scene.solids, scene.closing), edges: null };
    return kept;
  };

  const seenBy = (scene: Scene, camera: Camera): Seen => {
    const laid = laidOut(scene);
    if (last?.laid === laid && last.camera === camera) return last;
    const { facets } = laid.obstacles;
    const isThere = last?.laid === laid && sameEye(last.camera, camera);
    last = {
      camera,
      laid,
      hiding: isThere && last ? last.hiding : hidingFaces(facets, camera.eye),
      lensInside: isThere && last ? last.lensInside : lensInside(camera.eye, facets),
      lens: lensPicture(camera),
    };
    return last;
  };

  const cameraOf = ({ scene }: Assessment, id: string): Camera | undefined =>
    scene.cameras.find((one) => one.id === id);

  /** A camera's coverage, and what its place among solids gives. */
  const found = ({ scene, cameras }: Assessment, plan: Plan, id: string) => {
    const coverage = cameras.find(({ camera }) => camera.id === id);
    const device = plan.cameras[id]?.device;
    return coverage && device ? { coverage, device, seen: seenBy(scene, coverage.camera) } : null;
  };

  const around = ({ coverage, device, seen }: NonNullable<ReturnType<typeof found>>): PictureAround => {
    const { camera, lens, lensInside: inside } = seen;
    return {
      camera,
      turn: quarterOf(camera),
      width: lens.width,
      height: lens.height,
      lensInside: inside,
      hiding: inside === null ? hidingLines(coverage, lens) : [],
      horizon: horizonLines(camera, lens),
      rim: rimLines(camera, lens),
      modes: modeFrames(camera, device),
    };
  };

  function* steps(assessment: Assessment, plan: Plan, id: string): Generator<null, Picture | null, void> {
    const one = found(assessment, plan, id);
    if (one === null) return null;
    const { seen, coverage } = one;
    const { laid, lens, hiding, camera } = seen;
    const { facets, segments } = laid.obstacles;
    laid.edges ??= solidEdges(facets);
    yield null;
    const { visible, covered } = yield* edgeLines(camera, facets, laid.edges, hiding, lens);
    const isBlind = seen.lensInside !== null;
    yield null;
    const bands = isBlind ? [] : bandLines(coverage, assessment, segments, lens);
    yield null;
    return {
      ...around(one),
      visible: isBlind ? [] : visible,
      covered: isBlind ? [...visible, ...covered] : covered,
      bands,
      landmarks: landmarksIn(plan, seen),
    };
  }

  return {
    steps,
    picture: (assessment, plan, camera) => {
      const job = steps(assessment, plan, camera);
      for (;;) {
        const { done, value } = job.next();
        if (done) return value;
      }
    },
    around: (assessment, plan, id) => {
      const one = found(assessment, plan, id);
      return one && around(one);
    },
    person: (assessment, plan, id, { ahead, at }) => {
      const camera = cameraOf(assessment, id);
      if (camera === undefined) return null;
      const { scene } = assessment;
      const { hiding, lens, laid, lensInside: inside } = seenBy(scene, camera);
      const [x, y] = at ?? [camera.eye[0] + ahead * sin(camera.pan), camera.eye[1] + ahead * cos(camera.pan)];
      const { segments } = laid.obstacles;
      const place: Vec3 = [x, y, groundAt(scene, x, y)];
      const judge = { assessment, camera, segments, lensInside: inside, hiding, lens };
      return personIn(judge, place, plan.settings);
    },
    spot: (assessment, id, place) => {
      const camera = cameraOf(assessment, id);
      if (camera === undefined) return null;
      const { laid, lensInside: inside } = seenBy(assessment.scene, camera);
      return inside === null ? spotAt(assessment, camera, laid.obstacles.segments, place) : null;
    },
  };
}

const sameEye = (one: Camera, two: Camera): boolean =>
  one.eye[0] === two.eye[0] && one.eye[1] === two.eye[1] && one.eye[2] === two.eye[2];

/** The fixed places of what stands in the frame, judged like any single point. */
function landmarksIn(plan: Plan, { camera, laid, lens, lensInside: inside }: Seen): Landmark[] {
  const { segments } = laid.obstacles;
  // A situation may leave structures away.
  const standing = new Set(laid.scene.solids.map(({ structure }) => structure));
  const structures = plan.structureOrder.flatMap((id) => {
    const one = plan.structures[id];
    return one !== undefined && standing.has(id) ? [one] : [];
  });
  return fixedPlaces(structures, camera.eye).flatMap((fixed): Landmark[] => {
    const at = lens.place(fixed.place);
    if (at === null || !inFrame(camera, fixed.place)) return [];
    const isFree =
      inside === null &&
      segments.firstHit(camera.eye, fixed.place, 'solid') === null &&
      segments.closedHit(camera.eye, fixed.place) === null;
    const [x, y] = at;
    return [{ ...fixed, x, y, left: (100 * x) / lens.width, top: (100 * y) / lens.height, seen: isFree }];
  });
}

/** Height of the ground at a place, m above z = 0. */
function groundAt({ solids, ground }: Scene, x: number, y: number): number {
  const uneven = solids.at(-1);
  if (uneven?.id !== GROUND) return ground;
  const { positions: p, triangles } = uneven;
  for (let at = 0; at + 2 < triangles.length; at += 3) {
    const corner = (k: 0 | 1 | 2): number => 3 * (triangles[at + k] ?? 0);
    const [a, b, c] = [corner(0), corner(1), corner(2)];
    const [ax, ay] = [(p[a] ?? 0) - x, (p[a + 1] ?? 0) - y];
    const [bx, by] = [(p[b] ?? 0) - x, (p[b + 1] ?? 0) - y];
    const [cx, cy] = [(p[c] ?? 0) - x, (p[c + 1] ?? 0) - y];
    const [wa, wb, wc] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
    // Counter-clockwise from above: the surface comes before the sides and the bottom.
    if (wa < 0 || wb < 0 || wc < 0 || wa + wb + wc <= 0) continue;
    return (wa * (p[a + 2] ?? 0) + wb * (p[b + 2] ?? 0) + wc * (p[c + 2] ?? 0)) / (wa + wb + wc);
  }
  return ground;
}
