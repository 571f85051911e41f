import { litCells } from '../coverage/litGround.ts';
import { boardGrid } from '../coverage/boardGrid.ts';
import { ringsMask } from '../coverage/mask.ts';
import { less } from '../coverage/area.ts';
import type { Scratch } from '../coverage/cells.ts';
import { INSIDE } from '../coverage/state.ts';
import { areaOf, tally } from '../coverage/tally.ts';
import { unevenBlocked } from '../coverage/unevenCells.ts';
import { unevenGround } from '../coverage/unevenGround.ts';
import { unevenInside } from '../coverage/unevenInside.ts';
import type { Terrain } from '../model/terrain.ts';
import type { Facets } from '../sight/facets.ts';
import { horizontalPlane } from '../base/plane.ts';
import { boardCorners, ringsArea, type Ground } from './ground.ts';
import type { Scene } from './scene.ts';

/** A target surface a height above uneven ground: only cells can tell, so that every area carries its ±. */
export function unevenTarget(
  scene: Scene,
  terrain: Terrain,
  height: number,
  facets: () => Facets,
  scratch: Scratch,
  cell?: number,
): Ground {
  const plane = horizontalPlane(scene.ground + height);
  const grid = boardGrid(plane, scene.board, cell);
  const window = boardCorners(scene.board);
  const rings = scene.boundary === null ? [window] : [scene.boundary];
  const uneven = unevenGround(terrain, height, grid);
  const bare = unevenInside(scene.solids, uneven);
  const mask = ringsMask(rings, grid);
  const inside = areaOf(
    tally(
      grid,
      bare.map((state) => (state === INSIDE ? 1 : 0)),
      mask,
      2,
    ),
    1,
    grid,
  );
  const total = ringsArea(rings);
  const { night } = scene;
  const place = (at: number) =>
    [
      grid.left + ((at % grid.columns) + 0.5) * grid.cell,
      grid.bottom + (Math.floor(at / grid.columns) + 0.5) * grid.cell,
      uneven.targets[at] ?? 0,
    ] as const;
  const cells =
    night &&
    litCells(night, bare.length, place, plane.normal, ({ eye }) =>
      unevenBlocked(eye, uneven, facets(), scratch),
    );
  return {
    plane,
    floor: horizontalPlane(scene.ground),
    grid,
    window,
    uneven,
    bare,
    counted: mask.map((within, at) => (within === 1 && bare[at] !== INSIDE ? 1 : 0)),
    open: less(total, inside),
    within: {
      mask,
      total,
      inside,
      cut: null,
      glazed: new Float64Array(0),
      parts: [window],
      whole: scene.boundary === null,
    },
    lit: night && { night, plane, lamps: [], cells },
  };
}
