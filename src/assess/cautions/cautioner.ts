import type { Vec2 } from '../../base/vector.ts';
import { editionOf } from '../../plan/editions.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { asDrawn } from '../../plan/situations.ts';
import { Builder } from '../builder.ts';
import { Obstacles } from '../ground.ts';
import type { Scene } from '../scene.ts';
import { sceneOf } from '../sceneOf.ts';
import type { Step } from '../step.ts';
import type { About } from './about.ts';
import { askedOf } from './asked.ts';
import { SEVERITIES, type Caution, type CautionReport, type Found } from './caution.ts';
import { lacksOf } from './lacks.ts';
import { pictureRays } from './pictureRays.ts';
import { ROWS } from './registry.ts';
import { sameButCards, withTicks } from './sameButCards.ts';
import { thresholdOf } from './thresholds.ts';
import { wallSpotOf } from './wallSpot.ts';
import { GROUND } from '../../model/terrainSolid.ts';

/** Finds the cautions about cameras, remembering what stands in each of a plan's conditions while nothing changes. */
export interface Cautioner {
  /**
   * The cautions about one camera, in steps of a few milliseconds; null where the plan has no such camera, or it is fixed to
   * nothing that stands.
   */
  steps(plan: Plan, camera: string): Generator<Step, CautionReport | null, void>;
}

/** @param rows those to be told; all without it */
export const createCautioner = (rows = ROWS): Cautioner => new Remembering(rows);

interface Stage {
  readonly scene: Scene;
  readonly obstacles: Obstacles;
  readonly dark: boolean;
  groundAt(place: Vec2): number;
}

class Remembering implements Cautioner {
  private readonly rows: typeof ROWS;
  private readonly asksPicture: boolean;
  private readonly builder = new Builder();
  /** By the list of solids, which the builder keeps while nothing in it changes. */
  private readonly laid = new WeakMap<Scene['solids'], Obstacles>();
  /** The last plan that was told whole, with what was told. */
  private told: { readonly plan: Plan; readonly reports: Map<string, CautionReport> } | null = null;

  constructor(rows: typeof ROWS) {
    this.rows = rows;
    this.asksPicture = Object.values(rows).some(({ picture }) => picture);
  }

  *steps(plan: Plan, id: string): Generator<Step, CautionReport | null, void> {
    if (this.told === null || !sameButCards(this.told.plan, plan)) this.told = { plan, reports: new Map() };
    const { reports } = this.told;
    const set = plan.cameras[id];
    if (set === undefined) return null;
    const known = reports.get(id);
    if (known !== undefined)
      return this.told.plan === plan ? known : { ...known, cautions: withTicks(known.cautions, set) };
    const ids: readonly (string | null)[] = [null, ...plan.situationOrder];
    const found = new Map<string, { one: Found; row: number; situations: string[] }>();
    const seen: Stage[] = [];
    let looked = 0;
    for (const [at, situation] of ids.entries()) {
      const doing = 'Looking for cautions';
      const share = at / ids.length;
      yield { share, doing };
      yield* this.builder.steps(plan, situation === null ? null : (plan.situations[situation] ?? null));
      const stage = this.stage(plan, set, situation);
      // Conditions that leave all as it is need no second look.
      if (seen.some((other) => isSame(other, stage))) continue;
      seen.push(stage);
      const about = yield* aboutOf(plan, set, stage, this.asksPicture, { share, doing });
      if (about === null) continue;
      const isFirst = looked === 0;
      looked += 1;
      for (const [row, { of, find }] of Object.entries(this.rows)) {
        if (of === 'plan' && !isFirst) continue;
        for (const one of yield* all(find(about), { share, doing }))
          take(found, one, Number(row), of === 'plan' ? null : (situation ?? asDrawn.id));
        yield { share, doing };
      }
    }
    if (looked === 0) return null;
    const report: CautionReport = {
      camera: id,
      cautions: withTicks(sorted([...found.values()], looked), set),
      lacks: lacksOf(plan, set),
    };
    reports.set(id, report);
    return report;
  }

  private stage(plan: Plan, set: PlanCamera, situation: string | null): Stage {
    const { builder } = this;
    const made = sceneOf(
      plan,
      situation === null ? null : (plan.situations[situation] ?? null),
      builder.build,
      builder.terrain,
    );
    const scene = builder.settled(made);
    let obstacles = this.laid.get(scene.solids);
    if (obstacles === undefined) {
      obstacles = new Obstacles(scene.solids, scene.closing);
      this.laid.set(scene.solids, obstacles);
    }
    const terrain = builder.terrain(plan.ground, scene.board)?.terrain ?? null;
    const hasNight = Object.values(plan.situations).some(({ night }) => night);
    return {
      scene,
      obstacles,
      dark: scene.night !== null || (!hasNight && situation === null && set.infrared !== null),
      groundAt: ([x, y]) => terrain?.heightAt(x, y) ?? scene.ground,
    };
  }
}

function* aboutOf(
  plan: Plan,
  set: PlanCamera,
  { scene, obstacles, dark, groundAt }: Stage,
  asksPicture: boolean,
  step: Step,
): Generator<Step, About | null, void> {
  const camera = scene.cameras.find(({ id }) => id === set.id);
  const fixing = scene.fixings.find((one) => one.camera === set.id);
  if (camera === undefined || fixing === undefined) return null;
  const edition = editionOf(plan.settings.edition);
  // Lays facets and their tree out, where that is not done.
  yield step;
  void obstacles.facets;
  yield step;
  void obstacles.segments;
  yield step;
  const even = scene.solids.at(-1)?.id !== GROUND;
  const picture = asksPicture
    ? yield* all(pictureRays(camera, obstacles, even ? scene.ground : null), step)
    : { rays: [], columns: 0, rows: 0 };
  const asked = yield* all(askedOf(plan, camera, obstacles, edition, groundAt), step);
  return {
    plan,
    settings: plan.settings,
    edition,
    set,
    camera,
    fixing,
    scene,
    obstacles,
    dark,
    asked,
    picture,
    wall: wallSpotOf(plan, set, fixing),
    groundAt,
    limit: (id) => thresholdOf(plan.settings, id),
  };
}

/** Whether two conditions leave the same things standing, in the same light. */
const isSame = (one: Stage, two: Stage): boolean =>
  one.scene.solids === two.scene.solids &&
  one.dark === two.dark &&
  one.scene.cameras.length === two.scene.cameras.length;

/** Runs what comes in steps of its own, or is there at once, telling each step. */
function* all<T extends object>(made: T | Generator<void, T, void>, step: Step): Generator<Step, T, void> {
  if (!('next' in made)) return made;
  for (;;) {
    const { done, value } = made.next();
    if (done) return value;
    yield step;
  }
}

/** The same caution in several conditions is told once, as bad as it gets. */
function take(
  found: Map<string, { one: Found; row: number; situations: string[] }>,
  one: Found,
  row: number,
  situation: string | null,
): void {
  const known = found.get(one.id);
  const here = situation === null ? [] : [situation];
  if (known === undefined) {
    found.set(one.id, { one, row, situations: here });
    return;
  }
  known.situations.push(...here);
  if (isWorse(one, known.one)) known.one = one;
}

const rank = ({ severity }: Found): number => SEVERITIES.indexOf(severity);

const isWorse = (one: Found, two: Found): boolean =>
  rank(one) < rank(two) || (rank(one) === rank(two) && one.weight > two.weight);

function sorted(
  found: readonly { readonly one: Found; readonly row: number; readonly situations: readonly string[] }[],
  looked: number,
): readonly Caution[] {
  return found
    .map(({ one, row, situations }): Caution => ({
      ...one,
      row,
      situations: situations.length === looked ? [] : situations,
      ticked: false,
    }))
    .sort((one, two) => (isWorse(one, two) ? -1 : isWorse(two, one) ? 1 : one.row - two.row));
}
