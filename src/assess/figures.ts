import { Scratch } from '../coverage/cells.ts';
import { countedGround } from '../coverage/countedGround.ts';
import { figureOf, WAIST, type Figure } from '../coverage/figure.ts';
import { figureBrackets } from '../coverage/figureBrackets.ts';
import { SolidsAt } from '../coverage/solidsAt.ts';
import { terrainOf } from '../model/terrain.ts';
import type { Camera } from '../optics/camera.ts';
import { editionOf } from '../plan/editions.ts';
import type { Plan } from '../plan/plan.ts';
import { sightOf } from '../sight/sightOf.ts';
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
  const inside = levels.map(({ ground }) => new SolidsAt(scene.solids, ground.plane));
  return scene.cameras.map((camera) => {
    const cells = levels.map(({ target, ground }) =>
      judgeCells(camera, { target, bands, caps: [] }, obstacles.facets, ground, scratch),
    );
    const within = levels[0]?.ground.within;
    const figure = figureOf(cells, within?.mask ?? new Uint8Array(0));
    // At night and over uneven ground only cells tell.
    if (within === undefined || terrain !== null || scene.night !== null) return { camera, figure };
    const seen = levels.flatMap(({ ground }, at) => {
      const [found, own] = [sightOf(camera, ground.plane, ground.window, obstacles.facets), inside[at]];
      return own ? [{ found, inside: own }] : [];
    });
    const between = figureBrackets(seen, countedGround(within.parts, within.whole));
    return { camera, figure: { ...figure, ...between } };
  });
}
