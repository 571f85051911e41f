import { expect, test } from 'vitest';
import { createAnswers, take } from '../../src/answers/store.ts';
import { lentSight } from '../../src/app/lentSight.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { garage, house, site } from '../editor/site.ts';

/** What sight says of a plan that has been judged. */
function over(plan: ReturnType<typeof site>) {
  const answers = createAnswers();
  const question = {
    target: { kind: 'ground', height: 0 },
    alone: null,
    situation: null,
    causes: 'quick',
  } as const;
  take(answers, runSteps(createSession().steps(plan, question, 1)));
  return lentSight(answers);
}

test('before anything is judged nothing can be told', () => {
  expect(lentSight(createAnswers())([0, 0, 1], [1, 0, 1])).toBeNull();
});

test('the way past a house is clear, through it blocked where its wall stands', () => {
  const look = over(site(house(), garage()));
  expect(look([-3, -1, 1], [20, -1, 1])).toEqual({ blocked: null });
  const through = look([-3, 3, 1], [20, 3, 1]);
  // The west wall stands at x = 0, three metres on.
  expect(through?.blocked?.by).toBe('House');
  expect(through?.blocked?.after).toBeCloseTo(3, 9);
  expect(through?.blocked?.at.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0, 3, 1]);
  // From between the two, the garage at x = 13.
  const east = look([10, 3, 1], [20, 3, 1]);
  expect(east?.blocked?.by).toBe('Garage');
  expect(east?.blocked?.after).toBeCloseTo(3, 9);
});

test('over a roof of 2.70 the way is clear, a centimetre lower it is not', () => {
  const look = over(site(house()));
  expect(look([-1, 3, 2.71], [9, 3, 2.71])).toEqual({ blocked: null });
  expect(look([-1, 3, 2.69], [9, 3, 2.69])?.blocked?.by).toBe('House');
});
