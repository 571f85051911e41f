import { expect, test } from 'vitest';
import { baseOf } from '../../../../src/editor/tools/drawing/newStructure.ts';
import { LINE } from '../../../../src/editor/tools/line/line.ts';
import type { Plan } from '../../../../src/plan/plan.ts';
import { house, site } from '../../site.ts';

/** z = 2 + x/10 between spots far out. */
const slope: Plan = {
  ...site(house()),
  ground: {
    kind: 'spots',
    spots: [
      [-40, -40],
      [40, -40],
      [40, 40],
      [-40, 40],
    ].map(([x = 0, y = 0]) => ({ at: [x, y], height: 2 + x / 10, got: 'measured' })),
  },
};

test('what is drawn on a slope stands on the lowest ground under it', () => {
  expect(baseOf(slope, [[10, 3]])).toBe(3);
  expect(
    baseOf(slope, [
      [10, 3],
      [-5, 0],
      [20, 8],
    ]),
  ).toBe(1.5);
  // Beyond the outermost heights it goes on level.
  expect(baseOf(slope, [[60, 0]])).toBe(6);
  expect(baseOf(slope)).toBe(-2);
  expect(baseOf(site(house()), [[10, 3]])).toBe(0);
});

test('a fence drawn there does', () => {
  const corners = [
    [12, 0],
    [22, 0],
  ] as const;
  const made = LINE.kinds[0]?.make(slope, { corners, closed: false, typed: false }, 1.8);
  if (!made?.ok || made.value.thing.kind !== 'structure') throw new Error('a fence can stand there');
  const fence = made.value.plan.structures[made.value.thing.id];
  expect(fence?.kind === 'barrier' && fence.base).toBe(3.2);
});
