import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { groundOf, Obstacles } from '../../src/assess/ground.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { siteOf } from '../../src/coverage/site.ts';
import { readPlan } from '../../src/plan/read.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { areasOver, outlinesOf, siteAreas, type Seer } from '../../src/coverage/siteAreas.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { areaWithin } from '../../src/sight/arcRings.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { isWithin } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { countsByRows } from '../oracle/rowCounts.ts';
import { CAPS, DENSITIES } from '../property/engine.ts';
import { bentLens, randomCamera, randomScene, WINDOW } from '../property/scenes.ts';

test('the best of several cameras, exactly, agrees with fine cells within their bound and far below it', () => {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the demo plan does not open');
  for (const target of [
    { kind: 'ground', height: 0 },
    { kind: 'face', height: 1.6 },
  ] as const) {
    const { site, scene, cameras, edition, faceCaps } = runSteps(
      createSession().steps(read.value, { target, alone: null, situation: null, causes: 'exact' }, 1),
    );
    expect(site.byBand.every(({ how }) => how === 'exact')).toBe(true);
    const fine = groundOf(scene, target.height, trials(0.04, 0.01));
    const { facets } = new Obstacles(scene.solids);
    const cells = cameras.map(({ camera }) => {
      const rule = new BandRule(edition.bands, faceCaps, camera.range);
      const found = sightOf(camera, fine.plane, fine.window, facets);
      return cellsOf(camera, found, fine.grid, fine.bare, rule, new Scratch());
    });
    const counted = siteOf(
      fine.grid,
      cells,
      cells.map((_, at) => at),
      fine.counted,
      fine.open,
      edition.bands.length,
    );
    [...site.byBand, site.unseen].forEach((area, at) => {
      const reference = [...counted.byBand, counted.unseen][at];
      if (reference === undefined) throw new Error('as many areas as bands');
      expect(Math.abs(area.value - reference.value), `${target.kind}, ${at}`).toBeLessThan(
        0.01 + reference.bound / 2,
      );
      expect(area.bound).toBeLessThan(0.05);
    });
    const total = [...site.byBand, site.unseen].reduce((sum, { value }) => sum + value, 0);
    expect(total).toBeCloseTo(site.open.value, 6);
  }
});

const { left, bottom, right, top } = WINDOW;
const CORNERS = [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
] as const;
const BANDS = DENSITIES.map((density) => ({ key: `${density}`, name: `${density}`, density }));

const seerOf = (camera: Camera, solids: readonly Solid[], z: number): Seer => ({
  camera,
  seen: sightOf(camera, horizontalPlane(z), CORNERS, facetsOf(solids)).sight.seen,
  rule: new BandRule(BANDS, CAPS, camera.range),
});

/** Cameras over a yard, every other one with a bent lens, none inside a solid. */
function camerasOver(solids: readonly Solid[], many: number, chance: Chance): readonly Camera[] {
  const triangles = rawTriangles(solids);
  const cameras: Camera[] = [];
  while (cameras.length < many) {
    const k = cameras.length % 2 === 0 ? 1 : chance.pick([0.5, 0, -0.5]);
    const eye = [chance.between(-14, 14), chance.between(-14, 14), chance.between(2.5, 6)] as const;
    const camera = { ...randomCamera(chance), eye, ...(k === 1 ? {} : bentLens(chance, k)) };
    if (!isWithin(triangles, eye)) cameras.push({ ...camera, tilt: chance.between(5, 70) });
  }
  return cameras;
}

test(
  'bands and counts of several cameras are those of rows, to 0.003 %',
  { timeout: trials(120_000, 3_600_000) },
  () => {
    const chance = chanceFrom(91);
    for (let trial = 0; trial < trials(2, 40); trial += 1) {
      const solids = randomScene(chance, chance.whole(1, 5), 0);
      const some = camerasOver(solids, trial === 39 ? 12 : chance.whole(2, 4), chance);
      // Now and then two cameras at one spot with one view.
      const cameras = chance.next() < 0.3 ? [...some, ...some.slice(0, 1)] : some;
      const z = chance.pick([0, 1.6]);
      const { atLeast, byCount } = siteAreas(
        CORNERS,
        cameras.map((camera) => seerOf(camera, solids, z)),
        z,
        BANDS.length,
      );
      const rows = countsByRows(
        solids,
        cameras.map((camera) => ({
          camera,
          wanted: { densities: DENSITIES, caps: CAPS, range: camera.range },
          samples: camera.k < 0 ? 120 : 40,
        })),
        z,
        WINDOW,
      );
      [...atLeast, ...byCount].forEach(({ value, bound }, at) => {
        const off = Math.abs(value - (rows[at] ?? 0));
        expect(off, `seed 91, trial ${trial}, number ${at}: ${value}`).toBeLessThan(
          3e-5 * Math.max(10, rows[at] ?? 0),
        );
        expect(off).toBeLessThan(bound + 1e-4);
      });
    }
  },
);

test('counts of thirty cameras sum to what each covers, within a boundary that bends in too', () => {
  const chance = chanceFrom(92);
  const boundary = [
    [-13, -14],
    [12, -11],
    [14, 13],
    [1, 2],
    [-14, 12],
  ] as const;
  for (let trial = 0; trial < trials(3, 60); trial += 1) {
    const solids = randomScene(chance, 6, 0);
    const seers = camerasOver(solids, 30, chance).map((camera) => seerOf(camera, solids, 1.6));
    for (const ground of [CORNERS, boundary, boundary.toReversed()]) {
      const outlines = seers.map((seer) => outlinesOf(ground, seer, 1.6));
      const { byCount, atLeast } = areasOver(outlines, BANDS.length);
      const each = outlines.reduce((sum, [lowest]) => sum + (lowest ? areaWithin(lowest) : 0), 0);
      expect(byCount.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(each, 5);
      expect(byCount[0]?.value).toBeCloseTo(atLeast[0]?.value ?? 0, 9);
      byCount.slice(1).forEach(({ value }, at) => expect(value).toBeLessThanOrEqual(byCount[at]?.value ?? 0));
    }
  }
});

test('one camera many times over covers what it covers alone, for every count', () => {
  const chance = chanceFrom(93);
  const solids = randomScene(chance, 6, 0);
  for (const camera of camerasOver(solids, 4, chance)) {
    const seer = seerOf(camera, solids, 0);
    const alone = siteAreas(CORNERS, [seer], 0, BANDS.length);
    const many = siteAreas(
      CORNERS,
      Array.from({ length: 8 }, () => seer),
      0,
      BANDS.length,
    );
    many.atLeast.forEach(({ value }, band) => expect(value).toBeCloseTo(alone.atLeast[band]?.value ?? 0, 6));
    many.byCount.forEach(({ value }) => expect(value).toBeCloseTo(alone.byCount[0]?.value ?? 0, 6));
  }
});

test('a boundary that bends in and what it leaves out sum to the whole', () => {
  const chance = chanceFrom(94);
  const solids = randomScene(chance, 6, 0);
  const rest = [[0, 0], CORNERS[2], CORNERS[3]] as const;
  const bent = [CORNERS[0], CORNERS[1], CORNERS[2], [0, 0], CORNERS[3]] as const;
  const seers = camerasOver(solids, 5, chance).map((camera) => seerOf(camera, solids, 0));
  const [whole, one, two] = [CORNERS, bent, rest].map((ground) => siteAreas(ground, seers, 0, BANDS.length));
  for (const kind of ['atLeast', 'byCount'] as const)
    whole?.[kind].forEach(({ value }, at) =>
      expect((one?.[kind][at]?.value ?? 0) + (two?.[kind][at]?.value ?? 0)).toBeCloseTo(value, 2),
    );
});
