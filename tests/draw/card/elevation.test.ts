import { describe, expect, test } from 'vitest';
import { elevation, unfolded } from '../../../src/draw/card/elevation.ts';
import type { PagePath } from '../../../src/exchange/paper/page.ts';
import type { Mount } from '../../../src/optics/mount.ts';
import { bare, factsOf, houseTurned, siteOf } from './cardSites.ts';
import { closeTo } from './near.ts';

const hosted = { ...bare, host: 'house', face: 0, corner: 'start' } as const;
const arm = { ...hosted, kind: 'arm', distance: 3.8, height: 2.4, reach: 0.2, drop: 0.1 } as const;

describe('the elevation is true to its scale', () => {
  const box = { x: 10, y: 20, width: 150, height: 80 };

  /** Lengths of the dimension lines, m: told by their width, which nothing else in an elevation has. */
  function drawnSizes(mount: Mount): { drawn: number[]; told: number[] } {
    const { spot } = factsOf(siteOf([houseTurned(33)], mount));
    if (spot.kind === 'pole') throw new Error();
    const { items, scale } = elevation(spot, box, { units: 'metres', courses: false });
    const lines = items.filter((item): item is PagePath => item.kind === 'path' && item.width === 0.22);
    const drawn = lines.map(({ d }) => {
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = (d.match(/-?[\d.]+/gu) ?? []).map(Number);
      return (Math.hypot(x1 - x0, y1 - y0) * scale) / 1000;
    });
    return { drawn, told: unfolded(spot).taped.map(({ size }) => size) };
  }

  test.each<[string, Mount]>([
    ['arm', arm],
    ['flush', { ...hosted, kind: 'flush', distance: 1, height: 2.3, standOff: 0.05 }],
    ['soffit', { ...hosted, kind: 'soffit', distance: 6, inset: 0.25, drop: 0.1 }],
    ['corner', { ...bare, kind: 'corner', host: 'house', face: 1, height: 2.4, reach: 0.2 }],
  ])('%s', (_, mount) => {
    const { drawn, told } = drawnSizes(mount);
    expect(drawn).toEqual(told.map((size) => closeTo(size, 3)));
  });
});
