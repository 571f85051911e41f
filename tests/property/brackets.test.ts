import { expect, test } from 'vitest';
import type { Area } from '../../src/coverage/area.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { isWithin } from '../oracle/bruteCaster.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { areasByRows, WITHIN } from '../oracle/rowAreas.ts';
import { RowScene } from '../oracle/rowScene.ts';
import { hiddenBetween } from './engine.ts';
import {
  awkwardCamera,
  awkwardScene,
  isClear,
  latticeCamera,
  latticeScene,
  randomCamera,
  randomScene,
  WINDOW,
} from './scenes.ts';

/*
 * What is printed with a ± where areas do not come from outlines: bounds from boxes, of which none is judged by a sample of it.
 * Held in every trial against exact rows (tests/oracle/rowAreas.ts). From few boxes, so that bounds are wide, and from many.
 */
const [FEW, MANY] = [1500, 20_000];
/** Slivers that rows find by rounding, m². */
const ROWS = 1e-9;

interface Trial {
  readonly solids: readonly Solid[];
  readonly camera: Camera;
}

function expectAll(seed: number, many: number, boxes: number, make: (chance: Chance) => Trial) {
  const chance = chanceFrom(seed);
  const wrong: string[] = [];
  const [shares, errors]: [number[], number[]] = [[], []];
  for (let trial = 0; trial < many; trial += 1) {
    const { solids, camera } = make(chance);
    const z = chance.pick([0, 0.5, 1.6, 1.8]);
    if (isWithin(rawTriangles(solids), camera.eye) || !isClear(solids, camera.eye)) continue;
    if (Math.abs(z - camera.eye[2]) < 1e-3) continue;
    const rows = areasByRows(new RowScene(solids, camera, z, WINDOW));
    const { byHider, screened, inside } = hiddenBetween({ solids, camera, z, window: WINDOW }, boxes);
    const hold = (what: string, { value, bound }: Pick<Area, 'value' | 'bound'>, truth: number) => {
      const off = Math.abs(value - truth);
      if (off > bound + ROWS) wrong.push(`trial ${trial}, ${what}: ${value} ± ${bound}, by rows ${truth}`);
      if (truth < 0.5) return;
      shares.push(bound / truth);
      errors.push(off / bound);
    };
    hold('inside', inside, rows.get(WITHIN) ?? 0);
    let through = 0;
    solids.forEach(({ passage }, solid) => {
      const truth = rows.get(solid) ?? 0;
      const found = byHider.find((one) => one.solid === solid)?.area ?? { value: 0, bound: 0 };
      if (passage === 'solid') hold(`solid ${solid}`, found, truth);
      else through += truth;
    });
    hold('screened', screened, through);
  }
  expect(wrong, `seed ${seed}`).toEqual([]);
  return { shares: shares.sort(ascending), errors: errors.sort(ascending) };
}

const ascending = (one: number, two: number): number => one - two;
const median = (sorted: readonly number[]): number => sorted[sorted.length >> 1] ?? Number.NaN;

test('what is printed with its ± holds the true area in every trial, and is no wider than it need be', () => {
  const random = (chance: Chance): Trial => ({
    solids: randomScene(chance, chance.whole(1, 10), chance.whole(0, 2)),
    camera: randomCamera(chance),
  });
  const few = expectAll(41, trials(150, 2000), FEW, random);
  expect(few.shares.length).toBeGreaterThan(50);
  const many = expectAll(41, trials(20, 200), MANY, random);
  // Boxes along an edge halve with the square root of their number.
  expect(median(many.shares)).toBeLessThan(0.35 * median(few.shares));
  expect(median(many.shares)).toBeLessThan(0.06);
});

test('so it does where cameras sit on planes, edges and corners, and where all lies on a lattice', () => {
  expectAll(45, trials(60, 1000), FEW, (chance) => ({
    solids: awkwardScene(0, 0),
    camera: { ...awkwardCamera(chance, 0, 0), k: 1, focalLength: chance.pick([2, 2.8, 4]) },
  }));
  expectAll(46, trials(60, 1000), FEW, (chance) => ({
    solids: latticeScene(chance, 0, 0, chance.whole(1, 12), chance.whole(0, 2)),
    camera: latticeCamera(chance, 0, 0),
  }));
});
