/* Source: the depth buffer of a general renderer, see renderer.ts. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellsOf, Scratch } from '../../../src/coverage/cells.ts';
import type { Cells } from '../../../src/coverage/coverage.ts';
import { BandRule } from '../../../src/coverage/rule.ts';
import { HIDDEN, INSIDE, OUT_OF_FRAME } from '../../../src/coverage/state.ts';
import { insideMask } from '../../../src/coverage/mask.ts';
import { unevenCells } from '../../../src/coverage/unevenCells.ts';
import { unevenGround } from '../../../src/coverage/unevenGround.ts';
import { unevenInside } from '../../../src/coverage/unevenInside.ts';
import type { Solid } from '../../../src/model/solid.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { imageFromSite, siteRayFromImage } from '../../../src/optics/projection.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { Segments } from '../../../src/sight/segment.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { treeOf } from '../../../src/sight/tree.ts';
import { cellsOver, hills } from '../../coverage/unevenScene.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { boxSolid } from '../../sight/boxSolid.ts';
import { launch } from '../driver.ts';
import { drawn, rendererPage, type Shown } from './renderer.ts';

const FRAME = { width: 240, height: 135 };
const BOARD = { left: -20, bottom: -20, right: 20, top: 20 };
const SEED = 1974;

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await rendererPage(browser);
});
afterAll(() => browser.close());

/** Boxes sunk into ground of some height, none near the camera. */
function boxes(chance: Chance, camera: Camera, heightAt: (x: number, y: number) => number): Solid[] {
  const made: Solid[] = [];
  while (made.length < 14) {
    const [x, y] = [chance.between(-18, 18), chance.between(-18, 18)];
    if (Math.hypot(x - camera.eye[0], y - camera.eye[1]) < 5) continue;
    made.push(
      boxSolid(
        `box-${made.length}`,
        [x, y, heightAt(x, y) - 1],
        [chance.between(0.6, 5), chance.between(0.6, 5), chance.between(1.5, 5)],
        chance.between(0, 360),
      ),
    );
  }
  return made;
}

/** At the board's edge, looking about its middle. */
function anyCamera(chance: Chance): Camera {
  const bearing = chance.between(0, 360);
  const [sin, cos] = [Math.sin((bearing * Math.PI) / 180), Math.cos((bearing * Math.PI) / 180)];
  return cameraWith({
    eye: [-17 * sin, -17 * cos, chance.between(1.2, 7)],
    pan: bearing + chance.between(-20, 20),
    tilt: chance.between(5, 45),
    roll: chance.pick([0, chance.between(-30, 30)]),
    frame: FRAME,
    range: 500,
  });
}

/** What rays through the middles of pixels meet first. */
function met(solids: readonly Solid[], camera: Camera): Shown {
  const facets = facetsOf(solids);
  const segments = new Segments(facets, treeOf(facets));
  return Array.from({ length: FRAME.width * FRAME.height }, (_, at) => {
    const way = siteRayFromImage(camera, {
      u: (at % FRAME.width) + 0.5,
      v: Math.floor(at / FRAME.width) + 0.5,
    });
    if (way === null) return -1;
    const [x, y, z] = camera.eye;
    const end = [x + 250 * way[0], y + 250 * way[1], z + 250 * way[2]] as const;
    return segments.firstHit(camera.eye, end, 'solid')?.solid ?? -1;
  });
}

/** Whether a pixel and the eight around it show one thing: elsewhere an outline may run between their middles. */
function isPlain(shown: Shown, column: number, row: number): boolean {
  if (column < 1 || row < 1 || column > FRAME.width - 2 || row > FRAME.height - 2) return false;
  const own = shown[row * FRAME.width + column];
  return [-1, 0, 1].every((down) =>
    [-1, 0, 1].every((right) => shown[(row + down) * FRAME.width + column + right] === own),
  );
}

/** Pixels away from outlines, and those of them where two pictures differ. */
function compared(one: Shown, two: Shown): { readonly asked: number; readonly wrong: readonly string[] } {
  const wrong: string[] = [];
  let asked = 0;
  one.forEach((solid, at) => {
    const [column, row] = [at % FRAME.width, Math.floor(at / FRAME.width)];
    if (!isPlain(one, column, row) || !isPlain(two, column, row)) return;
    asked += 1;
    if (two[at] !== solid) wrong.push(`pixel ${column} ${row}: ${solid}, drawn ${two[at]}`);
  });
  return { asked, wrong };
}

/** Cells of the ground away from outlines, those hidden among them, and those where the picture shows another thing than hides them. */
function cellsAgainst(
  cells: Cells,
  heights: Float64Array | null,
  camera: Camera,
  shown: Shown,
  ground: number,
) {
  const wrong: string[] = [];
  let [asked, hidden] = [0, 0];
  const { grid, state, hider } = cells;
  state.forEach((one, at) => {
    if (one === INSIDE || one === OUT_OF_FRAME) return;
    const x = grid.left + ((at % grid.columns) + 0.5) * grid.cell;
    const y = grid.bottom + (Math.floor(at / grid.columns) + 0.5) * grid.cell;
    const image = imageFromSite(camera, [x, y, heights?.[at] ?? 0]);
    const [column, row] = [Math.floor(image?.u ?? -1), Math.floor(image?.v ?? -1)];
    if (!isPlain(shown, column, row)) return;
    asked += 1;
    const nearest = one === HIDDEN ? (hider[at] ?? -1) : ground;
    if (one === HIDDEN) hidden += 1;
    const there = shown[row * FRAME.width + column] ?? -1;
    if (there !== nearest) wrong.push(`cell ${x} ${y}: ${nearest}, drawn ${there}`);
  });
  return { asked, hidden, wrong };
}

/** What came of all trials. */
class Sums {
  private readonly wrong: string[] = [];
  private pixels = 0;
  private plain = 0;
  private cells = 0;
  private hidden = 0;

  /** @param pixels of the picture, where pixels were compared and not cells */
  add(one: { asked: number; hidden?: number; wrong: readonly string[] }, trial: string, pixels = 0): void {
    this.wrong.push(...one.wrong.map((what) => `${trial}, ${what}`));
    this.pixels += pixels;
    if (pixels > 0) this.plain += one.asked;
    else this.cells += one.asked;
    this.hidden += one.hidden ?? 0;
  }

  /** What differs, and whether there was enough of each kind to differ. */
  get all(): { readonly wrong: readonly string[]; readonly enough: boolean } {
    const enough = this.plain > 0.8 * this.pixels && this.cells > 3000 && this.hidden > 500;
    return { wrong: this.wrong, enough };
  }
}

const RULE = new BandRule([{ key: 'any', name: 'any', density: 1 }], [], 500);

test('away from outlines rays and cells over flat ground name the solid that the depth buffer shows', async () => {
  const chance = chanceFrom(SEED);
  const sums = new Sums();
  for (let trial = 0; trial < trials(3, 40); trial += 1) {
    const camera = anyCamera(chance);
    const solids = boxes(chance, camera, () => 0);
    const floor = boxSolid('floor', [0, 0, -5], [400, 400, 5]);
    const shown = await drawn(page, [...solids, floor], camera);

    const byRays = compared(met([...solids, floor], camera), shown);
    sums.add(byRays, `trial ${trial}`, shown.length);

    const grid = cellsOver(BOARD, 0.2);
    const window = [
      [-20, -20],
      [20, -20],
      [20, 20],
      [-20, 20],
    ] as const;
    const found = sightOf(camera, grid.plane, window, facetsOf(solids));
    const bare = insideMask(solids, grid, 0).map((inside) => (inside === 1 ? INSIDE : OUT_OF_FRAME));
    const cells = cellsOf(camera, found, grid, bare, RULE, new Scratch());
    const byCells = cellsAgainst(cells, null, camera, shown, solids.length);
    sums.add(byCells, `trial ${trial}`);
  }
  expect(sums.all, `seed ${chance.seed}`).toEqual({ wrong: [], enough: true });
});

test('over hills too', async () => {
  const chance = chanceFrom(SEED + 1);
  const sums = new Sums();
  for (let trial = 0; trial < trials(3, 40); trial += 1) {
    const terrain = hills(chance, BOARD, 5);
    const flying = anyCamera(chance);
    const [x, y, up] = flying.eye;
    const camera = { ...flying, eye: [x, y, terrain.heightAt(x, y) + up] as const };
    const solids = [...boxes(chance, camera, terrain.heightAt), terrain.solid];
    const shown = await drawn(page, solids, camera);

    const byRays = compared(met(solids, camera), shown);
    sums.add(byRays, `trial ${trial}`, shown.length);

    const ground = unevenGround(terrain, 0, cellsOver(BOARD, 0.2));
    const facets = facetsOf(solids);
    const cells = unevenCells(camera, ground, facets, unevenInside(solids, ground), RULE, new Scratch());
    const byCells = cellsAgainst(cells, ground.targets, camera, shown, solids.length - 1);
    sums.add(byCells, `trial ${trial}`);
  }
  expect(sums.all, `seed ${chance.seed}`).toEqual({ wrong: [], enough: true });
});
