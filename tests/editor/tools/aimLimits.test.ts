import { expect, test } from 'vitest';
import { moveMount } from '../../../src/plan/commands/moveMount.ts';
import { demo } from '../plans.ts';
import { atRest } from './atRest.ts';

test('the cross stops where the mount does, says why, and goes on within its limits', () => {
  // C2 hangs on the garage's south wall and looks to 183°: 20° either way are 160° to 200°.
  const plan = moveMount(demo(), 'C2', { limits: { pan: 20, tilt: { up: 0, down: 30 }, roll: null } });
  const { tools, now, state, at } = atRest(plan, { kind: 'camera', id: 'C2' });
  const from = at([13, -4, 0], { handle: 'cross' });
  const aim = () => {
    const { pan, tilt } = now().plan.cameras['C2'] ?? {};
    return { pan, tilt };
  };
  tools.drag(from, at([4, -2, 0]));
  expect(aim().pan).toBe(200);
  expect(state().strip?.text).toContain('Pan stops 20° from straight out: this mount.');
  // Far out in front of the wall: within both limits.
  tools.drag(from, at([13.5, -7, 0]));
  expect(state().strip?.text).not.toContain('stops');
  expect(aim().tilt).toBeLessThan(30);
  // At its foot: too steep.
  tools.drag(from, at([14.6, -1.2, 0]));
  expect(aim().tilt).toBe(30);
  expect(state().strip?.text).toContain('Tilt stops at 30°: this mount.');
  tools.release();
  expect(now().undoName).toBe('Aim C2');
});
