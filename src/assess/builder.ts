import { groundHeight, type Ground } from '../model/ground.ts';
import type { Solid } from '../model/solid.ts';
import type { Structure } from '../model/structure.ts';
import { terrainOf } from '../model/terrain.ts';
import type { Plan, Situation } from '../plan/plan.ts';
import type { Scene } from './scene.ts';
import { boxOf, builtOf, type Build, type Built } from './sceneOf.ts';
import { standingIn } from './standing.ts';
import type { Step } from './step.ts';

/** Structures between two looks at whether the job was called off. */
const STRIDE = 50;

/** Lists of solids that are kept, so that switching between a few situations finds the one it had. */
const KEPT = 6;

/** Builds solids once a structure and the way it stands, remembered by the structure's identity. */
export class Builder {
  /** As drawn, and as situations have them by `Standing.key`. */
  private known = new WeakMap<Structure, Map<string, Built>>();
  /** The height of the ground that all known structures stand on. */
  private ground = 0;
  private posts: readonly Solid[] = [];
  private terrains: {
    readonly ground: Ground;
    readonly across: string;
    readonly made: ReturnType<typeof terrainOf>;
  } | null = null;
  /** The last lists of solids, the newest first. */
  private lists: readonly (readonly Solid[])[] = [];

  readonly build: Build = (structure, ground, situation) => {
    this.standOn(ground);
    const standing = situation === null ? { structure, key: '' } : standingIn(structure, situation);
    const known = this.builtAs(structure, standing.key);
    if (known) return known;
    const built = builtOf(standing.structure, ground, null);
    this.keep(structure, standing.key, built);
    return built;
  };

  private builtAs = (structure: Structure, key: string): Built | undefined =>
    this.known.get(structure)?.get(key);

  private keep(structure: Structure, key: string, built: Built): void {
    const ways = this.known.get(structure);
    if (ways) ways.set(key, built);
    else this.known.set(structure, new Map([[key, built]]));
  }

  private standOn(ground: number): void {
    if (ground === this.ground) return;
    this.ground = ground;
    this.known = new WeakMap();
  }

  /** The structures of a plan that would have to be built for a situation. */
  private waiting(plan: Plan, situation: Situation | null): readonly Structure[] {
    this.standOn(groundHeight(plan.ground));
    const away = new Set(situation?.away);
    return plan.structureOrder.flatMap((id) => {
      const structure = plan.structures[id];
      if (!structure) return [];
      const key = situation === null || away.has(id) ? '' : standingIn(structure, situation).key;
      const isThere = this.builtAs(structure, '') && (key === '' || this.builtAs(structure, key));
      return isThere ? [] : [structure];
    });
  }

  /** How many structures of a plan would have to be built for a situation, null as drawn. */
  unknown(plan: Plan, situation: Situation | null): number {
    return this.waiting(plan, situation).length;
  }

  /** Builds what is unknown, with a step now and then. */
  *steps(plan: Plan, situation: Situation | null): Generator<Step, void, void> {
    const waiting = this.waiting(plan, situation);
    for (const [at, structure] of waiting.entries()) {
      // As drawn too: the board is laid out around that.
      this.build(structure, this.ground, null);
      if (!situation?.away.includes(structure.id)) this.build(structure, this.ground, situation);
      if (at % STRIDE === STRIDE - 1) yield { share: (0.1 * at) / waiting.length, doing: 'Building solids' };
    }
  }

  /** The terrain of a ground across a board: the very same one while neither changes. */
  readonly terrain: typeof terrainOf = (ground, board) => {
    const across = JSON.stringify(board);
    const known = this.terrains;
    if (known?.ground !== ground || known.across !== across)
      this.terrains = { ground, across, made: terrainOf(ground, board) };
    return this.terrains?.made ?? null;
  };

  /** The terrain that was made last, whatever the board: of things on the way, which may stand beyond it. */
  readonly lastTerrain: typeof terrainOf = (ground, board) =>
    this.terrains?.ground === ground ? this.terrains.made : this.terrain(ground, board);

  /** The scene with the very same list of solids as a former one where none differs, so that what hangs on it is kept. */
  settled(scene: Scene): Scene {
    const solids = scene.solids.map((solid) => this.posts.find((post) => samePost(post, solid)) ?? solid);
    this.posts = solids.filter(({ id }) => id.endsWith('.post'));
    const list = this.lists.find((known) => sameList(known, solids)) ?? solids;
    this.list(list);
    return { ...scene, solids: list };
  }

  private list(solids: readonly Solid[]): void {
    this.lists = [solids, ...this.lists.filter((known) => known !== solids)].slice(0, KEPT);
  }

  /** Takes over the solids that another session built of the structures of this plan, in the situation of the scene. */
  adopt(plan: Plan, scene: Scene): void {
    this.standOn(groundHeight(plan.ground));
    const situation = scene.situation === null ? null : (plan.situations[scene.situation] ?? null);
    const solids = grouped(scene.solids, ({ structure }) => structure);
    const faults = grouped(
      scene.faults.filter(({ path }) => path[0] === 'structures'),
      ({ path }) => String(path[1]),
    );
    for (const [id, structure] of Object.entries(plan.structures)) {
      if (situation?.away.includes(id)) continue;
      const own = solids.get(id) ?? [];
      this.keep(structure, situation === null ? '' : standingIn(structure, situation).key, {
        solids: own,
        board: boxOf(own),
        faults: (faults.get(id) ?? []).map((fault) => ({ ...fault, path: fault.path.slice(2) })),
      });
    }
    this.posts = scene.solids.filter(({ id }) => id.endsWith('.post'));
    this.list(scene.solids);
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

const sameList = (one: readonly Solid[], two: readonly Solid[]): boolean =>
  one.length === two.length && one.every((solid, at) => solid === two[at]);

/** Posts are made anew with each scene: one with the same corners is the same. */
const samePost = (one: Solid, two: Solid): boolean =>
  one.id === two.id && one.name === two.name && one.positions.every((n, at) => n === two.positions[at]);
