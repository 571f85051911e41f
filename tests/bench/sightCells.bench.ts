import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { horizontalPlane } from '../../src/sight/plane.ts';
import { Segments } from '../../src/sight/segment.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { treeOf } from '../../src/sight/tree.ts';
import { chanceFrom, type Chance } from '../house/seeded.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';
import type { Bench } from './main.ts';
import { rayPerCell } from './rayPerCell.ts';
import { rowFill } from './rowFill.ts';
import { median, ratio, table, timesOf } from './rounds.ts';

const ROUNDS = 7;
const CAMERAS = 4;
/** 400,000 cells of 0.1 m. */
const GRID = { plane: horizontalPlane(1.6), left: -40, bottom: -25, cell: 0.1, columns: 800, rows: 500 };
const WINDOW = [
  [-40, -25],
  [40, -25],
  [40, 25],
  [-40, 25],
] as const;

/** A house, its outbuildings and what stands about: some 330 triangles. */
const house = (chance: Chance): readonly Solid[] => [
  boxSolid('house', [0, 0, 0], [10, 8, 5.5]),
  boxSolid('garage', [9, -2, 0], [5, 6, 2.8]),
  ...small(chance, 25, [18, 14]),
];

/** Two rows of houses along a road, with fences, hedges and cars: some 6400 triangles. */
const street = (chance: Chance): readonly Solid[] => [
  ...Array.from({ length: 24 }, (_, at) =>
    boxSolid(`house-${at}`, [-36 + 6.4 * (at % 12), at < 12 ? 13 : -13, 0], [6, 9, chance.between(5, 8)]),
  ),
  ...small(chance, 510, [39, 24]),
];

const small = (chance: Chance, count: number, [x, y]: readonly [number, number]): readonly Solid[] =>
  Array.from({ length: count }, (_, at) =>
    boxSolid(
      `small-${at}`,
      [chance.between(-x, x), chance.between(-y, y), 0],
      [chance.between(0.05, 3), chance.between(0.05, 1), chance.between(0.5, 2.5)],
      chance.pick([0, 90, chance.between(0, 360)]),
    ),
  );

const cameraAt = (eye: Vec3, pan: number, tilt: number): Camera =>
  cameraWith({ eye, pan, tilt, focalLength: 2, sensor: { width: 5.6, height: 3.15 } });

function measure(name: string, solids: readonly Solid[], chance: Chance): readonly (string | number)[] {
  const facets = facetsOf(solids);
  const segments = new Segments(facets, treeOf(facets));
  const cast = rayPerCell(solids);
  const cameras = Array.from({ length: CAMERAS }, () =>
    cameraAt(
      [chance.between(-30, 30), chance.between(-7, 7), chance.between(5.9, 6.5)],
      chance.between(0, 360),
      chance.between(15, 40),
    ),
  );
  const fill = rowFill(facets, GRID);
  const targets = cameras.map((camera) => {
    const { rows, solids: nearest } = fill(camera);
    const centres: number[] = [];
    const hidden: number[] = [];
    for (let row = 0; row < GRID.rows; row += 1)
      for (let column = rows[row * 2] ?? 0; column <= (rows[row * 2 + 1] ?? -1); column += 1) {
        centres.push(GRID.left + (column + 0.5) * GRID.cell, GRID.bottom + (row + 0.5) * GRID.cell, 1.6);
        hidden.push((nearest.solid[row * GRID.columns + column] ?? -1) >= 0 ? 1 : 0);
      }
    return { camera, centres: Float64Array.from(centres), hidden: Uint8Array.from(hidden) };
  });
  const theirs = targets.map(({ hidden }) => new Uint8Array(hidden.length));
  const jobs = {
    fill: () => cameras.forEach((camera) => fill(camera)),
    outline: () => cameras.forEach((camera) => sightOf(camera, GRID.plane, WINDOW, facets)),
    ownRays: () =>
      targets.forEach(({ camera, centres, hidden }) => {
        for (let cell = 0; cell < hidden.length; cell += 1)
          segments.firstHit(
            camera.eye,
            [centres[cell * 3] ?? 0, centres[cell * 3 + 1] ?? 0, centres[cell * 3 + 2] ?? 0],
            'solid',
          );
      }),
    rays: () =>
      targets.forEach(({ camera, centres }, at) =>
        cast(camera.eye, centres, theirs[at] ?? new Uint8Array(0)),
      ),
  };
  for (const job of Object.values(jobs)) job();
  const times = timesOf(jobs, ROUNDS, chance);
  const apart = targets.reduce(
    (sum, { hidden }, at) =>
      sum + hidden.reduce((n, state, cell) => n + (state === theirs[at]?.[cell] ? 0 : 1), 0),
    0,
  );
  return [
    name,
    facets.count,
    targets.reduce((sum, { hidden }) => sum + hidden.length, 0),
    median(times('fill')).toFixed(1),
    median(times('outline')).toFixed(1),
    median(times('ownRays')).toFixed(0),
    median(times('rays')).toFixed(0),
    ratio(times('rays'), times('fill')).toFixed(1),
    ratio(times('rays'), times('ownRays')).toFixed(1),
    apart,
  ];
}

const bench: Bench = {
  title: `Seen and hidden of cells, ${CAMERAS} cameras over ${GRID.columns * GRID.rows} cells of ${GRID.cell} m`,
  run() {
    const chance = chanceFrom(3);
    return table(
      [
        'scene',
        'triangles',
        'cells in frame',
        'row fill, ms',
        'exact outline, ms',
        'own rays, ms',
        'library rays, ms',
        'library ÷ row fill',
        'library ÷ own rays',
        'cells judged otherwise',
      ],
      [measure('house', house(chance), chance), measure('street', street(chance), chance)],
    );
  },
};

export default bench;
