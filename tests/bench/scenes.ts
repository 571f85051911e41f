import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf, type Facets } from '../../src/sight/facets.ts';
import type { Grid } from '../../src/sight/grid.ts';
import { lensInside } from '../../src/sight/lensInside.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { chanceFrom, type Chance } from '../house/seeded.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';
import { framedCells } from './framedCells.ts';
import { rowFill } from './rowFill.ts';
import { ballSolid, gableSolid } from './shapes.ts';

/** Half of a site's width and depth, m; the site lies around the origin. */
type Half = readonly [x: number, y: number];

export interface BenchScene {
  readonly name: string;
  readonly half: Half;
  readonly solids: readonly Solid[];
  readonly facets: Facets;
  /**
   * Chosen by chance among those with no lens inside a solid, 22 to 35 % of the cells of its grid in the frame, and 15 to
   * 90 % of those hidden.
   */
  readonly cameras: readonly Camera[];
}

const CAMERAS = 4;
const RANGE = 60;
const TARGET = 1.6;
const IN_FRAME = { least: 0.22, most: 0.35 };
const HIDDEN = { least: 0.15, most: 0.9 };

/** Cells of about the number asked for, over the square of the range around a lens, cut by the site. */
export function gridAround([x, y]: Vec3, [halfX, halfY]: Half, cells: number): Grid {
  const [left, right] = [Math.max(-halfX, x - RANGE), Math.min(halfX, x + RANGE)];
  const [bottom, top] = [Math.max(-halfY, y - RANGE), Math.min(halfY, y + RANGE)];
  const cell = Math.sqrt(((right - left) * (top - bottom)) / cells);
  const [columns, rows] = [Math.round((right - left) / cell), Math.round((top - bottom) / cell)];
  return { plane: horizontalPlane(TARGET), left, bottom, cell, columns, rows };
}

/** Things to stand about: fences, hedges, cars and boxes. */
const small = (chance: Chance, count: number, [x, y]: Half): readonly Solid[] =>
  Array.from({ length: count }, (_, at) =>
    boxSolid(
      `small-${at}`,
      [chance.between(-x, x), chance.between(-y, y), 0],
      [chance.between(0.05, 4), chance.between(0.05, 1.5), chance.between(0.5, 2.5)],
      chance.pick([0, 90, chance.between(0, 360)]),
    ),
  );

/** A house of 32 triangles: walls, a pitched roof with eaves, a chimney. */
const house = (id: string, [x, y]: Half, size: Half, height: number): readonly Solid[] => [
  boxSolid(id, [x, y, 0], [size[0], size[1], height]),
  gableSolid(`${id}-roof`, [x, y, height], [size[0] + 0.8, size[1] + 0.8, 2.2]),
  boxSolid(`${id}-chimney`, [x + size[0] / 4, y + size[1] / 4, height], [0.6, 0.6, 3]),
];

const trees = (chance: Chance, count: number, [x, y]: Half, meridians: number, bands: number) =>
  Array.from({ length: count }, (_, at) =>
    ballSolid(
      `tree-${at}`,
      [chance.between(-x, x), chance.between(-y, y), chance.between(1.5, 4)],
      chance.between(0.6, 2.2),
      { meridians, bands, bump: 0 },
    ),
  );

/** 328 triangles. */
const oneHouse = (chance: Chance): readonly Solid[] => [
  ...house('house', [0, 0], [10, 8], 5.5),
  boxSolid('garage', [9, -2, 0], [5, 6, 2.8]),
  gableSolid('garage-roof', [9, -2, 2.8], [5.6, 6.6, 1.2]),
  ...trees(chance, 3, [18, 14], 6, 4),
  ...small(chance, 14, [18, 14]),
];

/** Two rows of houses along a road, with trees, fences, hedges and cars: 6,368 triangles. */
const street = (chance: Chance): readonly Solid[] => [
  ...Array.from({ length: 24 }, (_, at) =>
    house(`house-${at}`, [-36 + 6.4 * (at % 12), at < 12 ? 15 : -15], [5.2, 9], chance.between(3, 6)),
  ).flat(),
  ...trees(chance, 40, [39, 24], 8, 6),
  ...small(chance, 200, [39, 24]),
];

/** Plots of 15 m, so many along each side: of twenty 99,960 triangles. */
const town = (chance: Chance, side: number): readonly Solid[] => {
  const edge = 7.5 * side;
  const about: Half = [edge - 1, edge - 1];
  return [
    ...Array.from({ length: side * side }, (_, at) =>
      house(
        `house-${at}`,
        [7.5 - edge + 15 * (at % side), 7.5 - edge + 15 * Math.floor(at / side)],
        [chance.between(6, 10), chance.between(5, 9)],
        chance.between(3, 6),
      ),
    ).flat(),
    ...trees(chance, 2 * side * side, about, 8, 6),
    ...small(chance, Math.floor(4.825 * side * side), about),
  ];
};

/** Fifty lumps, as scans or carved hedges would be: with a hundred meridians of 20,000 triangles each, a million. */
const lumps = (chance: Chance, meridians: number): readonly Solid[] =>
  Array.from({ length: 50 }, (_, at) =>
    ballSolid(
      `lump-${at}`,
      [chance.between(-38, 38), chance.between(-23, 23), chance.between(0.5, 3)],
      chance.between(0.8, 2.5),
      { meridians, bands: meridians + 1, bump: 0.1 },
    ),
  );

/** A town of so many plots along each side. */
export const townScene = (side: number): BenchScene =>
  sceneOf(`town of ${side} by ${side}`, [7.5 * side, 7.5 * side], town(chanceFrom(7), side), chanceFrom(8));

/** The lumps of S4 in meshes of so many meridians. */
export const lumpScene = (meridians: number): BenchScene =>
  sceneOf(`lumps of ${meridians}`, [40, 25], lumps(chanceFrom(9), meridians), chanceFrom(10));

const SCENES = {
  'S1 house': { half: [40, 25], seed: 3, solids: oneHouse },
  'S2 street': { half: [40, 25], seed: 5, solids: street },
  'S3 town': { half: [150, 150], seed: 7, solids: (chance) => town(chance, 20) },
  'S4 dense': { half: [40, 25], seed: 9, solids: (chance) => lumps(chance, 100) },
} satisfies Record<string, { half: Half; seed: number; solids: (chance: Chance) => readonly Solid[] }>;

export type SceneName = keyof typeof SCENES;

/** A scene with its cameras, the same in every run. */
export function benchScene(name: SceneName): BenchScene {
  const { half, seed, solids } = SCENES[name];
  return sceneOf(name, [half[0], half[1]], solids(chanceFrom(seed)), chanceFrom(seed + 1));
}

function sceneOf(name: string, half: Half, solids: readonly Solid[], chance: Chance): BenchScene {
  const facets = facetsOf(solids);
  const cameras: Camera[] = [];
  const fill = rowFill(facets);
  while (cameras.length < CAMERAS) {
    const camera = cameraWith({
      id: `camera-${cameras.length}`,
      eye: [
        chance.between(-0.75 * half[0], 0.75 * half[0]),
        chance.between(-0.3 * half[1], 0.3 * half[1]),
        chance.between(5.9, 6.5),
      ],
      pan: chance.between(0, 360),
      tilt: chance.between(15, 40),
      focalLength: 2,
      range: RANGE,
    });
    const grid = gridAround(camera.eye, half, 10_000);
    const { rows, solids: nearest } = fill(camera, grid);
    const { hidden } = framedCells(camera, grid, rows, nearest);
    const framed = hidden.length / (grid.columns * grid.rows);
    const behind = hidden.reduce((sum, one) => sum + one, 0) / Math.max(1, hidden.length);
    const fits = within(IN_FRAME, framed) && within(HIDDEN, behind);
    if (fits && lensInside(camera.eye, facets) === null) cameras.push(camera);
  }
  return { name, half, solids, facets, cameras };
}

const within = ({ least, most }: { readonly least: number; readonly most: number }, share: number): boolean =>
  share >= least && share <= most;
