import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { wallSurfaces } from '../../src/model/surface.ts';
import { spotOnSurface } from '../../src/view3d/surfaceSpot.ts';
import { demo } from '../editor/plans.ts';
import { pointing } from '../editor/tools/pointing.ts';

const plan = demo();
const { house } = plan.structures;
const south = house && wallSurfaces(house).find(({ name }) => name === 'South wall');
if (!south) throw new Error('the house has a south wall');

/** Close before the wall, so that nothing else is in the way. */
const NEAR: Vec3 = [8.6, -2, 1.8];

describe('a spot on a wall', () => {
  test('is where the ray meets it, a hair outside', () => {
    const spot = spotOnSurface(south, pointing(plan, [8.6, 0, 2.2], {}, NEAR));
    expect(spot?.[0]).toBeCloseTo(8.6, 4);
    expect(spot?.[2]).toBeCloseTo(2.2, 4);
    expect(spot?.[1]).toBeLessThan(0);
    expect(spot?.[1]).toBeGreaterThan(-1e-4);
  });

  test('is on the wall over a window too, whose pane lies behind it', () => {
    expect(spotOnSurface(south, pointing(plan, [8, 0.1, 1.5], {}, NEAR))?.[1]).toBeGreaterThan(-1e-4);
  });

  test.each([
    ['beside the wall', [14, 0, 1], NEAR],
    ['from within the house', [8.6, 0, 2.2], [8.6, 3, 2]],
    ['behind the hedge', [3, 0, 0.4], [3, -30, 0.5]],
  ] satisfies [string, Vec3, Vec3][])('is none %s', (_, at, viewer) => {
    expect(spotOnSurface(south, pointing(plan, at, {}, viewer))).toBeNull();
  });
});
