import { afterEach, expect, test } from 'vitest';
import { CancelledError } from '../../src/base/progress.ts';
import { refuse } from '../../src/base/fault.ts';
import { createClient, LostError } from '../../src/worker/client.ts';
import { serve } from '../../src/worker/host.ts';
import type { Steps } from '../../src/worker/host.ts';
import type { Ask } from '../../src/worker/messages.ts';
import { copied } from '../../src/worker/sendable.ts';
import { line } from './line.ts';

const open: (() => void)[] = [];
afterEach(() => {
  for (const close of open.splice(0)) close();
});

/** A client joined to a host that does this work. */
function joined(work: (ask: Ask) => Steps<unknown>) {
  const { near, far, close } = line();
  open.push(close);
  serve(far, function* (ask) {
    return copied(yield* work(ask));
  });
  return createClient(near);
}

const file = (name: string) => ({ name, bytes: new Uint8Array([1, 2, 3]) });

/** Long enough that the host lets the line be heard between steps. */
const busy = (ms: number) => {
  const until = performance.now() + ms;
  while (performance.now() < until);
};

function* longJob(seen: string[], name: string, steps: number): Steps<unknown> {
  for (let step = 0; step < steps; step += 1) {
    seen.push(`${name} ${step}`);
    busy(10);
    yield { share: step / steps, doing: `Step ${step}` };
  }
  return refuse({ code: name, path: [] });
}

test('an answer comes back to its own question', async () => {
  const client = joined(function* (ask) {
    yield { share: 0, doing: 'Reading' };
    return refuse({ code: ask.job === 'openFile' ? ask.question.name : '', path: [] });
  });
  const [a, b] = await Promise.all([client.openFile(file('a')), client.openFile(file('b'))]);
  expect(a).toEqual({ ok: false, faults: [{ code: 'a', path: [] }] });
  expect(b).toEqual({ ok: false, faults: [{ code: 'b', path: [] }] });
});

test('progress rises and is worded by the job', async () => {
  const heard: string[] = [];
  const client = joined((ask) => longJob([], ask.job, 4));
  await client.openFile(file('a'), { progress: (share, doing) => heard.push(`${doing} ${share}`) });
  expect(heard).toEqual(['Step 0 0', 'Step 1 0.25', 'Step 2 0.5', 'Step 3 0.75']);
});

test('a cancelled question settles as cancelled, and the host leaves it between two steps', async () => {
  const seen: string[] = [];
  const name = (ask: Ask) => (ask.job === 'openFile' ? ask.question.name : '');
  const client = joined((ask) => longJob(seen, name(ask), name(ask) === 'long' ? 60 : 1));
  const calling = new AbortController();
  const asked = client.openFile(file('long'), {
    signal: calling.signal,
    progress: (share) => {
      if (share > 0) calling.abort();
    },
  });
  await expect(asked).rejects.toBeInstanceOf(CancelledError);
  // The next question is answered only after the host has left the former.
  await client.openFile(file('next'));
  const steps = seen.filter((step) => step.startsWith('long')).length;
  expect(steps).toBeGreaterThan(1);
  expect(steps).toBeLessThan(30);
});

test('a cancel overtakes a question that still waits', async () => {
  const seen: string[] = [];
  const client = joined((ask) => longJob(seen, ask.job === 'openFile' ? ask.question.name : '', 5));
  const calling = new AbortController();
  const first = client.openFile(file('first'));
  const second = client.openFile(file('second'), { signal: calling.signal });
  calling.abort();
  await expect(second).rejects.toBeInstanceOf(CancelledError);
  await first;
  await client.openFile(file('third'));
  expect(seen.filter((step) => step.startsWith('second'))).toEqual([]);
});

test('what the job throws becomes the failure of its question alone', async () => {
  const client = joined(function* (ask) {
    yield { share: 0, doing: '' };
    if (ask.job === 'openFile' && ask.question.name === 'bad') throw new Error('no such corner');
    return refuse();
  });
  await expect(client.openFile(file('bad'))).rejects.toThrow('no such corner');
  expect((await client.openFile(file('good'))).ok).toBe(false);
});

test('an answer of the wrong shape is refused at the door', async () => {
  const client = joined(function* () {
    yield { share: 0, doing: '' };
    return { nothing: 'of the sort' };
  });
  await expect(client.openFile(file('a'))).rejects.toThrow(/no opened file/);
});

test('when the worker is lost, everything that waits or comes after fails with the reason', async () => {
  const { near, close } = line();
  open.push(close);
  const client = createClient(near);
  const asked = client.openFile(file('a'));
  client.lost('out of memory');
  await expect(asked).rejects.toThrow('out of memory');
  await expect(client.openFile(file('b'))).rejects.toBeInstanceOf(LostError);
});
