import { expect, test } from 'vitest';
import { z } from 'zod';
import { pictureFromWall, quadTrouble, wallFromPicture, type Quad } from '../../../src/base/homography.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { ready } from './openCv.ts';

/*
 * Source: OpenCV's getPerspectiveTransform, by the package that openCv.ts names: it solves eight equations, where
 * ours is a closed form. It takes single precision, so corners and sizes are rounded to what that holds.
 */
test('the map between a wall and a photograph is that of OpenCV', async () => {
  const cv = await ready();
  const doubles = z.instanceof(Float64Array);
  const pairs = z.number().parse(cv.CV_32FC2);
  const theirs = (from: readonly number[], to: readonly number[]): number[] => {
    const [one, two] = [cv.matFromArray(4, 1, pairs, [...from]), cv.matFromArray(4, 1, pairs, [...to])];
    const found = cv.getPerspectiveTransform(one, two);
    const numbers = Array.from(doubles.parse(found.data64F));
    for (const mat of [one, two, found]) mat.delete();
    return numbers;
  };
  let compared = 0;
  for (let seed = 1; seed <= trials(300, 10_000); seed++) {
    const chance = chanceFrom(seed);
    const near = (u: number, v: number) =>
      [u + chance.whole(-350, 350), v + chance.whole(-350, 350)] as const;
    const corners: Quad = [near(800, 2200), near(3200, 2200), near(3200, 800), near(800, 800)];
    if (quadTrouble(corners)) continue;
    const [width, height] = [chance.whole(4, 80) / 4, chance.whole(4, 48) / 4];
    const wall = [0, 0, width, 0, width, height, 0, height];
    for (const [ours, asked] of [
      [pictureFromWall(corners, width, height), theirs(wall, corners.flat())],
      [wallFromPicture(corners, width, height), theirs(corners.flat(), wall)],
    ] as const) {
      // A homography is one but for a factor: theirs ends in 1.
      ours.forEach((value, k) => {
        const scaled = value / ours[8];
        const size = Math.max(Math.abs(asked[k] ?? 0), 1e-6);
        expect(Math.abs(scaled - (asked[k] ?? Number.NaN)) / size, `seed ${seed}, number ${k}`).toBeLessThan(
          1e-6,
        );
      });
    }
    compared++;
  }
  expect(compared).toBeGreaterThan(trials(300, 10_000) * 0.9);
});
