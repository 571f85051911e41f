import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Pointed } from '../../src/editor/tools/pointed.ts';
import { nextBehind } from '../../src/view3d/navigate/nextBehind.ts';
import { pickable } from '../../src/view3d/picking.ts';
import { box } from './shapes.ts';

const solids = pickable([
  box('far', [0, 20, 0], [4, 22, 3]),
  box('near', [0, 0, 0], [4, 2, 3]),
  box('middle', [0, 10, 0], [4, 12, 3]),
  box('aside', [10, 10, 0], [14, 12, 3]),
]);
const at: Pointed = {
  ray: { from: [2, -10, 1] as Vec3, along: [0, 1, 0] as Vec3 },
  struck: { point: [2, 0, 1], normal: [0, -1, 0], structure: 'near' },
  handle: null,
  camera: null,
  lamp: null,
  metresPerPixel: 0.01,
  shift: false,
  free: false,
  by: 'mouse',
  grip: null,
  screen: { spot: [0, 0], place: () => null, seen: () => true, plan: false },
};

describe('nextBehind', () => {
  it('goes through what lies one behind the other, and back to the first', () => {
    const order = ['near', 'middle', 'far', 'near'];
    order.slice(0, -1).forEach((selected, i) => {
      expect(nextBehind(at, solids, selected).struck?.structure).toBe(order[i + 1]);
    });
    expect(nextBehind(at, solids, 'near').struck?.point).toEqual([2, 10, 1]);
  });

  it('passes from a camera’s sign to what is under it, and comes round to the sign', () => {
    const sign = { ...at, camera: 'c1', handle: 'body' } as const;
    const under = nextBehind(sign, solids, 'c1');
    expect([under.camera, under.handle, under.struck?.structure]).toEqual([null, null, 'near']);
    expect(nextBehind(sign, solids, 'far').camera).toBe('c1');
  });

  it('starts with the first where something else is selected, or nothing', () => {
    expect(nextBehind(at, solids, 'aside')).toBe(at);
    expect(nextBehind(at, solids, null)).toBe(at);
  });
});
