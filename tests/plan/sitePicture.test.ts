import { describe, expect, test } from 'vitest';
import { pictureFromSite, siteFromPicture } from '../../src/plan/sitePicture.ts';
import type { SitePicture } from '../../src/plan/plan.ts';

const file = { sha: 'a'.repeat(64), type: 'image/png', width: 600, height: 400 } as const;
const laid = (use: Partial<SitePicture>) => ({
  file,
  use: { kind: 'site', at: [10, 20], metresPerPixel: 0.05, turn: 0, strength: 0.35, ...use } as const,
});

describe('a site picture', () => {
  test('north up: right is east, down is south', () => {
    expect(siteFromPicture(laid({}), [100, 40])).toEqual([15, 18]);
  });

  // By hand: a sheet whose up is east has its right to the south and its down to the west.
  test('turned a quarter, its up is east', () => {
    const [x, y] = siteFromPicture(laid({ turn: 90 }), [100, 40]);
    expect(x).toBeCloseTo(8, 12);
    expect(y).toBeCloseTo(15, 12);
  });

  test('without a scale it is shown 30 m wide', () => {
    expect(siteFromPicture(laid({ metresPerPixel: null }), [600, 0])).toEqual([40, 20]);
  });

  test('there and back is the same point at any turn', () => {
    for (const turn of [0, 3.4, 90, 181.7, 359]) {
      const picture = laid({ turn });
      const [u, v] = pictureFromSite(picture, siteFromPicture(picture, [123.4, 77.7]));
      expect(u).toBeCloseTo(123.4, 9);
      expect(v).toBeCloseTo(77.7, 9);
    }
  });
});
