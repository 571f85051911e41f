import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import { countedGround } from '../../src/coverage/countedGround.ts';
import { flatLayer } from '../../src/coverage/layer.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { siteBrackets } from '../../src/coverage/siteBrackets.ts';
import { SolidsAt } from '../../src/coverage/solidsAt.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { isWithin } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { bandsByRows } from '../oracle/rowBands.ts';
import { RowScene } from '../oracle/rowScene.ts';
import { bentLens, randomCamera, randomScene, WINDOW } from '../property/scenes.ts';

const DENSITIES = [25, 62.5, 125, 250];
const CAPS = [
  { above: 20, side: 90, band: 3 },
  { above: 30, side: 90, band: 2 },
];
const GROUND = [
  [-15, -15],
  [15, -15],
  [15, 15],
  [-15, 15],
] as const;

/* Rows whose ends are found by halving (tests/oracle/rowBands.ts) share nothing with boxes; they are good to about 2e-5 m². */
test(
  'bands of a site between bounds hold those of rows, for every lens law, from few boxes and from many',
  () => {
    const chance = chanceFrom(47);
    const wrong: string[] = [];
    const shares: number[] = [];
    let judged = 0;
    for (let trial = 0; trial < trials(8, 200); trial += 1) {
      const solids = randomScene(chance, chance.whole(1, 8), chance.whole(0, 2));
      const k = chance.pick([1, 1, 0.5, 0, -0.5, chance.between(-0.6, 1)]);
      const camera = { ...randomCamera(chance), ...(k === 1 ? {} : bentLens(chance, k)) };
      const z = chance.pick([0.5, 1.6]);
      if (isWithin(rawTriangles(solids), camera.eye) || Math.abs(z - camera.eye[2]) < 0.01) continue;
      judged += 1;
      const plane = horizontalPlane(z);
      const bands = DENSITIES.map((density) => ({ key: `${density}`, name: `${density}`, density }));
      const layer = flatLayer(
        sightOf(camera, plane, GROUND, facetsOf(solids)),
        new SolidsAt(solids, plane),
        new BandRule(bands, CAPS, camera.range),
      );
      const wanted = { densities: DENSITIES, caps: CAPS, range: camera.range };
      const rows = bandsByRows(new RowScene(solids, camera, z, WINDOW), camera, wanted);
      for (const most of [1000, 20_000]) {
        const { atLeast } = siteBrackets([layer], countedGround([GROUND], true), DENSITIES.length, most);
        atLeast.forEach(({ value, bound }, band) => {
          const truth = rows[1 + band] ?? 0;
          if (Math.abs(value - truth) > bound + 2e-5)
            wrong.push(`trial ${trial}, k ${k}, band ${band}: ${value} ± ${bound}, by rows ${truth}`);
          if (most > 1000 && truth > 5) shares.push(bound / truth);
        });
      }
    }
    expect(wrong, `seed ${chance.seed}`).toEqual([]);
    expect(judged).toBeGreaterThan(4);
    expect(shares.sort((one, two) => one - two)[shares.length >> 1] ?? 1).toBeLessThan(0.1);
  },
  trials(60_000, 1_800_000),
);
