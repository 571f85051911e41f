import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { placeMount } from '../../../src/model/mounting.ts';
import { joinCorner } from '../../../src/plan/commands/joinCorner.ts';
import { mirrorThings } from '../../../src/plan/commands/moveThings.ts';
import { setCorner } from '../../../src/plan/commands/setCorner.ts';
import { splitEdge } from '../../../src/plan/commands/splitEdge.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { barrierWith, buildingWith, rectangle } from '../../model/sampleStructures.ts';
import { bare, cameraOn } from '../wholePlan.ts';
import { codesOf, planWith, valueOf } from './outlines.ts';

const line: Vec2[] = [
  [0, 0],
  [6, 0],
  [6, 5],
];
/** Around the outside of the one corner of a fence: face 3 is the right-hand side of its second edge. */
const plan = planWith(barrierWith({ line, thickness: 0.2, height: 2.5 }), {
  C1: cameraOn('C1', { kind: 'corner', ...bare, host: 'fence', face: 3, height: 2, reach: 0.2 }),
});

const holeOf = (now: Plan) => {
  const mount = now.cameras['C1']?.mount;
  const placed = mount && placeMount(mount, now.structures);
  if (!placed?.ok) throw new Error(JSON.stringify(placed));
  return placed.value.hole?.map((value) => Math.round(value * 1e6) / 1e6);
};

test('a camera under a ceiling stays there while a corner is put into a wall before its own', () => {
  const shop = buildingWith({ id: 'shop', outline: rectangle(8, 6), wallThickness: 0.3, height: 3 });
  const place = { host: 'shop', face: 5, corner: 'start', distance: 2, inset: 1, drop: 0.1 } as const;
  const hung = planWith(shop, { C1: cameraOn('C1', { kind: 'soffit', ...bare, ...place }) });
  expect(holeOf(hung)).toEqual([6.7, 2.3, 2.8]);
  const split = valueOf(splitEdge(hung, 'shop', 0, 0.5));
  expect(split.cameras['C1']?.mount).toMatchObject({ face: 7 });
  expect(holeOf(split)).toEqual([6.7, 2.3, 2.8]);
});

describe('a camera around the corner of a fence', () => {
  test('stays there while corners are put in before and after it', () => {
    expect(holeOf(plan)).toEqual([6.1, -0.1, 2]);
    const before = valueOf(splitEdge(plan, 'fence', 0, 0.5));
    expect(before.cameras['C1']?.mount).toMatchObject({ face: 5 });
    expect(holeOf(before)).toEqual([6.1, -0.1, 2]);
    const after = valueOf(splitEdge(before, 'fence', 2, 0.5));
    expect(holeOf(after)).toEqual([6.1, -0.1, 2]);
    expect(holeOf(valueOf(joinCorner(after, 'fence', 1)))).toEqual([6.1, -0.1, 2]);
  });

  test('goes with its corner, which cannot be taken out under it', () => {
    expect(holeOf(valueOf(setCorner(plan, 'fence', 1, [7, 0])))).not.toEqual([6.1, -0.1, 2]);
    expect(codesOf(joinCorner(plan, 'fence', 1))).toEqual(['edit.cornerCamera']);
  });

  test('is on the outside of the mirrored corner', () => {
    const things = [{ kind: 'structure' as const, id: 'fence' }];
    // In the line x = 0: the outside lies to the south-west.
    expect(holeOf(valueOf(mirrorThings(plan, things, [0, 0], [0, 1])))).toEqual([-6.1, -0.1, 2]);
  });
});
