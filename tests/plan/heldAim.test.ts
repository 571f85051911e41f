import { describe, expect, test } from 'vitest';
import type { Mount, MountLimits } from '../../src/optics/mount.ts';
import { aimWithin, turnCamera } from '../../src/plan/commands/aimWithin.ts';
import { setMount } from '../../src/plan/commands/setMount.ts';
import { faultText } from '../../src/plan/faultText.ts';
import { straightOut } from '../../src/plan/heldAim.ts';
import { bare, wholePlan } from './wholePlan.ts';

const limits: MountLimits = { pan: 80, tilt: { up: 10, down: 75 }, roll: 90 };
/** On the south wall, which looks to a bearing of 180°. */
const arm: Mount = {
  kind: 'arm',
  ...bare,
  limits,
  host: 'house',
  face: 0,
  corner: 'end',
  distance: 2,
  height: 2.4,
  reach: 0.3,
  drop: 0,
};
const plan = setMount(wholePlan(), 'C1', arm);
const aimOf = (now: typeof plan) => {
  const { pan, tilt, roll } = now.cameras['C1'] ?? {};
  return { pan, tilt, roll };
};

describe('what a mount lets a camera turn to', () => {
  test('a hand is stopped at the limit on the side that it goes to', () => {
    expect(aimOf(aimWithin(plan, 'C1', { pan: 270 })).pan).toBe(260);
    expect(aimOf(aimWithin(plan, 'C1', { pan: 20 })).pan).toBe(100);
    expect(aimOf(aimWithin(plan, 'C1', { pan: 259 })).pan).toBe(259);
    expect(aimOf(aimWithin(plan, 'C1', { tilt: 89 })).tilt).toBe(75);
    expect(aimOf(aimWithin(plan, 'C1', { tilt: -30 })).tilt).toBe(-10);
    expect(aimOf(aimWithin(plan, 'C1', { roll: -120 })).roll).toBe(-90);
  });

  test('an angle that was not asked for is left, even past its limit', () => {
    const past = {
      ...plan,
      cameras: { ...plan.cameras, C1: { ...plan.cameras['C1'], pan: 300 } },
    } as typeof plan;
    expect(aimOf(aimWithin(past, 'C1', { tilt: 80 }))).toEqual({ pan: 300, tilt: 75, roll: 0 });
  });

  test('a typed number past the limit is refused, and the sentence names it', () => {
    const refused = turnCamera(plan, 'C1', { pan: 275, tilt: 80 });
    expect(refused.ok ? [] : refused.faults.map(faultText)).toEqual([
      'Pan stops 80° from straight out: this mount. “C1” would look 95° right. Use an arm or a corner bracket, or fix it to another wall.',
      'Tilt stops at 75°: this mount. “C1” would look 80° down. Use an arm, or aim farther out.',
    ]);
    expect(turnCamera(plan, 'C1', { pan: 260, tilt: 75, roll: 90 }).ok).toBe(true);
  });

  test('nothing is refused where nothing is known, or where it hangs on nothing', () => {
    expect(
      aimOf(aimWithin(setMount(plan, 'C1', { ...arm, ...bare }), 'C1', { pan: 0, tilt: 90 })),
    ).toMatchObject({
      pan: 0,
      tilt: 90,
    });
    expect(turnCamera(plan, 'C2', { pan: 0, tilt: 90 }).ok).toBe(true);
  });
});

test('straight out is square to the wall, along a bracket, between the walls of a corner', () => {
  expect(straightOut(plan, arm)).toBe(180);
  expect(straightOut(plan, { ...arm, face: 1 })).toBe(90);
  const corner = { kind: 'corner', ...bare, host: 'house', face: 1, height: 2, reach: 0.2 } as const;
  // Where the south wall ends and the east one begins.
  expect(straightOut(plan, corner)).toBeCloseTo(135, 10);
  const pole = {
    kind: 'pole',
    at: [0, 0],
    height: 3,
    reach: 0.2,
    facing: -30,
    diameter: 0.1,
    limits,
  } as const;
  expect(straightOut(plan, pole)).toBe(330);
  expect(straightOut(plan, { kind: 'loose', eye: [0, 0, 3] })).toBeNull();
  expect(straightOut(plan, { ...arm, host: 'gone' })).toBeNull();
});

test('under a canopy straight out is over the edge that the camera is measured from, as its card has it', () => {
  const canopy = {
    kind: 'canopy',
    id: 'porch',
    name: 'Porch',
    hidden: false,
    locked: false,
    outline: [
      [20, 0],
      [24, 0],
      [24, 2],
      [20, 2],
    ],
    top: 2.6,
    thickness: 0.1,
    posts: 0,
    got: { outline: 'measured', top: 'measured', thickness: 'measured' },
  } as const;
  const under = { kind: 'soffit', ...bare, host: 'porch', face: 0, corner: 'start' } as const;
  const open = { ...plan, structures: { ...plan.structures, porch: canopy }, structureOrder: ['porch'] };
  // Its first edge is the south one.
  expect(straightOut(open, { ...under, distance: 1, inset: 0.5, drop: 0.1 })).toBeCloseTo(180, 10);
});
