import { expect, test } from 'vitest';
import { answers, fromWorker, toWorker } from '../../src/worker/messages.ts';
import { demo } from '../editor/plans.ts';

const question = { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' };
const wanted = { whole: ['C1'], causes: [] };
const cover = { plan: demo(), question, wanted, laid: true };
const asking = (ask: unknown) => ({ kind: 'ask', id: 1, ask });

test('a message that is in order is the very message', () => {
  for (const message of [
    { kind: 'cancel', id: 3 },
    asking({ job: 'cover', question: cover }),
    asking({ job: 'openFile', question: { name: 'a.json', bytes: new Uint8Array(2) } }),
  ])
    expect(toWorker(message)).toBe(message);
  for (const message of [
    { kind: 'progress', id: 1, share: 0.5, doing: 'Reading' },
    { kind: 'done', id: 1, answer: null },
    { kind: 'cancelled', id: 1 },
    { kind: 'failed', id: 1, message: 'a corner is missing' },
  ])
    expect(fromWorker(message)).toBe(message);
});

test.each([
  null,
  'cancel',
  { kind: 'cancel' },
  { kind: 'cancel', id: 0.5 },
  { kind: 'stop', id: 1 },
  asking(null),
  asking({ job: 'toString', question: cover }),
  asking({ job: 'cover', question: { ...cover, plan: { version: 3 } } }),
  asking({ job: 'cover', question: { ...cover, question: { ...question, causes: 'some' } } }),
  asking({ job: 'cover', question: { ...cover, question: { ...question, target: null } } }),
  asking({ job: 'cover', question: { ...cover, wanted: { whole: 'C1', causes: [] } } }),
  asking({ job: 'cover', question: { ...cover, laid: 1 } }),
  asking({ job: 'site', question: { seers: [] } }),
  asking({ job: 'trial', question: { seers: [] } }),
  asking({ job: 'openFile', question: { name: 'a.json', bytes: [1, 2] } }),
])('the worker refuses what is no message to it: %j', (message) => {
  expect(() => toWorker(message)).toThrow(TypeError);
});

test.each([
  undefined,
  { kind: 'done', id: 1 },
  { kind: 'failed', id: 1 },
  { kind: 'valueOf', id: 1 },
  { kind: 'progress', id: '1', share: 0, doing: '' },
])('the window refuses what is no message from the worker: %j', (message) => {
  expect(() => fromWorker(message)).toThrow(TypeError);
});

test('an answer of another job is refused', () => {
  const site = { atLeast: [], byCount: [] };
  expect(answers.site(site)).toBe(site);
  expect(() => answers.cover(site)).toThrow(TypeError);
  expect(() => answers.openFile(site)).toThrow(TypeError);
  expect(() => answers.trial(site)).toThrow(TypeError);
});
