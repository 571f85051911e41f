import type { Structure } from '../model/structure.ts';
import type { Plan, Situation } from '../plan/plan.ts';
import type { Builder } from './builder.ts';
import type { Scene } from './scene.ts';
import { sceneOf, type Build, type Built } from './sceneOf.ts';

/** The scene that was laid out last, and of what. */
interface Last {
  readonly plan: Plan;
  readonly situation: string | null;
  readonly scene: Scene;
}

/**
 * Scenes of plans on the way to another, as a drag makes them with each move: solids are kept where structures are the same,
 * board and ground are those of the last scene. Nothing of it is remembered beyond that scene, with which the rest is kept.
 */
export class Ahead {
  private readonly builder: Builder;
  private last: Last | null = null;
  /** What the structures of the last plan are built as; by id, since five hundred look-ups by identity take a frame. */
  private drawn = new Map<string, Built>();
  private standing = new Map<string, Built>();

  constructor(builder: Builder) {
    this.builder = builder;
  }

  scene(plan: Plan, situation: Situation | null, last: Last | null): Scene {
    if (last === null) return sceneOf(plan, situation, this.builder.build, this.builder.lastTerrain);
    if (last !== this.last) {
      this.last = last;
      this.drawn = new Map();
      this.standing = new Map();
    }
    const made = sceneOf(plan, situation, this.build, this.builder.lastTerrain);
    return { ...made, board: last.scene.board };
  }

  private readonly build: Build = (structure, ground, situation) => {
    const { builder, last } = this;
    if (!last || !isOf(last.plan, structure) || (situation !== null && situation.id !== last.situation))
      return builder.build(structure, ground, situation);
    const kept = situation === null ? this.drawn : this.standing;
    const known = kept.get(structure.id);
    if (known) return known;
    const built = builder.build(structure, ground, situation);
    kept.set(structure.id, built);
    return built;
  };
}

const isOf = ({ structures }: Plan, structure: Structure): boolean => structures[structure.id] === structure;
