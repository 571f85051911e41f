import type { Vec3 } from '../../base/vector.ts';
import { pointState } from '../../coverage/point.ts';
import { faceCapsOf, ruleOf } from '../../coverage/rule.ts';
import type { State } from '../../coverage/state.ts';
import type { Target } from '../../coverage/target.ts';
import { terrainOf } from '../../model/terrain.ts';
import type { Plan } from '../../plan/plan.ts';
import { lensInside } from '../../sight/lensInside.ts';
import type { Assessment } from '../assessment.ts';
import { Obstacles } from '../ground.ts';
import type { Scene } from '../scene.ts';

/** What a camera alone makes of a point that must be seen. */
export interface AskedPoint {
  readonly id: string;
  readonly name: string;
  readonly state: State;
  /** Index + 1 of the band reached, and of the one that is asked for. */
  readonly band: number;
  readonly asked: number;
}

/** What a camera makes of the points among a plan's requirements, each at its own height, by a ray each. */
export type JudgePoints = (assessment: Assessment, plan: Plan, camera: string) => readonly AskedPoint[];

/** Remembers, by its identity, what it laid out of the scene. */
export function createJudgePoints(): JudgePoints {
  let laid: { readonly solids: Scene['solids']; readonly value: Obstacles } | null = null;
  return (assessment, plan, id) => {
    const { scene, edition } = assessment;
    const camera = scene.cameras.find((one) => one.id === id);
    const points = plan.requirementOrder
      .flatMap((one) => plan.requirements[one] ?? [])
      .filter(({ shape }) => shape === 'point');
    if (camera === undefined || points.length === 0) return [];
    if (laid?.solids !== scene.solids)
      laid = { solids: scene.solids, value: new Obstacles(scene.solids, scene.closing) };
    const { facets, segments } = laid.value;
    const terrain = terrainOf(plan.ground, scene.board)?.terrain ?? null;
    const inside = lensInside(camera.eye, facets);
    return points.flatMap(({ id: requirement, name, at: [place], target, targetHeight, looks, band }) => {
      const asked = edition.bands.findIndex(({ key }) => key === band) + 1;
      if (place === undefined || asked === 0) return [];
      const wanted: Target =
        target === 'face'
          ? { kind: 'face', height: targetHeight, ...(looks && looks.kind !== 'along' ? { looks } : {}) }
          : { kind: 'height', height: targetHeight };
      const caps = faceCapsOf(wanted, edition.bands, plan.settings.faceLimits);
      const level = terrain?.heightAt(place[0], place[1]) ?? scene.ground;
      const point: Vec3 = [place[0], place[1], level + targetHeight];
      const rule = ruleOf(camera, wanted, edition.bands, caps);
      const found = pointState(camera, point, scene.solids, segments, rule, inside, undefined, scene.night);
      return [{ id: requirement, name, state: found.state, band: found.band, asked }];
    });
  };
}
