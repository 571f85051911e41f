import { Scratch } from '../coverage/cells.ts';
import { figureOf, WAIST, type Figure } from '../coverage/figure.ts';
import { terrainOf } from '../model/terrain.ts';
import type { Camera } from '../optics/camera.ts';
import { editionOf } from '../plan/editions.ts';
import type { Plan } from '../plan/plan.ts';
import { judgeCells } from './coverCamera.ts';
import { Obstacles } from './ground.ts';
import type { Scene } from './scene.ts';
import { targetGround } from './targetGround.ts';

/** What a camera sees of a standing person of the plan's stature, wherever on the ground. */
export interface CameraFigure {
  readonly camera: Camera;
  readonly figure: Figure;
}

/** Feet, waist and face of a standing person for every camera of a scene. */
export function figuresOf(plan: Plan, scene: Scene, cell?: number): readonly CameraFigure[] {
  const { stature, faceHeight, edition } = plan.settings;
  const { bands } = editionOf(edition);
  const obstacles = new Obstacles(scene.solids, scene.closing);
  const terrain = terrainOf(plan.ground, scene.board)?.terrain ?? null;
  const scratch = new Scratch();
  const levels = [0, WAIST * stature, faceHeight].map((height) => ({
    target: { kind: 'height', height } as const,
    ground: targetGround(scene, { surface: null, terrain, height, cell }, () => obstacles.facets, scratch),
  }));
  return scene.cameras.map((camera) => {
    const cells = levels.map(({ target, ground }) =>
      judgeCells(camera, { target, bands, caps: [] }, obstacles.facets, ground, scratch),
    );
    const mask = levels[0]?.ground.within.mask ?? new Uint8Array(0);
    return { camera, figure: figureOf(cells, mask) };
  });
}
