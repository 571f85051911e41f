import { beforeAll, describe, expect, test } from 'vitest';
import Module, { type ManifoldToplevel } from 'manifold-3d';
import { horizontalPlane } from '../../src/base/plane.ts';
import type { Solid } from '../../src/model/solid.ts';
import { sliceAt } from '../../src/model/slice.ts';
import { solidsOf } from '../../src/model/solids.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { randomBarrier, randomBuilding, randomStructure } from './randomStructures.ts';

let library: ManifoldToplevel;
beforeAll(async () => {
  library = await Module();
  library.setup();
});

/** The solid as the general-purpose library takes it: single precision, so measured from its first corner. */
const taken = ({ positions, triangles }: Solid) => {
  const vertProperties = Float32Array.from(positions, (value, k) => value - (positions[k % 3] ?? 0));
  const mesh = new library.Mesh({ numProp: 3, vertProperties, triVerts: triangles });
  return new library.Manifold(mesh);
};

/** Area on the left of a slice's segments, m². */
const sliceArea = (segments: Float64Array): number => {
  const [x0 = 0, y0 = 0] = segments;
  let twice = 0;
  for (let k = 0; k < segments.length; k += 4) {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = segments.subarray(k, k + 4);
    twice += (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  }
  return twice / 2;
};

const seeds = Array.from({ length: trials(300, 30_000) }, (_, k) => k + 1);

describe('solids of random structures', () => {
  test('are closed, outward and never given up', () => {
    for (const seed of seeds) {
      const structure = randomStructure(chanceFrom(seed));
      const { solids, faults } = solidsOf(structure);
      const wrong = solids.flatMap((solid) => meshFaults(solid));
      const codes = faults.map(({ code }) => code).filter((code) => code === 'solid.open');
      expect({ seed, wrong, codes }).toEqual({ seed, wrong: [], codes: [] });
      const refused = faults.some(({ code }) => /^(footprint|barrier)\.(crosses|touches)$/.test(code));
      expect({ seed, built: solids.length > 0 || refused }).toEqual({ seed, built: true });
      expect(new Set(solids.map(({ id }) => id)).size).toBe(solids.length);
    }
  });
  test('are taken by manifold-3d, with the same volume', () => {
    for (const seed of seeds) {
      for (const solid of solidsOf(randomStructure(chanceFrom(seed))).solids) {
        const theirs = taken(solid);
        const volume = volumeOf(solid);
        expect({ seed, id: solid.id, status: theirs.status() }).toEqual({
          seed,
          id: solid.id,
          status: 'NoError',
        });
        expect(Math.abs(theirs.volume() / volume - 1), `seed ${seed}`).toBeLessThan(1e-4);
        theirs.delete();
      }
    }
  });
  test('are cut as manifold-3d cuts them', () => {
    for (const seed of seeds) {
      const chance = chanceFrom(seed);
      const [solid] = solidsOf(chance.next() < 0.6 ? randomBuilding(chance) : randomBarrier(chance)).solids;
      if (!solid) continue;
      const heights = solid.positions.filter((_, k) => k % 3 === 2);
      const z = chance.between(Math.min(...heights), Math.max(...heights));
      const theirs = taken(solid);
      const cut = theirs.slice(z - (solid.positions[2] ?? 0));
      expect(sliceArea(sliceAt(solid, horizontalPlane(z))), `seed ${seed}`).toBeCloseTo(cut.area(), 2);
      cut.delete();
      theirs.delete();
    }
  });
});
