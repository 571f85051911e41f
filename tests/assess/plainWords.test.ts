import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { FROM_THE_SIDE } from '../../src/coverage/rule.ts';
import type { Target } from '../../src/coverage/target.ts';
import { aimAt } from '../../src/optics/projection.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { readPlan } from '../../src/plan/read.ts';
import { bare } from '../plan/wholePlan.ts';

/*
 * In plain words: a camera on the same wall as the front door and 3.4 m beside it gives more than enough pixels at the
 * face of who stands there, but sees that face from the side.
 */
const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
if (!read.ok) throw new Error('the demo plan does not open');
const site = read.value;

/** The middle of the front door is 5.025 m along the south wall, which lies along y = 0; half a metre before it. */
const FACE = [5.025, -0.5, 1.6] as const;
const SOUTH = 180;

const mount = {
  kind: 'arm',
  ...bare,
  host: 'house',
  face: 0,
  corner: 'start',
  distance: FACE[0] + 3.4,
  height: 2.3,
  reach: 0.3,
  drop: 0,
} as const;
const drawn = newCamera(site, mount, { pan: 0, tilt: 0 });
const lens = {
  shortest: 3.055,
  longest: 3.055,
  focalLength: 3.055,
  statedHfov: null,
  statedVfov: null,
  statedIn: null,
  fNumber: null,
};
const placed = { ...drawn, device: { ...drawn.device, sensor: { width: 5.6, height: 3.15 }, lens } };

/** What the camera makes of the face at the door, aimed at it. */
function atTheDoor(target: Target) {
  const session = createSession();
  const ask = (pan: number, tilt: number) => {
    const plan = addCamera(site, { ...placed, pan, tilt });
    const question = { target, alone: placed.id, situation: null, causes: 'exact' } as const;
    return runSteps(session.steps(plan, question, 1));
  };
  const eye = ask(0, 0).scene.cameras.find(({ id }) => id === placed.id)?.eye ?? [0, 0, 0];
  const aim = aimAt(eye, FACE, 0);
  const answers = session.probe(ask(aim.pan, aim.tilt), FACE);
  const answer = answers.find(({ camera }) => camera === placed.id);
  if (!answer) throw new Error('the camera is not there');
  return answer;
}

test('front door, face: enough pixels for identify, but seen from the side', () => {
  const anyWay = atTheDoor({ kind: 'face', height: 1.6 });
  expect(anyWay.density).toBeGreaterThan(421);
  expect(anyWay.density).toBeLessThan(425);
  expect(anyWay).toMatchObject({ state: 'covered', band: 4 });
  const out = atTheDoor({ kind: 'face', height: 1.6, looks: { kind: 'bearing', bearing: SOUTH } });
  expect(out.density).toBe(anyWay.density);
  expect(out).toMatchObject({ state: 'covered', band: 2, lost: FROM_THE_SIDE });
});

test('who turns to the camera at that door may be identified there', () => {
  const to = atTheDoor({ kind: 'face', height: 1.6, looks: { kind: 'place', at: [FACE[0] + 3.4, -0.3] } });
  expect(to).toMatchObject({ state: 'covered', band: 4 });
});
