import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { surfaceGround } from '../../src/assess/ground.ts';
import { areasOf } from '../../src/coverage/areas.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import type { CameraAreas, Cells } from '../../src/coverage/coverage.ts';
import type { Night } from '../../src/coverage/light.ts';
import { litGround, nightFor } from '../../src/coverage/litGround.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { STATES } from '../../src/coverage/state.ts';
import { areaOf, tally } from '../../src/coverage/tally.ts';
import { patchSurface, planeFacing, type FlatSurface } from '../../src/model/surface.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { isWithin, nearestBlocker } from '../oracle/bruteCaster.ts';
import { plainDensity, plainImage, plainTurn } from '../oracle/plainCamera.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';

const BANDS = [100, 160, 250, 400].map((density) => ({ key: `${density}`, name: `${density}`, density }));
const RANGE = 25;
/** What lies between the centres of cells of 3 cm is not counted, m²: seen of mesh, whose slivers are thinner. */
const THIN = 0.01;

/** A yard with a house at the origin, fences of mesh (sheets), a bare crown (a screen without) and panes of glass. */
function yard(chance: Chance): readonly Solid[] {
  const at = (): readonly [number, number, number] => [chance.between(-9, 9), chance.between(-9, -2), 0];
  const mesh = (id: string): Solid => {
    const turn = chance.between(0, 360);
    const box = boxSolid(id, at(), [chance.between(2, 6), 0.05, chance.between(1, 2.5)], turn, 'screen');
    const rad = (turn * Math.PI) / 180;
    const normal = [-Math.sin(rad), Math.cos(rad), 0];
    return { ...box, sheets: Float64Array.from({ length: 36 }, (_, n) => normal[n % 3] ?? 0) };
  };
  const box = (id: string, passage: 'solid' | 'screen' | 'clear') =>
    boxSolid(
      id,
      at(),
      [chance.between(0.3, 2), chance.between(0.3, 2), chance.between(0.5, 2.5)],
      chance.between(0, 360),
      passage,
    );
  return [
    boxSolid('house', [0, 3, 0], [8, 6, 4]),
    ...['a', 'b', 'c', 'd'].map((id) => box(id, 'solid')),
    mesh('mesh-1'),
    mesh('mesh-2'),
    box('crown', 'screen'),
    box('pane-1', 'clear'),
    box('pane-2', 'clear'),
  ];
}

function surfaceFor(chance: Chance): FlatSurface {
  const outline = [
    [-8, -9],
    [7, -9],
    [8, -1],
    [-6, -0.5],
  ] as const;
  const patch = { id: 'drive', name: 'Drive', outline };
  switch (chance.pick(['wall', 'slope', 'level'])) {
    case 'wall':
      return {
        of: 'wall',
        owner: 'house',
        face: 0,
        name: 'South wall',
        plane: planeFacing([-4, 0, 0], [0, -1, 0]),
        // A gable end.
        rings: [
          [
            [0, 0],
            [8, 0],
            [8, 3],
            [4, 4],
            [0, 3],
          ],
        ],
      };
    case 'slope':
      return patchSurface({
        ...patch,
        base: chance.between(0, 1),
        pitch: chance.between(1, 20),
        rises: chance.between(0, 360),
      });
    default:
      return patchSurface({ ...patch, base: chance.pick([0, 0.5, 1.6]), pitch: 0, rises: 0 });
  }
}

const nightFrom = (chance: Chance, camera: Camera): Night => ({
  infrared: new Map(
    chance.pick([true, true, false])
      ? [[camera.id, { range: chance.between(6, 15), beam: chance.pick([60, 90, 360]) }]]
      : [],
  ),
  lamps:
    chance.pick([0, 1, 2, 2]) === 0
      ? []
      : [
          {
            id: 'l1',
            name: 'Lamp 1',
            eye: [chance.between(-6, 6), chance.between(-6, -1), 3],
            light: { kind: 'range', range: chance.between(3, 7) },
          },
          {
            id: 'l2',
            name: 'Lamp 2',
            eye: [chance.between(-6, 6), chance.between(-6, -1), chance.between(2.5, 5)],
            light: {
              kind: 'photometric',
              source: 'own',
              turn: chance.between(0, 360),
              photometry: { verticals: [0, 180], horizontals: [0], candela: [[40, 40]] },
            },
          },
        ],
  leastLux: 1,
});

/** The state and band of a point by rays over all triangles; null where an edge is too near to tell. */
function judged(
  camera: Camera,
  point: readonly number[],
  normal: Vec3,
  solids: readonly Solid[],
  night: Night | null,
): readonly [state: string, band: number] | null {
  const of = (passage: string) => rawTriangles(solids, (one) => one.passage === passage);
  const above = point.map((n, axis) => n + normal[axis as 0 | 1 | 2] * 1e-5);
  if (isWithin(rawTriangles(solids), above)) return ['inside', 0];
  const image = plainImage(camera, point);
  if (image === null) return ['out of frame', 0];
  const edge = Math.min(image[0], image[1], camera.frame.width - image[0], camera.frame.height - image[1]);
  if (Math.abs(edge) < 0.01) return null;
  if (edge < 0) return ['out of frame', 0];
  if (nearestBlocker(of('solid'), camera.eye, point) !== null) return ['hidden', 0];
  const way = point.map((n, axis) => n - (camera.eye[axis] ?? 0));
  const far = Math.hypot(...way);
  const screens = solids.filter(({ passage }) => passage === 'screen');
  const met = screens.filter((one) => nearestBlocker(rawTriangles([one]), camera.eye, point) !== null);
  const closed = met.filter(({ sheets }) => {
    if (!sheets) return false;
    const along = way.reduce((sum, n, axis) => sum + n * (sheets[axis] ?? 0), 0) / far;
    return (Math.asin(Math.abs(along)) * 180) / Math.PI < 30;
  });
  if (closed.length > 0) return ['hidden', 0];
  if (met.length > 0) return ['screened', 0];
  if (night !== null) {
    const own = night.infrared.get(camera.id);
    const [, , ahead] = plainTurn(camera, way);
    const within =
      own !== undefined &&
      far <= own.range &&
      (own.beam === 360 || (Math.acos(ahead / far) * 180) / Math.PI <= own.beam / 2) &&
      nearestBlocker(of('clear'), camera.eye, point) === null;
    let lux = 0;
    const byLamp = night.lamps.map(({ eye, light }) => {
      const ray = point.map((n, axis) => n - (eye[axis] ?? 0));
      const d = Math.hypot(...ray);
      const stopped =
        nearestBlocker(of('solid'), eye, point) !== null || nearestBlocker(of('screen'), eye, point) !== null;
      if (stopped) return false;
      if (light.kind === 'range') return d <= light.range;
      const cosine = Math.abs(ray.reduce((sum, n, axis) => sum + n * (normal[axis] ?? 0), 0)) / d;
      lux += (40 * cosine) / (d * d);
      return false;
    });
    if (!within && !byLamp.includes(true) && lux < 1) return ['too dark', 0];
  }
  const density = plainDensity(camera, point);
  const band = far > RANGE ? 0 : BANDS.filter((one) => density >= one.density).length;
  return [band > 0 ? 'covered' : 'too coarse', band];
}

function placed(cells: Cells, cell: number, by: readonly [number, number]): readonly number[] {
  const { plane, left, bottom, cell: size, columns } = cells.grid;
  const a = left + ((cell % columns) + 0.5) * size + by[0];
  const b = bottom + (Math.floor(cell / columns) + 0.5) * size + by[1];
  return [0, 1, 2].map(
    (axis) => (plane.origin[axis] ?? 0) + a * (plane.u[axis] ?? 0) + b * (plane.v[axis] ?? 0),
  );
}

/** Which exact areas differ from a count of cells by more than its ±. */
function apart(areas: CameraAreas, cells: Cells, mask: Uint8Array): string[] {
  const states = tally(cells.grid, cells.state, mask, STATES.length);
  const bands = tally(cells.grid, cells.band, mask, BANDS.length + 1);
  const differs = (what: string, exact: { value: number; bound: number }, counted: typeof exact) =>
    Math.abs(exact.value - counted.value) > exact.bound + counted.bound + THIN
      ? [
          `${what}: ${exact.value.toFixed(4)}, by cells ${counted.value.toFixed(4)} ± ${counted.bound.toFixed(4)}`,
        ]
      : [];
  return [
    ...STATES.flatMap((state, at) => differs(state, areas.byState[state], areaOf(states, at, cells.grid))),
    ...areas.byBand.flatMap((area, band) =>
      differs(`band ${band + 1}`, area, areaOf(bands, band + 1, cells.grid)),
    ),
  ];
}

test('walls, slopes and level patches by day and night agree with rays over all triangles, and their areas with the cells', () => {
  const chance = chanceFrom(77);
  const scratch = new Scratch();
  const seen = new Map<string, number>();
  for (let trial = 0; trial < trials(14, 600); trial += 1) {
    const solids = yard(chance);
    const surface = surfaceFor(chance);
    const camera = cameraWith({
      eye: [chance.between(-9, 9), chance.between(-10, -4), chance.between(0.5, 4)],
      pan: chance.between(-50, 50),
      tilt: chance.between(-5, 30),
      roll: chance.pick([0, 0, 90, 10]),
      k: chance.pick([1, 1, 0.6, 0]),
      focalLength: 2.8,
      range: RANGE,
    });
    const night = chance.pick([null, nightFrom(chance, camera)]);
    const ground = surfaceGround({ solids, ground: 0 }, surface, 0.03);
    const facets = facetsOf(solids);
    const found = sightOf(camera, ground.plane, ground.window, facets);
    if (found.sight.lensInside !== null) continue;
    const rule = new BandRule(BANDS, [], RANGE);
    const lit = night && litGround(night, ground.grid, ground.window, facets, scratch);
    const cells = cellsOf(
      camera,
      found,
      ground.grid,
      ground.bare,
      rule,
      scratch,
      lit && nightFor(camera, lit),
    );
    for (let shot = 0; shot < 40; shot += 1) {
      const cell = chance.whole(0, cells.state.length - 1);
      const state = STATES[cells.state[cell] ?? 0] ?? '?';
      const points = [
        [0, 0],
        [1e-3, 0],
        [-1e-3, 0],
        [0, 1e-3],
        [0, -1e-3],
      ].map(([x, y]) =>
        judged(camera, placed(cells, cell, [x ?? 0, y ?? 0]), surface.plane.normal, solids, night),
      );
      // Within a millimetre of an edge the two may differ.
      const [first] = points;
      if (!first || points.some((one) => one?.join() !== first.join())) continue;
      seen.set(state, (seen.get(state) ?? 0) + 1);
      expect([state, cells.band[cell]], `seed 77, trial ${trial}, cell ${cell}, ${surface.name}`).toEqual(
        first,
      );
    }
    const areas = areasOf(camera, cells, found, ground.within, rule, solids, 'exact', lit);
    expect(apart(areas, cells, ground.within.mask), `seed 77, trial ${trial}, ${surface.name}`).toEqual([]);
  }
  for (const state of STATES) expect(seen.get(state) ?? 0, `${state}`).toBeGreaterThan(3);
});
