import { expect, test } from 'vitest';
import { changeOf } from '../../../src/assess/trial/change.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import type { Solid } from '../../../src/model/solid.ts';
import type { Camera } from '../../../src/optics/camera.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { nearestBlocker } from '../../oracle/bruteCaster.ts';
import { plainDensity, plainImage } from '../../oracle/plainCamera.ts';
import { rawTriangles } from '../../oracle/rawTriangles.ts';
import { countsByRows } from '../../oracle/rowCounts.ts';
import { CAPS, DENSITIES } from '../../property/engine.ts';
import { bentLens, isClear, randomCamera, randomScene, WINDOW } from '../../property/scenes.ts';

const BANDS = DENSITIES.map((density) => ({ key: `${density}`, name: `${density}`, density }));
const { left, bottom, right, top } = WINDOW;
const RING = [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
] as const;

/** Two settings of one spot among some solids: another lens, now and then of another kind, another aim, now and then a mount. */
function settings(chance: Chance, solids: readonly Solid[], kinds = 3): readonly [Camera, Camera] {
  for (;;) {
    const eye = [chance.between(-12, 12), chance.between(-12, 12), chance.between(2.5, 6)] as const;
    const one = { ...randomCamera(chance), eye, tilt: chance.between(5, 60) };
    const arm = chance.pick([0, 0, 0.4]);
    const lens = chance.pick(
      [{ focalLength: one.focalLength * chance.between(0.6, 1.7) }, bentLens(chance, 0), {}].slice(0, kinds),
    );
    const two: Camera = {
      ...one,
      ...lens,
      id: 'other',
      eye: [eye[0] + arm, eye[1], eye[2] - arm],
      pan: one.pan + chance.pick([0, chance.between(-40, 40)]),
      tilt: one.tilt + chance.between(-5, 20),
    };
    if (isClear(solids, one.eye) && isClear(solids, two.eye)) return [one, two];
  }
}

const changeBetween = (one: Camera, two: Camera, solids: readonly Solid[], z: number) =>
  changeOf({
    seers: [one, two].map((camera) => ({
      camera,
      seen: sightOf(camera, horizontalPlane(z), RING, facetsOf(solids)).sight.seen,
    })),
    ring: RING,
    height: z,
    target: { kind: 'face', height: z },
    bands: BANDS,
    caps: CAPS,
  });

test(
  'ground gained and lost at each band is what rows with exact ends find',
  { timeout: trials(60_000, 3_600_000) },
  () => {
    const chance = chanceFrom(511);
    for (let trial = 0; trial < trials(1, 60); trial += 1) {
      // Rows take long where there is much: the sample has one solid and no bent lens.
      const solids = randomScene(chance, trials(1, chance.whole(1, 4)));
      const both = settings(chance, solids, trials(1, 3));
      const z = chance.pick([0, 1.6]);
      const rows = (cameras: readonly Camera[]) =>
        countsByRows(
          solids,
          cameras.map((camera) => ({
            camera,
            wanted: { densities: DENSITIES, caps: CAPS, range: camera.range },
            samples: 40,
          })),
          z,
          WINDOW,
        );
      const [union, first, second] = [rows(both), rows(both.slice(0, 1)), rows(both.slice(1))];
      const { byBand } = changeBetween(...both, solids, z);
      byBand.forEach(({ gained, lost }, band) => {
        const all = union[band] ?? 0;
        for (const [area, expected] of [
          [gained, all - (first[band] ?? 0)],
          [lost, all - (second[band] ?? 0)],
        ] as const) {
          const off = Math.abs(area.value - expected);
          expect(off, `seed 511, trial ${trial}, band ${band}`).toBeLessThan(3e-5 * Math.max(10, all));
          expect(off).toBeLessThan(area.bound + 1e-4);
        }
      });
    }
  },
);

test('the other way round, gained is lost and finer is coarser; against itself nothing changes', () => {
  const chance = chanceFrom(512);
  for (let trial = 0; trial < trials(6, 200); trial += 1) {
    const solids = randomScene(chance, chance.whole(1, 5));
    const [one, two] = settings(chance, solids);
    const there = changeBetween(one, two, solids, 0);
    const back = changeBetween(two, one, solids, 0);
    there.byBand.forEach(({ gained, lost }, band) => {
      expect(back.byBand[band]?.lost.value).toBeCloseTo(gained.value, 6);
      expect(back.byBand[band]?.gained.value).toBeCloseTo(lost.value, 6);
    });
    expect(back.coarser.value).toBeCloseTo(there.finer.value, 6);
    expect(back.finer.value).toBeCloseTo(there.coarser.value, 6);
    const same = changeBetween(one, { ...one, id: 'same' }, solids, 0);
    for (const { gained, lost } of [...same.byBand, { gained: same.finer, lost: same.coarser }]) {
      expect(gained.value).toBeLessThan(1e-6);
      expect(lost.value).toBeLessThan(1e-6);
    }
  }
});

test('finer and coarser ground is what brute-force rays at random points find, within four standard errors', () => {
  const chance = chanceFrom(513);
  for (let trial = 0; trial < trials(3, 40); trial += 1) {
    const solids = randomScene(chance, chance.whole(1, 3));
    const triangles = rawTriangles(solids);
    const both = settings(chance, solids);
    const { finer, coarser } = changeBetween(...both, solids, 0);
    const points = trials(3000, 30_000);
    let [up, down] = [0, 0];
    for (let at = 0; at < points; at += 1) {
      const point = [chance.between(left, right), chance.between(bottom, top), 0];
      const [one = 0, two = 0] = both.map((camera) => bandAt(camera, point, triangles));
      if (two > one) up += 1;
      if (two < one) down += 1;
    }
    const whole = (right - left) * (top - bottom);
    for (const [area, count] of [
      [finer, up],
      [coarser, down],
    ] as const) {
      const share = area.value / whole;
      const error = Math.sqrt(Math.max(share * (1 - share), 1 / points) / points);
      expect(Math.abs(count / points - share), `seed 513, trial ${trial}`).toBeLessThan(4 * error);
    }
  }
});

/** Index + 1 of the band that a face on the ground reaches by a ray and a pinhole written anew; 0 for none. */
function bandAt(
  camera: Camera,
  point: readonly number[],
  triangles: ReturnType<typeof rawTriangles>,
): number {
  const image = plainImage(camera, point);
  if (image === null) return 0;
  const [u, v] = image;
  if (u < 0 || v < 0 || u > camera.frame.width || v > camera.frame.height) return 0;
  const away = [0, 1, 2].map((axis) => (point[axis] ?? 0) - camera.eye[axis as 0 | 1 | 2]);
  const [dx = 0, dy = 0, dz = 0] = away;
  if (Math.hypot(dx, dy, dz) > camera.range) return 0;
  if (nearestBlocker(triangles, camera.eye, point) !== null) return 0;
  const density = plainDensity(camera, point);
  const reached = DENSITIES.filter((limit) => density >= limit).length;
  const above = (Math.atan2(-dz, Math.hypot(dx, dy)) * 180) / Math.PI;
  return CAPS.reduce((band, cap) => (above > cap.above ? Math.min(band, cap.band) : band), reached);
}
