import { groundHeight } from '../model/ground.ts';
import type { Solid } from '../model/solid.ts';
import type { Structure } from '../model/structure.ts';
import type { Plan } from '../plan/plan.ts';
import type { Scene } from './scene.ts';
import { boxOf, builtOf, type Build, type Built } from './sceneOf.ts';
import type { Step } from './step.ts';

/** Structures between two looks at whether the job was called off. */
const STRIDE = 50;

/** Builds solids once a structure, remembered by the structure's identity. */
export class Builder {
  private known = new WeakMap<Structure, Built>();
  /** The height of the ground that all known structures stand on. */
  private ground = 0;
  private posts: readonly Solid[] = [];
  private solids: readonly Solid[] = [];

  readonly build: Build = (structure, ground) => {
    this.standOn(ground);
    const known = this.known.get(structure);
    if (known) return known;
    const built = builtOf(structure, ground);
    this.known.set(structure, built);
    return built;
  };

  private standOn(ground: number): void {
    if (ground === this.ground) return;
    this.ground = ground;
    this.known = new WeakMap();
  }

  /** How many structures of a plan would have to be built. */
  unknown(plan: Plan): number {
    this.standOn(groundHeight(plan.ground));
    let count = 0;
    for (const id of plan.structureOrder) {
      const structure = plan.structures[id];
      if (structure && !this.known.has(structure)) count += 1;
    }
    return count;
  }

  /** Builds what is unknown, with a step now and then. */
  *steps(plan: Plan): Generator<Step, void, void> {
    this.standOn(groundHeight(plan.ground));
    const waiting = plan.structureOrder
      .flatMap((id) => plan.structures[id] ?? [])
      .filter((one) => !this.known.has(one));
    for (const [at, structure] of waiting.entries()) {
      this.build(structure, groundHeight(plan.ground));
      if (at % STRIDE === STRIDE - 1) yield { share: (0.1 * at) / waiting.length, doing: 'Building solids' };
    }
  }

  /** The scene with the very same list of solids as before where none has changed, so that what hangs on it is kept. */
  settled(scene: Scene): Scene {
    const solids = scene.solids.map((solid) => this.posts.find((post) => samePost(post, solid)) ?? solid);
    this.posts = solids.filter(({ id }) => id.endsWith('.post'));
    if (solids.length !== this.solids.length || solids.some((solid, at) => solid !== this.solids[at]))
      this.solids = solids;
    return { ...scene, solids: this.solids };
  }

  /** Takes over the solids that another session built of the structures of this plan. */
  adopt(plan: Plan, scene: Scene): void {
    this.standOn(groundHeight(plan.ground));
    const solids = grouped(scene.solids, ({ structure }) => structure);
    const faults = grouped(
      scene.faults.filter(({ path }) => path[0] === 'structures'),
      ({ path }) => String(path[1]),
    );
    for (const [id, structure] of Object.entries(plan.structures)) {
      const own = solids.get(id) ?? [];
      this.known.set(structure, {
        solids: own,
        board: boxOf(own),
        faults: (faults.get(id) ?? []).map((fault) => ({ ...fault, path: fault.path.slice(2) })),
      });
    }
    this.posts = scene.solids.filter(({ id }) => id.endsWith('.post'));
    this.solids = scene.solids;
  }
}

function grouped<T>(list: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return groups;
}

/** Posts are made anew with each scene: one with the same corners is the same. */
const samePost = (one: Solid, two: Solid): boolean =>
  one.id === two.id && one.name === two.name && one.positions.every((n, at) => n === two.positions[at]);
