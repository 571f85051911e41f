import type { Vec3 } from '../base/vector.ts';
import type { CameraCoverage } from '../coverage/coverage.ts';
import { pointState } from '../coverage/point.ts';
import { ruleOf } from '../coverage/rule.ts';
import type { SiteAreas } from '../coverage/siteAreas.ts';
import type { Camera } from '../optics/camera.ts';
import type { Plan } from '../plan/plan.ts';
import { lensInside } from '../sight/lensInside.ts';
import type { Assessment, PointAnswer, Question } from './assessment.ts';
import { coverCamera, refinedCoverage, type Covered, type Judging } from './coverCamera.ts';
import {
  buildingCost,
  camerasCost,
  groundCost,
  layingCost,
  siteCost,
  UNKNOWN,
  type Size,
} from './estimate.ts';
import type { Ground } from './ground.ts';
import { KeptCoverages, type Basis } from './keptCoverages.ts';
import { Layouts, nightWords, type Layout, type Rules } from './layouts.ts';
import type { Scene } from './scene.ts';
import { revived, sendable } from './sent.ts';
import type { Found, FoundCamera, Wanted } from './shares.ts';
import { siteBetween } from './siteBetween.ts';
import type { Step } from './step.ts';
import { countedIn, exactSite, siteAsked, together, type SiteAsked } from './together.ts';

/** Works assessments out, remembering by the identity of immutable parts what has not changed since. */
export interface Session {
  /** Milliseconds of work that are not remembered, roughly. */
  estimate(plan: Plan, question: Question): number;
  /** What stands in a plan, with only the structures built that changed, on the board as it was; nothing else is touched. */
  ahead(plan: Plan, question: Question): Scene;
  /** The assessment in steps, so that a worker can stop between them. */
  steps(plan: Plan, question: Question, revision: number): Generator<Step, Assessment, void>;
  /** What is not remembered; null where even laying the plan out here would take more than `most` ms. */
  wanted(plan: Plan, question: Question, most: number): Wanted | null;
  /** Some cameras of a question in steps, for another session; with what they share where that is asked for. */
  cover(plan: Plan, question: Question, wanted: Wanted, laid: boolean): Generator<Step, Found, void>;
  /** Takes over what other sessions found for this plan and question. */
  adopt(plan: Plan, question: Question, found: readonly Found[]): void;
  /** What the exact areas of the site would be asked with; null where they are known, or come from cells. */
  site(plan: Plan, question: Question): SiteAsked | null;
  /** Takes over those areas. */
  adoptSite(asked: SiteAsked, areas: SiteAreas): void;
  /** What each camera makes of a point, the one that serves it best first; or what one alone makes of it. */
  probe(assessment: Assessment, point: Vec3, alone?: string): readonly PointAnswer[];
}

/** Runs the steps of a job to its end. */
export function runSteps<T>(steps: Generator<Step, T, void>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** More structures than this are not built only to tell what they would cost. */
const FEW = 20;

export const createSession = (): Session => new Remembering();

class Remembering implements Session {
  private readonly layouts = new Layouts();
  private readonly kept = new KeptCoverages();
  private areas: { readonly asked: SiteAsked; readonly areas: SiteAreas } | null = null;

  estimate(plan: Plan, question: Question): number {
    const { layouts } = this;
    const unknown = layouts.unknown(plan, question);
    const causes = question.causes === 'exact' ? 1 : 0;
    const size = this.size();
    const many = plan.cameraOrder.length;
    if (unknown > FEW || layouts.anyGround === null)
      return buildingCost(unknown) + layingCost(size) + camerasCost(size, many, many * causes);
    const { whole, rough } = this.foreseen(plan, question);
    const isNew = layouts.known(plan, question) === null;
    const site =
      causes > 0 && (isNew || whole + rough > 0 || this.site(plan, question) !== null) ? siteCost(many) : 0;
    const laying = isNew ? layingCost(size) : 0;
    return buildingCost(unknown) + laying + camerasCost(size, whole, (whole + rough) * causes) + site;
  }

  ahead(plan: Plan, question: Question): Scene {
    return this.layouts.ahead(plan, question);
  }

  *steps(plan: Plan, question: Question, revision: number): Generator<Step, Assessment, void> {
    const layout = yield* this.laidOut(plan, question);
    const cameras: CameraCoverage[] = [];
    for (const camera of layout.scene.cameras) {
      const share = 0.2 + (0.7 * cameras.length) / layout.scene.cameras.length;
      const { coverage } = yield* this.covered(camera, question, layout, share);
      cameras.push(coverage);
    }
    this.kept.keepOnly((id) => plan.cameras[id] !== undefined);
    yield { share: 0.9, doing: 'Putting cameras together' };
    const counted = countedIn(plan, question, layout);
    const counting = counted.flatMap((index) => cameras[index] ?? []);
    const asked = siteAsked(question, layout, counting);
    const areas = asked === null ? siteBetween(question, layout, counting) : this.siteAreas(asked);
    const site = together(layout, cameras, counted, areas);
    const { scene, edition, faceCaps, surface } = layout;
    const within = scene.boundary === null ? 'board' : 'boundary';
    return { revision, question, edition, faceCaps, scene, surface, cameras, site, within };
  }

  wanted(plan: Plan, question: Question, most: number): Wanted | null {
    const { layouts } = this;
    const unknown = layouts.unknown(plan, question);
    if (unknown > FEW || layouts.anyGround === null) return null;
    const laying = layouts.known(plan, question) === null ? groundCost(this.size()) : 0;
    if (buildingCost(unknown) + laying > most) return null;
    const layout = layouts.layout(plan, question);
    const [whole, causes]: [string[], string[]] = [[], []];
    for (const camera of layout.scene.cameras) {
      const known = this.kept.find(camera, basisOf(layout, camera), question.causes);
      if (known === null) whole.push(camera.id);
      else if (known.isRough) causes.push(camera.id);
    }
    return { whole, causes };
  }

  *cover(plan: Plan, question: Question, wanted: Wanted, laid: boolean): Generator<Step, Found, void> {
    const layout = yield* this.laidOut(plan, question);
    const whole: FoundCamera[] = [];
    const causes: Found['causes'][number][] = [];
    const asked = new Set([...wanted.whole, ...wanted.causes]);
    for (const camera of layout.scene.cameras) {
      if (!asked.has(camera.id)) continue;
      const share = 0.2 + (0.8 * (whole.length + causes.length)) / asked.size;
      const covered = yield* this.covered(camera, question, layout, share);
      if (wanted.whole.includes(camera.id)) whole.push(sendable(covered));
      else causes.push({ camera: camera.id, areas: covered.coverage.areas });
    }
    this.kept.keepOnly((id) => plan.cameras[id] !== undefined);
    const { scene, ground } = layout;
    return { laid: laid ? { scene, ground: groundToSend(ground) } : null, whole, causes };
  }

  adopt(plan: Plan, question: Question, found: readonly Found[]): void {
    const laid = found.find((one) => one.laid !== null)?.laid;
    if (laid) this.layouts.adopt(plan, question, laid.scene, laid.ground);
    const layout = this.layouts.layout(plan, question);
    const cameras = new Map(layout.scene.cameras.map((camera) => [camera.id, camera]));
    const keep = (id: string, coveredAs: (camera: Camera, basis: Basis) => Covered | undefined) => {
      const camera = cameras.get(id);
      if (camera === undefined) return;
      const basis = basisOf(layout, camera);
      const covered = coveredAs(camera, basis);
      if (covered) this.kept.set(id, basis, question.causes, covered);
    };
    for (const { whole, causes } of found) {
      for (const one of whole) keep(one.coverage.camera.id, () => revived(one, layout.ground));
      for (const { camera: id, areas } of causes)
        keep(id, (camera, basis) => {
          const known = this.kept.find(camera, basis, 'quick')?.covered;
          return known && { ...known, coverage: { ...known.coverage, areas } };
        });
    }
  }

  site(plan: Plan, question: Question): SiteAsked | null {
    const layout = this.layouts.layout(plan, question);
    const counting = countedIn(plan, question, layout).flatMap((index) => {
      const camera = layout.scene.cameras[index];
      return (camera && this.kept.find(camera, basisOf(layout, camera), 'quick')?.covered.coverage) ?? [];
    });
    const asked = siteAsked(question, layout, counting);
    return asked === null || this.knownAreas(asked) !== null ? null : asked;
  }

  adoptSite(asked: SiteAsked, areas: SiteAreas): void {
    this.areas = { asked, areas };
  }

  probe(assessment: Assessment, point: Vec3, alone?: string): readonly PointAnswer[] {
    const { scene, edition, faceCaps, question, site } = assessment;
    if (scene.cameras.length === 0) return [];
    const { facets, segments } = this.layouts.obstaclesFor(scene);
    return scene.cameras
      .filter(({ id }) => alone === undefined || id === alone)
      .map((camera): PointAnswer => {
        const rule = ruleOf(camera, question.target, edition.bands, faceCaps);
        const inside = lensInside(camera.eye, facets);
        const { normal } = site.grid.plane;
        const state = pointState(camera, point, scene.solids, segments, rule, inside, normal, scene.night);
        return { camera: camera.id, ...state };
      })
      .sort((one, two) => two.band - one.band || (two.density ?? 0) - (one.density ?? 0));
  }

  private size(): Size {
    const grid = this.layouts.anyGround?.grid;
    return {
      cells: grid ? grid.columns * grid.rows : UNKNOWN.cells,
      facets: this.layouts.triangles ?? UNKNOWN.facets,
    };
  }

  /** How many cameras would have to be covered, and of how many only causes, as far as solids tell. */
  private foreseen(plan: Plan, question: Question): { readonly whole: number; readonly rough: number } {
    const scene = this.layouts.scene(plan, question);
    const rules = this.layouts.rules(plan, question);
    let [whole, rough] = [0, 0];
    for (const camera of scene.cameras) {
      const found = this.kept.foresee(
        camera,
        scene,
        rulesIn(rules, question.target, scene, camera),
        question.causes,
      );
      if (found === null) whole += 1;
      else if (found.isRough) rough += 1;
    }
    return { whole, rough };
  }

  private *laidOut(plan: Plan, question: Question): Generator<Step, Layout, void> {
    yield { share: 0, doing: 'Building solids' };
    yield* this.layouts.building(plan, question);
    yield { share: 0.1, doing: 'Laying out cells' };
    return this.layouts.layout(plan, question);
  }

  /** A camera's coverage: as it is known, with its causes made exact, or anew. */
  private *covered(
    camera: Camera,
    question: Question,
    layout: Layout,
    share: number,
  ): Generator<Step, Covered, void> {
    const basis = basisOf(layout, camera);
    const known = this.kept.find(camera, basis, question.causes);
    if (known !== null && !known.isRough) return known.covered;
    yield { share, doing: `Working out ${camera.name}` };
    const { target, edition, faceCaps, obstacles, ground } = layout;
    const judging: Judging = { target, bands: edition.bands, caps: faceCaps, causes: question.causes };
    const covered =
      known === null
        ? coverCamera(camera, judging, obstacles, ground, this.layouts.scratch)
        : {
            ...known.covered,
            coverage: refinedCoverage(known.covered.coverage, judging, obstacles, ground),
          };
    this.kept.set(camera.id, basis, question.causes, covered);
    return covered;
  }

  private siteAreas(asked: SiteAsked): SiteAreas {
    const known = this.knownAreas(asked);
    if (known !== null) return known;
    const areas = exactSite(asked);
    this.areas = { asked, areas };
    return areas;
  }

  private knownAreas(asked: SiteAsked): SiteAreas | null {
    const known = this.areas;
    return known !== null && sameSite(known.asked, asked) ? known.areas : null;
  }
}

/** Uneven ground holds what cannot be sent. */
const groundToSend = (ground: Ground): Ground | null => (ground.uneven === null ? ground : null);

const basisOf = (layout: Layout, camera: Camera): Basis => ({
  scene: layout.scene,
  ground: layout.ground,
  rules: rulesIn(layout, layout.target, layout.scene, camera),
});

/** Target, bands, limits and light of a camera in words. */
const rulesIn = (
  { edition, faceCaps }: Rules,
  target: Layout['target'],
  { night, closing }: Scene,
  { id }: Camera,
): string => JSON.stringify([target, edition.key, faceCaps, closing, nightWords(night), id]);

/** Whether the same outlines are put together in the same way. */
const sameSite = (one: SiteAsked, two: SiteAsked): boolean =>
  one.height === two.height &&
  one.seers.length === two.seers.length &&
  one.seers.every(({ seen }, at) => seen === two.seers[at]?.seen) &&
  JSON.stringify([one.ring, one.target, one.bands, one.caps]) ===
    JSON.stringify([two.ring, two.target, two.bands, two.caps]);
