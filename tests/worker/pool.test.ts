import { afterEach, expect, test } from 'vitest';
import type { Question } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { exactSite } from '../../src/assess/together.ts';
import { CancelledError } from '../../src/base/progress.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { createClient } from '../../src/worker/client.ts';
import { graft } from '../../src/worker/graft.ts';
import { serve, type Steps } from '../../src/worker/host.ts';
import type { Ask } from '../../src/worker/messages.ts';
import { createPool } from '../../src/worker/pool.ts';
import { copied, sendableFound, type Sendable } from '../../src/worker/sendable.ts';
import { differences } from '../assess/closeTo.ts';
import { streetPlan } from '../assess/streetPlan.ts';
import { demo } from '../editor/plans.ts';
import { line } from './line.ts';

const QUICK: Question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'quick',
};
const EXACT: Question = { ...QUICK, causes: 'exact' };

const open: (() => void)[] = [];
afterEach(() => {
  for (const close of open.splice(0)) close();
});

/** What a worker did: each step by the number of the question, and the cameras that it was asked for. */
interface Worker {
  readonly steps: string[];
  readonly asks: Ask[];
  die(): void;
}

/**
 * A pool of workers over real message channels, in one thread; answers are copied and come in later turns.
 * @param dies how often, from the first worker on, one dies at its first step
 */
function pooled(workers: number, { dies = 0, onStep = (_doing: string) => {} } = {}) {
  const made: Worker[] = [];
  const session = createSession();
  const hire = () => {
    const { near, far, close } = line();
    open.push(close);
    const client = createClient(near);
    const mine: Worker = { steps: [], asks: [], die: () => client.lost('out of memory') };
    const number = made.push(mine);
    const own = createSession();
    let former: Plan | null = null;
    function* work(ask: Ask): Steps<Sendable> {
      const asks = mine.asks.push(ask) - 1;
      if (ask.job === 'site') return copied(exactSite(ask.question));
      if (ask.job !== 'cover') throw new Error(`no ${ask.job} here`);
      former = graft(former, ask.question.plan);
      const { question, wanted, laid } = ask.question;
      const steps = own.cover(former, question, wanted, laid);
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) return sendableFound(step.value);
        mine.steps.push(`${asks} ${step.value.doing}`);
        onStep(step.value.doing);
        if (number <= dies) {
          mine.die();
          throw new Error('gone');
        }
        // Longer than a turn of the host, so that every step lets the line be heard.
        busy(9);
        yield step.value;
      }
    }
    serve(far, work);
    return { client, dismiss: close };
  };
  return { pool: createPool(session, hire, workers), session, made };
}

const busy = (ms: number) => {
  const until = performance.now() + ms;
  while (performance.now() < until);
};

const fresh = (plan: Plan, question: Question, revision = 1) =>
  runSteps(createSession().steps(plan, question, revision));

const covered = ({ asks }: Worker) =>
  asks.flatMap((ask) => (ask.job === 'cover' ? [ask.question.wanted] : []));

test('what several workers find is what one session finds, first quickly and then exactly', async () => {
  const { pool, made } = pooled(2);
  const plan = demo();
  for (const question of [QUICK, EXACT]) {
    const answer = await pool.assess({ plan, question, revision: 1 });
    expect(differences(answer, fresh(plan, question))).toEqual([]);
  }
  expect(made).toHaveLength(2);
  const [first, second] = made.map(covered);
  expect([...(first ?? []), ...(second ?? [])].flatMap(({ whole }) => whole).toSorted()).toEqual([
    'C1',
    'C2',
    'C3',
  ]);
  // Exact causes are asked of the worker that knows the camera, and nothing else of it comes across again.
  for (const wanted of [first, second]) expect(wanted?.[1]?.causes).toEqual(wanted?.[0]?.whole);
});

test('after a change only the cameras that it touches are asked for', async () => {
  const { pool, made } = pooled(2);
  const plan = demo();
  await pool.assess({ plan, question: QUICK, revision: 1 });
  const turned = aimCamera(plan, 'C2', { tilt: 31 });
  const before = made.map(({ asks }) => asks.length);
  const answer = await pool.assess({ plan: turned, question: QUICK, revision: 2 });
  const asks = made.flatMap((worker, at) => worker.asks.slice(before[at]));
  expect(asks.map((ask) => ask.job === 'cover' && ask.question.wanted.whole)).toEqual([['C2']]);
  expect(differences(answer, fresh(turned, QUICK, 2))).toEqual([]);
});

test('progress adds up over workers and never falls', async () => {
  const { pool } = pooled(2);
  const shares: number[] = [];
  await pool.assess(
    { plan: demo(), question: QUICK, revision: 1 },
    { progress: (share) => shares.push(share) },
  );
  expect(shares.length).toBeGreaterThan(4);
  expect(shares).toEqual(shares.toSorted((one, two) => one - two));
  // One worker is done before the other: only when both are, all is.
  expect(shares.indexOf(1)).toBe(shares.length - 1);
});

test('calling off stops every worker between two steps, and the next question is answered', async () => {
  const calling = new AbortController();
  let steps = 0;
  const { pool, made } = pooled(2, {
    onStep: () => {
      steps += 1;
      if (steps === 6) calling.abort();
    },
  });
  const plan = streetPlan(4, 12);
  const asked = pool.assess({ plan, question: QUICK, revision: 1 }, { signal: calling.signal });
  await expect(asked).rejects.toBeInstanceOf(CancelledError);
  const next = demo();
  const answer = await pool.assess({ plan: next, question: QUICK, revision: 2 });
  expect(differences(answer, fresh(next, QUICK, 2))).toEqual([]);
  // Two workers would have taken two steps each and one a camera: sixteen.
  const done = made.flatMap(({ steps: all }) => all).filter((doing) => doing.startsWith('0 '));
  expect(done.length).toBeGreaterThanOrEqual(6);
  expect(done.length).toBeLessThanOrEqual(6 + 2 * made.length);
});

test('a worker that dies is replaced and its question asked again', async () => {
  const { pool, made } = pooled(1, { dies: 1 });
  const plan = demo();
  const answer = await pool.assess({ plan, question: QUICK, revision: 1 });
  expect(made).toHaveLength(2);
  expect(differences(answer, fresh(plan, QUICK))).toEqual([]);
});

test('one that dies twice over a question fails it with words, and the next question has a new worker', async () => {
  const { pool, made } = pooled(1, { dies: 2 });
  const asked = pool.assess({ plan: demo(), question: QUICK, revision: 1 });
  await expect(asked).rejects.toThrow('stopped twice: out of memory');
  expect(made).toHaveLength(2);
  await pool.assess({ plan: demo(), question: QUICK, revision: 2 });
  expect(made).toHaveLength(3);
});

test('a worker that died while it was idle is replaced when it is next needed', async () => {
  const { pool, made } = pooled(1);
  const plan = demo();
  await pool.assess({ plan, question: QUICK, revision: 1 });
  made[0]?.die();
  const turned = aimCamera(plan, 'C1', { tilt: 40 });
  const answer = await pool.assess({ plan: turned, question: QUICK, revision: 2 });
  expect(made).toHaveLength(2);
  expect(differences(answer, fresh(turned, QUICK, 2))).toEqual([]);
});

test('a worker keeps what it sent: its buffers go over as copies', async () => {
  const session = createSession();
  const plan = demo();
  const wanted = { whole: plan.cameraOrder, causes: [] };
  const found = runSteps(session.cover(plan, QUICK, wanted, true));
  const { answer, transfer } = sendableFound(found);
  expect(transfer.length).toBeGreaterThan(8);
  const sent: unknown = structuredClone(answer, { transfer: [...transfer] });
  expect(differences(sent, found)).toEqual([]);
  expect(found.whole.every(({ cells }) => cells.runs.list.length > 0)).toBe(true);
});
