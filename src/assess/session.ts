import type { Vec3 } from '../base/vector.ts';
import { Scratch } from '../coverage/cells.ts';
import { less, NO_AREA } from '../coverage/area.ts';
import type { Band } from '../coverage/band.ts';
import type { CameraCoverage, SiteCoverage } from '../coverage/coverage.ts';
import { pointState } from '../coverage/point.ts';
import { faceCapsOf, ruleOf } from '../coverage/rule.ts';
import type { Night } from '../coverage/light.ts';
import { siteOf } from '../coverage/site.ts';
import { MOST_OVERLAID, siteAreas } from '../coverage/siteAreas.ts';
import type { FaceCap, Target } from '../coverage/target.ts';
import { lensInside } from '../sight/lensInside.ts';
import type { Camera } from '../optics/camera.ts';
import { editionOf } from '../plan/editions.ts';
import type { Plan } from '../plan/plan.ts';
import { situationIn } from '../plan/situations.ts';
import type { Assessment, PointAnswer, Question } from './assessment.ts';
import { Builder } from './builder.ts';
import { coverCamera, refinedCoverage } from './coverCamera.ts';
import { Obstacles, type Ground } from './ground.ts';
import type { Board, Scene } from './scene.ts';
import { sceneOf } from './sceneOf.ts';
import type { Step } from './step.ts';
import { askedSurface } from './surfaces.ts';
import { targetGround } from './targetGround.ts';
import type { FlatSurface } from '../model/surface.ts';

/** Works assessments out, remembering by the identity of immutable parts what has not changed since. */
export interface Session {
  /** Milliseconds of work that are not remembered, roughly. */
  estimate(plan: Plan, question: Question): number;
  /** The assessment in steps, so that a worker can stop between them. */
  steps(plan: Plan, question: Question, revision: number): Generator<Step, Assessment, void>;
  /** Takes over what another session worked out for this plan. */
  adopt(plan: Plan, assessment: Assessment): void;
  /** What each camera makes of a point, the one that serves it best first. */
  probe(assessment: Assessment, point: Vec3): readonly PointAnswer[];
}

/** Runs the steps of a job to its end. */
export function runSteps<T>(steps: Generator<Step, T, void>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** What exact causes cost a camera, roughly, ms. */
const CAUSES = 15;

/** A coverage and what it was worked out from. */
interface Kept {
  readonly obstacles: Obstacles;
  readonly ground: Ground;
  readonly edition: string;
  readonly limits: string;
  readonly causes: Question['causes'];
  readonly coverage: CameraCoverage;
}

export const createSession = (): Session => new Remembering();

class Remembering implements Session {
  private readonly builder = new Builder();
  private readonly scratch = new Scratch();
  private obstacles: (Pick<Scene, 'solids' | 'closing'> & { readonly value: Obstacles }) | null = null;
  private grounds: { readonly scene: Scene; readonly asked: string; readonly value: Ground }[] = [];
  private readonly kept = new Map<string, Kept>();
  private last: { readonly plan: Plan; readonly question: Question; readonly scene: Scene } | null = null;

  estimate(plan: Plan, question: Question): number {
    const { last } = this;
    const building = this.builder.unknown(plan, situationIn(plan, question.situation)) * 0.4;
    const cells = this.grounds[0]
      ? this.grounds[0].value.grid.columns * this.grounds[0].value.grid.rows
      : 400_000;
    const facets = this.obstacles?.value.triangles ?? 2_000;
    const aCamera = 0.5 + cells * 3e-5 + facets * 5e-4;
    const same =
      last !== null &&
      building === 0 &&
      last.plan.structures === plan.structures &&
      last.plan.boundary === plan.boundary &&
      last.plan.settings === plan.settings &&
      last.question.situation === question.situation &&
      last.question.target.height === question.target.height &&
      last.question.target.kind === question.target.kind;
    const changed = plan.cameraOrder.filter((id) => {
      const known = this.kept.get(id);
      const rough = question.causes === 'exact' && known?.causes === 'quick';
      return !same || rough || last.plan.cameras[id] !== plan.cameras[id];
    });
    const causes = question.causes === 'exact' ? CAUSES : 0;
    return building + (same ? 0 : facets * 2e-3 + cells * 2e-5) + changed.length * (aCamera + causes);
  }

  *steps(plan: Plan, question: Question, revision: number): Generator<Step, Assessment, void> {
    yield { share: 0, doing: 'Building solids' };
    const situation = situationIn(plan, question.situation);
    yield* this.builder.steps(plan, situation);
    const scene = this.settled(sceneOf(plan, situation, this.builder.build, this.builder.terrain));
    const edition = editionOf(plan.settings.edition);
    const faceCaps = faceCapsOf(question.target, edition.bands, plan.settings.faceLimits);
    const limits = JSON.stringify([faceCaps, question.target]);
    yield { share: 0.1, doing: 'Laying out cells' };
    const obstacles = this.obstaclesFor(scene);
    const { surface, target } = askedSurface(plan, scene, question.target);
    const ground = this.groundFor(plan, scene, surface, target);
    const cameras: CameraCoverage[] = [];
    for (const camera of scene.cameras) {
      const known = this.kept.get(camera.id);
      const still =
        known !== undefined &&
        known.obstacles === obstacles &&
        known.ground === ground &&
        known.edition === edition.key &&
        known.limits === limits &&
        sameCamera(known.coverage.camera, camera);
      if (still && (known.causes === 'exact' || question.causes === 'quick')) {
        cameras.push(known.coverage);
        continue;
      }
      yield {
        share: 0.2 + (0.7 * cameras.length) / scene.cameras.length,
        doing: `Working out ${camera.name}`,
      };
      const judging = { target, bands: edition.bands, caps: faceCaps, causes: question.causes };
      const coverage = still
        ? refinedCoverage(known.coverage, judging, obstacles, ground)
        : coverCamera(camera, judging, obstacles, ground, this.scratch);
      this.kept.set(camera.id, {
        obstacles,
        ground,
        edition: edition.key,
        limits,
        causes: question.causes,
        coverage,
      });
      cameras.push(coverage);
    }
    for (const id of this.kept.keys()) if (plan.cameras[id] === undefined) this.kept.delete(id);
    yield { share: 0.9, doing: 'Putting cameras together' };
    const counted = scene.cameras.flatMap(({ id }, index) =>
      question.alone === null
        ? plan.cameras[id]?.hidden
          ? []
          : [index]
        : id === question.alone
          ? [index]
          : [],
    );
    const counting = counted.flatMap((index) => cameras[index] ?? []);
    const fromCells = siteOf(
      ground.grid,
      counting.map(({ cells }) => cells),
      counted,
      ground.counted,
      ground.open,
      edition.bands.length,
    );
    const overlaid = counting.length <= MOST_OVERLAID && surface === null && ground.lit === null && ground.uneven === null;
    const site =
      question.causes === 'exact' && overlaid
        ? { ...fromCells, ...exactSite(counting, ground, scene, edition.bands, faceCaps, target) }
        : fromCells;
    this.last = { plan, question, scene };
    const within = scene.boundary === null ? 'board' : 'boundary';
    return { revision, question, edition, faceCaps, scene, cameras, site, within };
  }

  adopt(plan: Plan, assessment: Assessment): void {
    const { question, edition, cameras } = assessment;
    // The plan's own boundary, which later scenes carry: its identity tells that nothing has changed.
    const scene: Scene = { ...assessment.scene, boundary: plan.boundary };
    this.builder.adopt(plan, scene);
    const obstacles = this.obstaclesFor(scene);
    const { surface, target } = askedSurface(plan, scene, question.target);
    const ground = this.groundFor(plan, scene, surface, target);
    const limits = JSON.stringify([assessment.faceCaps, question.target]);
    for (const coverage of cameras)
      this.kept.set(coverage.camera.id, {
        obstacles,
        ground,
        edition: edition.key,
        limits,
        causes: question.causes,
        coverage,
      });
    this.last = { plan, question, scene };
  }

  probe({ scene, edition, faceCaps, question, site }: Assessment, point: Vec3): readonly PointAnswer[] {
    if (scene.cameras.length === 0) return [];
    const { facets, segments } = this.obstaclesFor(scene);
    return scene.cameras
      .map((camera): PointAnswer => {
        const rule = ruleOf(camera, question.target, edition.bands, faceCaps);
        const inside = lensInside(camera.eye, facets);
        const { normal } = site.grid.plane;
        const state = pointState(camera, point, scene.solids, segments, rule, inside, normal, scene.night);
        return { camera: camera.id, ...state };
      })
      .sort((one, two) => two.band - one.band || (two.density ?? 0) - (one.density ?? 0));
  }

  /** The scene with the very same solids and night as before where nothing has changed, so that what hangs on them is kept. */
  private settled(made: Scene): Scene {
    const scene = this.builder.settled(made);
    const before = this.last?.scene.night ?? null;
    return before !== null && scene.night !== null && sameNight(before, scene.night)
      ? { ...scene, night: before }
      : scene;
  }

  private obstaclesFor(scene: Scene): Obstacles {
    const { solids, closing } = scene;
    const known = this.obstacles;
    if (known?.solids === solids && known.closing === closing) return known.value;
    this.obstacles = { solids, closing, value: new Obstacles(solids, closing) };
    return this.obstacles.value;
  }

  /** Remembers the last three target surfaces, so that going between ground and face is cheap. */
  private groundFor(plan: Plan, scene: Scene, surface: FlatSurface | null, target: Target): Ground {
    const asked = JSON.stringify(surface === null ? target.height : target);
    const known = this.grounds.find(
      (one) =>
        one.asked === asked &&
        one.scene.ground === scene.ground &&
        one.scene.solids === scene.solids &&
        one.scene.boundary === scene.boundary &&
        one.scene.night === scene.night &&
        sameBoard(one.scene.board, scene.board),
    );
    if (known) return known.value;
    const facets = () => this.obstaclesFor(scene).facets;
    const terrain = this.builder.terrain(plan.ground, scene.board)?.terrain ?? null;
    const value = targetGround(scene, { surface, terrain, height: target.height }, facets, this.scratch);
    this.grounds = [{ scene, asked, value }, ...this.grounds].slice(0, 3);
    return value;
  }
}

/** The site's areas by the best camera, along the curves themselves. */
function exactSite(
  cameras: readonly CameraCoverage[],
  ground: Ground,
  scene: Scene,
  bands: readonly Band[],
  caps: readonly FaceCap[],
  target: Target,
): Pick<SiteCoverage, 'byBand' | 'byCount' | 'unseen'> {
  const seers = cameras.map(({ camera, sight }) => ({
    camera,
    seen: sight.seen,
    rule: ruleOf(camera, target, bands, caps),
  }));
  const { atLeast, byCount } = siteAreas(
    scene.boundary ?? ground.window,
    seers,
    ground.plane.origin[2],
    bands.length,
  );
  return {
    byCount,
    byBand: atLeast.map((area, band) => less(area, atLeast[band + 1] ?? NO_AREA)),
    unseen: less(ground.open, atLeast[0] ?? NO_AREA),
  };
}

const sameNight = (one: Night, two: Night): boolean =>
  JSON.stringify([one.lamps, one.leastLux, ...one.infrared]) ===
  JSON.stringify([two.lamps, two.leastLux, ...two.infrared]);

const sameBoard = (one: Board, two: Board): boolean =>
  one.left === two.left && one.bottom === two.bottom && one.right === two.right && one.top === two.top;

function sameCamera(one: Camera, two: Camera): boolean {
  return (
    one.name === two.name &&
    one.eye.every((n, axis) => n === two.eye[axis]) &&
    one.pan === two.pan &&
    one.tilt === two.tilt &&
    one.roll === two.roll &&
    one.focalLength === two.focalLength &&
    one.k === two.k &&
    one.range === two.range &&
    one.sensor.width === two.sensor.width &&
    one.sensor.height === two.sensor.height &&
    one.frame.width === two.frame.width &&
    one.frame.height === two.frame.height
  );
}
