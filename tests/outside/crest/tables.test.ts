/*
 * Source: sight over the parabolic crest of a road, y = −x² / (200 K), K the length of the curve for one per cent of change in
 * grade. Stopping distances S and the K printed for them: AASHTO Green Book, its table of 2018 in feet (K: two public repositories headed
 * so, and for two rows a highway page, were read; S from memory) and the metric table (from memory; older editions differ).
 * Heights 1.08 and 0.60 m, 3.5 and 2.0 ft: two highway documents (excerpts read). K is S² / 658 or S² / 2158 rounded up, but for
 * S = 185 m, whose 52.01 is printed 52.
 */
import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { Scratch } from '../../../src/coverage/cells.ts';
import { BandRule } from '../../../src/coverage/rule.ts';
import { HIDDEN } from '../../../src/coverage/state.ts';
import { unevenCells } from '../../../src/coverage/unevenCells.ts';
import { unevenGround } from '../../../src/coverage/unevenGround.ts';
import { unevenInside } from '../../../src/coverage/unevenInside.ts';
import type { Terrain } from '../../../src/model/terrain.ts';
import { terrainOfGrid } from '../../../src/model/terrainGrid.ts';
import { terrainOfSpots } from '../../../src/model/terrainSpots.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { clearOver, turningPoint } from '../lineOfSight/clear.ts';

const FOOT = 0.3048;
const METRIC = { unit: 1, eye: 1.08, object: 0.6 };
const FEET = { unit: FOOT, eye: 3.5 * FOOT, object: 2 * FOOT };

const metric = [50, 65, 85, 105, 130, 160, 185, 220, 250].map((S, at) => ({
  S,
  K: [4, 7, 11, 17, 26, 39, 52, 74, 95][at] ?? 0,
}));
const feet = [115, 155, 200, 250, 305, 360, 425, 495, 570, 645, 730].map((S, at) => ({
  S,
  K: [7, 12, 19, 29, 44, 61, 84, 114, 151, 193, 247][at] ?? 0,
}));

/** A crest along x, from corners 1 m apart. The heights come as a grid or as spots. */
function crest(K: number, unit: number, half: number, from: 'grid' | 'spots'): Terrain {
  const board = { left: -half, bottom: -2, right: half, top: 2 };
  const columns = 2 * Math.ceil(half) + 2;
  const left = -columns / 2;
  const height = (x: number): number => -(x * x) / (200 * K * unit);
  if (from === 'grid') {
    const heights = Array.from({ length: columns }, (_, at) => height(left + at + 0.5));
    return terrainOfGrid({ left, bottom: -2, cell: 1, columns, rows: 1, heights }, board).terrain;
  }
  const spots = Array.from({ length: columns }, (_, at) => {
    const x = left + at + 0.5;
    return [-2, 2].map((y) => ({ at: [x, y] as const, height: height(x) }));
  });
  return terrainOfSpots(spots.flat(), board).terrain;
}

/** How far an eye, where the ground drops to a grazing way, sees an object beyond the crest, m. */
function farthestByRays(
  terrain: Terrain,
  eyeX: number,
  { eye, object }: typeof METRIC,
  most: number,
): number {
  const isClear = clearOver([terrain.solid]);
  const at = (x: number, up: number): Vec3 => [x, 0.3, terrain.heightAt(x, 0.3) + up];
  return turningPoint((far) => isClear(at(eyeX, eye), at(eyeX + far, object)), 1, most);
}

/** The same from cells: the last that is not hidden, and how many hidden ones lie before it. */
function farthestByCells(
  terrain: Terrain,
  eyeX: number,
  { eye, object }: typeof METRIC,
  most: number,
  cell: number,
) {
  const columns = Math.floor(most / cell);
  const grid = { plane: horizontalPlane(0), left: eyeX, bottom: 0.3 - cell / 2, cell, columns, rows: 1 };
  const ground = unevenGround(terrain, object, grid);
  const facets = facetsOf([terrain.solid]);
  const camera = cameraWith({
    eye: [eyeX, 0.3, terrain.heightAt(eyeX, 0.3) + eye],
    pan: 90,
    sensor: { width: 4, height: 60 },
    frame: { width: 4000, height: 60_000 },
    range: 5000,
  });
  const rule = new BandRule([{ key: 'any', name: 'any', density: 1e-9 }], [], camera.range);
  const { state } = unevenCells(camera, ground, facets, unevenInside([], ground), rule, new Scratch());
  const first = state.indexOf(HIDDEN);
  return { far: first * cell, later: state.slice(first).some((one) => one !== HIDDEN) };
}

const formula = (K: number, { unit, eye, object }: typeof METRIC): number =>
  Math.sqrt(200 * K * unit * eye) + Math.sqrt(200 * K * unit * object);

describe.each(['grid', 'spots'] as const)('on ground made of %s', (from) => {
  test('eye and object see each other over K 52.0137 up to 185.00 m and no further', () => {
    const terrain = crest(52.0137, 1, 260, from);
    for (const eyeX of [-120, -106, -93.7]) {
      expect(Math.abs(farthestByRays(terrain, eyeX, METRIC, 250) - 185), `eye at ${eyeX}`).toBeLessThan(0.01);
      const { far, later } = farthestByCells(terrain, eyeX, METRIC, 250, 0.05);
      expect(Math.abs(far - 185), `eye at ${eyeX}`).toBeLessThan(0.035);
      expect(later).toBe(false);
    }
  });

  test.each([
    ['metres', METRIC, metric],
    ['feet', FEET, feet],
  ] as const)(
    'each K printed in %s just gives its stopping distance, and one less does not',
    (_, set, rows) => {
      for (const { S, K } of rows) {
        const [wanted, most] = [S * set.unit, 1.6 * S * set.unit];
        const sees = (k: number) => {
          const eyeX = -Math.sqrt(200 * k * set.unit * set.eye);
          const terrain = crest(k, set.unit, most, from);
          const cell = 0.1;
          const { far, later } = farthestByCells(terrain, eyeX, set, most, cell);
          expect(later).toBe(false);
          const rays = farthestByRays(terrain, eyeX, set, most);
          // The pieces of 1 m lie below the curve by 1 / (800 K) m, which lets sight go on a little.
          expect(Math.abs(rays - formula(k, set)), `K ${k}`).toBeLessThan(0.05);
          expect(Math.abs(far - rays), `K ${k}`).toBeLessThan(cell);
          return rays;
        };
        // The one row that is rounded down lacks 25 mm of sight.
        expect(sees(K), `K ${K}`).toBeGreaterThan(wanted - (S === 185 ? 0.035 : 0));
        expect(sees(K - 1), `K ${K - 1}`).toBeLessThan(wanted);
      }
    },
  );
});
