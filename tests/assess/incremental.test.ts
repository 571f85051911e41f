import { expect, test } from 'vitest';
import type { Question } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { differences } from './closeTo.ts';
import { edited, randomSite } from './randomSite.ts';
import { streetPlan } from './streetPlan.ts';

const GROUND: Question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'exact',
};

test('after any edit a session that remembers answers what a new one answers', () => {
  let [kept, anew] = [0, 0];
  for (let site = 0; site < trials(2, 40); site += 1) {
    const chance = chanceFrom(700 + site);
    const session = createSession();
    let plan = randomSite(chance, 7, 4);
    let before = runSteps(session.steps(plan, GROUND, 0));
    for (let step = 1; step <= 7; step += 1) {
      plan = edited(plan, chance, step);
      const question: Question = {
        ...GROUND,
        causes: chance.pick(['quick', 'exact']),
        target: chance.pick([GROUND.target, GROUND.target, GROUND.target, { kind: 'face', height: 1.6 }]),
      };
      const answer = runSteps(session.steps(plan, question, step));
      const fresh = runSteps(createSession().steps(plan, { ...question }, step));
      // What is exact stays so where quick causes would do.
      const isFiner = answer.cameras.map(
        ({ areas }, at) => areas.insideFrame.how !== fresh.cameras[at]?.areas.insideFrame.how,
      );
      const told = (one: typeof answer) => ({
        ...one,
        cameras: one.cameras.map((coverage, at) => (isFiner[at] ? { ...coverage, areas: null } : coverage)),
      });
      expect(differences(told(answer), told(fresh)), `seed ${chance.seed}, step ${step}`).toEqual([]);
      if (answer.scene.solids !== before.scene.solids)
        for (const { camera, cells } of answer.cameras) {
          const former = before.cameras.find((one) => one.camera.id === camera.id);
          if (former?.cells.density === cells.density) kept += 1;
          else anew += 1;
        }
      before = answer;
    }
  }
  // Neither "all anew" nor "nothing anew" would pass for what is claimed.
  expect(kept).toBeGreaterThan(10);
  expect(anew).toBeGreaterThan(10);
});

test('moving one house of a street covers only the cameras that can see it', () => {
  const session = createSession();
  const plan = streetPlan(40, 8);
  runSteps(session.steps(plan, GROUND, 0));
  const house = plan.structures['H3'];
  if (house?.kind !== 'building') throw new Error('the street has houses');
  const outline = house.outline.map(([x, y]) => [x + 0.5, y] as const);
  const moved = { ...plan, structures: { ...plan.structures, H3: { ...house, outline } } };
  const worked: string[] = [];
  const steps = session.steps(moved, GROUND, 1);
  for (let next = steps.next(); !next.done; next = steps.next())
    if (next.value.doing.startsWith('Working out')) worked.push(next.value.doing);
  expect(worked.length).toBeGreaterThan(0);
  expect(worked.length).toBeLessThan(5);
});
