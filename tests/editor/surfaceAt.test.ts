import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { sameSurface, surfaceAt, surfaceChoices } from '../../src/editor/settings/surfaceChoices.ts';
import { demo } from './plans.ts';

const { house } = demo().structures;
if (!house) throw new Error('the sample has a house');

describe('the face that is pointed at', () => {
  test.each([
    ['a wall', [3, 0, 1.5], [0, -1, 0], 'South wall'],
    ['the back of a window’s recess', [3, 0.12, 1.5], [0, -1, 0], 'South wall'],
    ['the wall at the other side', [3, 7, 1.5], [0, 1, 0], 'North wall'],
  ] satisfies [string, Vec3, Vec3, string][])('%s', (_, point, normal, name) => {
    expect(surfaceAt(house, point, normal)?.name).toBe(name);
  });

  test('is a slope of the roof where the normal says so', () => {
    const slope = surfaceChoices(house).find(({ name }) => name === 'South roof slope');
    const pitch = (38 * Math.PI) / 180;
    // 1 m in from the eaves, which lie 0.5 m before the wall at its height of 3 m.
    const found = surfaceAt(house, [5, 0.5, 3 + Math.tan(pitch)], [0, -Math.sin(pitch), Math.cos(pitch)]);
    expect(slope && found && sameSurface(found.key, slope.key)).toBe(true);
  });

  test('is none under the eaves, and none away from the house', () => {
    expect(surfaceAt(house, [5, -0.2, 3], [0, 0, -1])).toBeNull();
    expect(surfaceAt(house, [3, -2, 1], [0, -1, 0])).toBeNull();
  });
});
