import { describe, expect, test } from 'vitest';
import { createAnswers } from '../../src/answers/store.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { exactSite } from '../../src/assess/together.ts';
import { CancelledError } from '../../src/base/progress.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { AskOptions } from '../../src/worker/client.ts';
import type { Jobs } from '../../src/worker/messages.ts';
import { createPool, type Hired } from '../../src/worker/pool.ts';
import { wire } from '../../src/app/wire.ts';
import { demo, yard } from '../editor/plans.ts';

type Asked = Jobs['cover']['question'];

/** The wire on a plan, with a worker whose answers are given by hand and frames that are drawn by hand. */
function joined(plan: Plan) {
  const editor = createEditor(plan);
  const answers = createAnswers();
  const far = createSession();
  const session = createSession();
  const asked: { question: Asked; options: AskOptions; answer(): void; fail(error: Error): void }[] = [];
  const frames: (() => void)[] = [];
  const failures: unknown[] = [];
  const client: Hired['client'] = {
    isBusy: () => false,
    site: (question) => Promise.resolve(structuredClone(exactSite(question))),
    cover: (question, options = {}) =>
      new Promise((resolve, reject) => {
        options.signal?.addEventListener('abort', () => reject(new CancelledError()));
        asked.push({
          question,
          options,
          fail: reject,
          answer: () => {
            const copy = structuredClone(question.plan);
            const steps = far.cover(copy, question.question, question.wanted, question.laid);
            resolve(structuredClone(runSteps(steps)));
          },
        });
      }),
  };
  wire({
    editor,
    answers,
    session,
    pool: createPool(session, () => ({ client, dismiss: () => undefined }), 1),
    frame: (callback) => frames.push(callback),
    failed: (error) => failures.push(error),
  });
  const draw = () => {
    for (const callback of frames.splice(0)) callback();
  };
  return { editor, answers, asked, frames, failures, draw, shown: () => answers.getState().assessment };
}

/** Until the promises that are settled have been heard. */
const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

const tilt = (value: number) => (plan: Plan) => aimCamera(plan, 'C1', { tilt: value });

/** The demo plan with its first assessment shown. */
async function begun() {
  const window = joined(demo());
  window.asked[0]?.answer();
  await turn();
  window.asked[1]?.answer();
  await turn();
  return window;
}

test('the first, large question goes to the worker with its progress; exact causes come after the picture', async () => {
  const { asked, answers, shown } = joined(demo());
  expect(asked).toHaveLength(1);
  asked[0]?.options.progress?.(0.5, 'Working out C2');
  expect(answers.getState().computing).toEqual({ share: 0.5, doing: 'Working out C2' });
  asked[0]?.answer();
  await turn();
  expect(shown()?.revision).toBe(1);
  expect(shown()?.question.causes).toBe('quick');
  expect(asked).toHaveLength(2);
  asked[1]?.answer();
  await turn();
  expect(shown()?.question.causes).toBe('exact');
  expect(answers.getState().computing).toBeNull();
});

test('a drag of one camera is answered on the spot, before the event is over; its end asks for exact causes', async () => {
  const { editor, asked, shown } = await begun();
  const gesture = editor.begin('Tilt C1');
  for (const value of [30, 31, 32]) {
    gesture.change(tilt(value));
    expect(shown()?.revision).toBe(editor.store.getState().revision);
    expect(shown()?.cameras[0]?.camera.tilt).toBe(value);
  }
  expect(asked).toHaveLength(2);
  gesture.commit();
  expect(shown()?.cameras[0]?.camera.tilt).toBe(32);
  expect(shown()?.question.causes).toBe('quick');
  asked.at(-1)?.answer();
  await turn();
  expect(shown()?.question.causes).toBe('exact');
  expect(shown()?.cameras[0]?.camera.tilt).toBe(32);
});

test('what the spot answers equals what a fresh session makes of the same plan', async () => {
  const { editor, asked, shown } = await begun();
  editor.run('Tilt C1', tilt(40));
  const { plan, revision, target } = editor.store.getState();
  const fresh = (causes: 'quick' | 'exact') =>
    runSteps(createSession().steps(plan, { target, alone: null, situation: null, causes }, revision));
  expect(shown()?.site).toEqual(fresh('quick').site);
  expect(shown()?.cameras[0]?.areas).toEqual(fresh('quick').cameras[0]?.areas);
  asked.at(-1)?.answer();
  await turn();
  expect(shown()?.cameras.map(({ areas }) => areas)).toEqual(
    fresh('exact').cameras.map(({ areas }) => areas),
  );
});

test('when another plan is opened the question about the former is called off, and its answer never shown', async () => {
  const { editor, asked, answers, shown } = joined(demo());
  editor.open(yard());
  await turn();
  expect(asked[0]?.options.signal?.aborted).toBe(true);
  asked[0]?.answer();
  await turn();
  expect(shown()).toBeNull();
  asked[1]?.answer();
  await turn();
  expect(shown()?.scene.cameras).toHaveLength(1);
  asked[2]?.answer();
  await turn();
  expect(answers.getState().computing).toBeNull();
});

describe('what goes wrong', () => {
  test('in the engine is reported, and the last result stays', async () => {
    const { editor, asked, failures, answers, shown } = joined(demo());
    asked[0]?.fail(new Error('a corner is missing'));
    await turn();
    expect(failures).toHaveLength(1);
    expect(answers.getState().computing).toBeNull();
    editor.run('Tilt C1', tilt(30));
    asked.at(-1)?.answer();
    await turn();
    expect(shown()?.cameras[0]?.camera.tilt).toBe(30);
  });
});

test('the spot pointed at is answered once a frame, and anew with each result', async () => {
  const { editor, answers, frames, draw } = await begun();
  editor.point([4, -3, 0]);
  editor.point([5, -3, 0]);
  editor.point([4, -4, 0]);
  expect(frames).toHaveLength(1);
  expect(answers.getState().probe).toBeNull();
  draw();
  const first = answers.getState().probe;
  expect(first?.point).toEqual([4, -4, 0]);
  expect(first?.answers.map(({ camera }) => camera).toSorted()).toEqual(['C1', 'C2', 'C3']);
  editor.run('Tilt C1', tilt(80));
  draw();
  expect(answers.getState().probe?.answers).not.toEqual(first?.answers);
  editor.point(null);
  draw();
  expect(answers.getState().probe).toBeNull();
});

test('a target or one camera alone is another question', async () => {
  const { editor, asked, shown } = await begun();
  editor.showAlone('C2');
  if (asked.length > 1) asked.at(-1)?.answer();
  await turn();
  expect(shown()?.question.alone).toBe('C2');
  editor.ask({ kind: 'face', height: 1.6 });
  asked.at(-1)?.answer();
  await turn();
  asked.at(-1)?.answer();
  await turn();
  expect(shown()?.question).toEqual({
    target: { kind: 'face', height: 1.6 },
    alone: 'C2',
    situation: null,
    causes: 'exact',
  });
});
