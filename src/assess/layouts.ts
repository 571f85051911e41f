import { Scratch } from '../coverage/cells.ts';
import type { Edition } from '../coverage/band.ts';
import type { Night } from '../coverage/light.ts';
import { faceCapsOf } from '../coverage/rule.ts';
import type { FaceCap, Target } from '../coverage/target.ts';
import type { FlatSurface } from '../model/surface.ts';
import { editionOf } from '../plan/editions.ts';
import type { Plan } from '../plan/plan.ts';
import { situationIn } from '../plan/situations.ts';
import type { Question } from './assessment.ts';
import { Ahead } from './ahead.ts';
import { Builder } from './builder.ts';
import { Obstacles, type Ground } from './ground.ts';
import { Places } from './places.ts';
import type { Board, Scene } from './scene.ts';
import { sceneOf } from './sceneOf.ts';
import type { Step } from './step.ts';
import { askedSurface } from './surfaces.ts';
import { targetGround } from './targetGround.ts';

/** By which rules a question is judged. */
export interface Rules {
  readonly edition: Edition;
  readonly faceCaps: readonly FaceCap[];
}

/** A question laid out: all that its cameras share. */
export interface Layout extends Rules {
  readonly scene: Scene;
  readonly obstacles: Obstacles;
  readonly ground: Ground;
  /** What is covered: the question's target, or the ground where its surface is gone. */
  readonly target: Target;
  /** Null for a level target. */
  readonly surface: FlatSurface | null;
}

/** Grounds that are kept, so that going between ground and face is cheap. */
const KEPT = 3;

/** Lays questions out, remembering what has not changed: solids by structure, facets by list of solids, grounds by target. */
export class Layouts {
  readonly scratch = new Scratch();
  private readonly builder = new Builder();
  private readonly onTheWay = new Ahead(this.builder);
  private readonly places = new Places();
  private lastScene: {
    readonly plan: Plan;
    readonly situation: string | null;
    readonly scene: Scene;
  } | null = null;
  private obstacles: {
    readonly solids: Scene['solids'];
    readonly closing: number;
    readonly value: Obstacles;
  } | null = null;
  private grounds: { readonly scene: Scene; readonly asked: string; readonly value: Ground }[] = [];

  /** How many structures would have to be built. */
  unknown(plan: Plan, question: Question): number {
    return this.builder.unknown(plan, situationIn(plan, question.situation));
  }

  /** Builds what is unknown, in steps. */
  *building(plan: Plan, question: Question): Generator<Step, void, void> {
    yield* this.builder.steps(plan, situationIn(plan, question.situation));
  }

  /** The scene of a question, with the very same solids and night as before where nothing has changed. */
  scene(plan: Plan, question: Question): Scene {
    const last = this.lastScene;
    if (last?.plan === plan && last.situation === question.situation) return last.scene;
    const made = sceneOf(
      plan,
      situationIn(plan, question.situation),
      this.builder.build,
      this.builder.terrain,
      this.places.place,
    );
    const scene = withNight(this.builder.settled(made), last?.scene.night ?? null);
    this.lastScene = { plan, situation: question.situation, scene };
    return scene;
  }

  /** What stands in a plan on the way to another (ahead.ts). */
  ahead(plan: Plan, question: Question): Scene {
    return this.onTheWay.scene(plan, situationIn(plan, question.situation), this.lastScene);
  }

  rules({ settings }: Plan, { target }: Question): Rules {
    const edition = editionOf(settings.edition);
    return { edition, faceCaps: faceCapsOf(target, edition.bands, settings.faceLimits) };
  }

  /** The triangles of the last scene that was laid out; null before any. */
  get triangles(): number | null {
    return this.obstacles?.value.triangles ?? null;
  }

  /** The ground that a question has been laid out with; null where it would have to be made. */
  known(plan: Plan, question: Question): Ground | null {
    const scene = this.scene(plan, question);
    return this.knownGround(scene, askedFor(plan, scene, question)) ?? null;
  }

  /** Any ground that is kept, the last one first: what a new one costs is told by it. */
  get anyGround(): Ground | null {
    return this.grounds[0]?.value ?? null;
  }

  layout(plan: Plan, question: Question): Layout {
    const scene = this.scene(plan, question);
    const obstacles = this.obstaclesFor(scene);
    const { surface, target } = askedSurface(plan, scene, question.target);
    const asked = askedFor(plan, scene, question);
    const terrain = this.builder.terrain(plan.ground, scene.board)?.terrain ?? null;
    const wanted = { surface, terrain, height: target.height };
    const ground =
      this.knownGround(scene, asked) ?? targetGround(scene, wanted, () => obstacles.facets, this.scratch);
    this.keepGround(scene, asked, ground);
    return { ...this.rules(plan, question), scene, obstacles, ground, target, surface };
  }

  /** Takes over what another session laid out for the same plan. */
  adopt(plan: Plan, question: Question, made: Scene, ground: Ground | null): void {
    // The plan's own boundary, which later scenes carry: its identity tells that nothing has changed.
    const scene: Scene = { ...made, boundary: plan.boundary };
    this.builder.adopt(plan, scene);
    this.lastScene = { plan, situation: question.situation, scene };
    if (ground !== null) this.keepGround(scene, askedFor(plan, scene, question), ground);
  }

  obstaclesFor({ solids, closing }: Pick<Scene, 'solids' | 'closing'>): Obstacles {
    if (this.obstacles?.solids !== solids || this.obstacles.closing !== closing)
      this.obstacles = { solids, closing, value: new Obstacles(solids, closing) };
    return this.obstacles.value;
  }

  private knownGround(scene: Scene, asked: string): Ground | undefined {
    return this.grounds.find(
      (one) =>
        one.asked === asked &&
        one.scene.ground === scene.ground &&
        one.scene.solids === scene.solids &&
        one.scene.boundary === scene.boundary &&
        one.scene.night === scene.night &&
        sameBoard(one.scene.board, scene.board),
    )?.value;
  }

  private keepGround(scene: Scene, asked: string, value: Ground): void {
    const others = this.grounds.filter((one) => one.value !== value);
    this.grounds = [{ scene, asked, value }, ...others].slice(0, KEPT);
  }
}

/** By what a ground is told from others of the same scene. */
function askedFor(plan: Plan, scene: Scene, question: Question): string {
  const { surface, target } = askedSurface(plan, scene, question.target);
  return JSON.stringify(surface === null ? target.height : [surface.plane, surface.rings]);
}

const withNight = (scene: Scene, before: Night | null): Scene =>
  before !== null && scene.night !== null && nightWords(before) === nightWords(scene.night)
    ? { ...scene, night: before }
    : scene;

/** What lights a night, in words by which nights are told apart. */
export const nightWords = (night: Night | null): string =>
  JSON.stringify(night && [night.lamps, night.leastLux, ...night.infrared]);

export const sameBoard = (one: Board, two: Board): boolean =>
  one.left === two.left && one.bottom === two.bottom && one.right === two.right && one.top === two.top;
