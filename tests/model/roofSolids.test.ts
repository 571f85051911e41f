import { beforeAll, expect, test } from 'vitest';
import Module, { type ManifoldToplevel } from 'manifold-3d';
import { hostFaces } from '../../src/model/faces.ts';
import { validFootprint } from '../../src/model/footprint.ts';
import { windingNumber } from '../../src/model/inside.ts';
import type { Solid } from '../../src/model/solid.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Building, RoofKind } from '../../src/model/structure.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { meshFaults, volumeOf } from './meshChecks.ts';
import { areaOf, randomFootprint } from './randomFootprints.ts';
import { buildingWith, openingWith } from './sampleStructures.ts';

let library: ManifoldToplevel;
beforeAll(async () => {
  library = await Module();
  library.setup();
});

const KINDS: readonly RoofKind[] = ['flat', 'parapet', 'monopitch', 'gable', 'hip'];

const roofed = (chance: Chance): Building => {
  const { outline, holes } = randomFootprint(chance);
  return buildingWith({
    outline: chance.next() < 0.3 ? outline.toReversed() : outline,
    holes,
    base: chance.pick([0, chance.between(-3, 3)]),
    height: chance.between(2.2, 9),
    roof: {
      kind: chance.pick(KINDS),
      pitch: chance.pick([35, 45, chance.between(3, 80)]),
      overhang: chance.pick([0, 0, 0.45, chance.between(0.01, 1.5)]),
      ridge: chance.pick([null, null, chance.between(0, 360)]),
      parapet: chance.between(0.1, 1),
    },
    wallThickness: chance.pick([null, null, 0.3]),
    openings: Array.from({ length: chance.whole(0, 4) }, (_, k) =>
      openingWith({
        id: `o${k}`,
        name: `Opening ${k}`,
        kind: chance.pick(['door', 'window', 'archway']),
        face: chance.whole(0, outline.length - 1),
        along: chance.between(0.1, 4),
        width: chance.between(0.3, 2),
        height: chance.between(0.3, 2),
        sill: chance.pick([0, chance.between(0.1, 1.5), chance.between(1.5, 5)]),
        setBack: chance.pick([0, 0.1, 0.3]),
      }),
    ),
  });
};

/** The building of a seed, or of the first after it whose outline was not made to cross itself by its last digits. */
const sound = (seed: number): Building => {
  for (let at = seed; ; at += 1_000_000) {
    const building = roofed(chanceFrom(at));
    if (validFootprint(building.outline, building.holes, building.name).ok) return building;
  }
};

/** Whether a building has the roof that was asked for. */
const isAsked = (building: Building): boolean =>
  solidsOf(building).faults.every(({ code }) => code !== 'roof.flat-instead');

/** Single precision is all that the library takes: measured from the first corner. */
const taken = ({ positions, triangles }: Solid) => {
  const vertProperties = Float32Array.from(positions, (value, k) => value - (positions[k % 3] ?? 0));
  return new library.Manifold(new library.Mesh({ numProp: 3, vertProperties, triVerts: triangles }));
};

/** What may be said about a roof that was built as asked, or that nothing better could be done about. */
const SAID = /^(roof\.(flat-instead|hip-instead|parapet-narrow)|opening\.|building\.block-instead)/;

const seeds = Array.from({ length: trials(400, 10_000) }, (_, k) => k + 1);

test('every roof on every footprint is a closed outward solid, which manifold-3d takes, and of a thousand at most one falls back to flat', () => {
  const count = new Map<string, number>();
  let flat = 0;
  for (const seed of seeds) {
    const building = sound(seed);
    const { solids, faults } = solidsOf(building);
    flat += faults.filter(({ code }) => code === 'roof.flat-instead').length;
    const others = faults.filter(({ code }) => !SAID.test(code));
    expect({ seed, others, built: solids.length > 0 }).toEqual({ seed, others: [], built: true });
    for (const solid of solids) {
      expect({ seed, wrong: meshFaults(solid) }).toEqual({ seed, wrong: [] });
      const theirs = taken(solid);
      expect({ seed, status: theirs.status() }).toEqual({ seed, status: 'NoError' });
      expect(Math.abs(theirs.volume() / volumeOf(solid) - 1), `seed ${seed}`).toBeLessThan(1e-4);
      theirs.delete();
    }
    count.set(building.roof.kind, (count.get(building.roof.kind) ?? 0) + 1);
  }
  expect(flat).toBeLessThanOrEqual(Math.ceil(seeds.length / 1000));
  expect(Math.min(...KINDS.map((kind) => count.get(kind) ?? 0))).toBeGreaterThan(seeds.length / 10);
});

test('a pitched roof rises above its walls, and nowhere goes around a place twice', () => {
  for (const seed of seeds.slice(0, trials(150, 3000))) {
    const chance = chanceFrom(seed);
    const building: Building = { ...sound(seed), openings: [], wallThickness: null };
    if (!isAsked(building)) continue;
    const { roof, outline, holes, base, height } = building;
    const [solid] = solidsOf(building).solids;
    if (!solid) throw new Error(`seed ${seed}`);
    const ground = Math.abs(areaOf(outline)) + holes.reduce((sum, hole) => sum + areaOf(hole), 0);
    const isPitched = roof.kind !== 'flat' && roof.kind !== 'parapet';
    const least = ground * height * (isPitched ? 1.001 : 1 - 1e-9);
    expect(volumeOf(solid), `seed ${seed}`).toBeGreaterThan(least);
    const { positions } = solid;
    for (let k = 0; k < 12; k++) {
      const corner = 3 * chance.whole(0, positions.length / 3 - 1);
      const near = (axis: number): number => (positions[corner + axis] ?? 0) + chance.between(-0.3, 0.3);
      const z = chance.next() < 0.5 ? base + height + chance.between(0.01, 1) : near(2);
      const around = windingNumber(solid, [near(0), near(1), z]);
      const whole = Math.round(around);
      expect({ seed, whole: whole === 0 || whole === 1, off: Math.abs(around - whole) < 1e-6 }).toEqual({
        seed,
        whole: true,
        off: true,
      });
    }
  }
});

test('walls and soffits to mount on end where the solid does', () => {
  for (const seed of seeds) {
    const building: Building = { ...sound(seed), openings: [], wallThickness: null };
    if (!isAsked(building)) continue;
    const [solid] = solidsOf(building).solids;
    if (!solid) throw new Error(`seed ${seed}`);
    const { positions } = solid;
    const faces = hostFaces(building);
    const soffitZ = building.base + building.height;
    const soffits = faces.filter(({ sort }) => sort === 'soffit');
    expect(soffits.every(({ foot }) => foot === soffitZ)).toBe(true);
    // Every corner of a wall's top line is a corner of the solid; under eaves a line may be cut between corners.
    const corners = faces
      .filter(({ sort }) => sort === 'wall')
      .flatMap((face) =>
        face.topLine.map(([s, z]) => ({
          name: face.name,
          at: [face.start[0] + face.along[0] * s, face.start[1] + face.along[1] * s, z] as const,
        })),
      )
      .filter(({ at }) => building.roof.overhang === 0 || at[2] <= soffitZ);
    for (const { name, at } of corners) {
      let away = Infinity;
      for (let k = 0; k < positions.length; k += 3) {
        const [px = 0, py = 0, pz = 0] = positions.subarray(k, k + 3);
        away = Math.min(away, Math.abs(px - at[0]) + Math.abs(py - at[1]) + Math.abs(pz - at[2]));
      }
      // A verge runs straight over corners that are up to 10 µm beside the line of their wall.
      expect(away, `seed ${seed}, ${name}`).toBeLessThan(2e-5);
    }
    const walls = faces.filter(({ sort }) => sort === 'wall');
    expect(walls.length).toBe(building.outline.length);
  }
});
