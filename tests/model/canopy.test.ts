import { expect, test } from 'vitest';
import { solidsOf } from '../../src/model/solids.ts';
import { meshFaults } from './meshChecks.ts';
import { canopyWith, turned } from './sampleStructures.ts';

/** Corners of a canopy's posts over ground, m. */
const feet = (change: Parameters<typeof canopyWith>[0], ground = 0): [number, number][] => {
  const [solid] = solidsOf(canopyWith(change), ground).solids;
  expect(solid && meshFaults(solid)).toEqual([]);
  const found: [number, number][] = [];
  const positions = solid?.positions ?? new Float64Array();
  for (let k = 0; k < positions.length; k += 3) {
    const round = (value: number | undefined): number => Math.round((value ?? Number.NaN) * 1e9) / 1e9;
    if (positions[k + 2] === ground) found.push([round(positions[k]), round(positions[k + 1])]);
  }
  return found;
};

test('posts stand flush within the corners of the board, from the ground up', () => {
  const points = feet({ posts: 2 }, 0.25);
  expect(new Set(points.map(String))).toEqual(
    new Set(['0,0', '0.1,0', '0.1,0.1', '0,0.1', '2.9,0', '3,0', '3,0.1', '2.9,0.1']),
  );
});

test('no posts hold a canopy that hangs on a wall', () => {
  expect(feet({ posts: 0 })).toEqual([]);
});

test('the first corners drawn get the posts, on an outline drawn clockwise too', () => {
  const outline = turned(
    [
      [0, 0],
      [0, 5],
      [3, 5],
      [3, 0],
    ],
    0,
  );
  const points = feet({ outline, posts: 1 });
  expect(Math.max(...points.flat())).toBeCloseTo(0.1, 9);
});
