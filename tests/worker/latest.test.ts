import { expect, test } from 'vitest';
import { CancelledError } from '../../src/base/progress.ts';
import type { Progress } from '../../src/base/progress.ts';
import { latestWins } from '../../src/worker/latest.ts';

/** Questions under way, answered by hand. */
function byHand() {
  const under: { question: number; progress: Progress; answer(): void }[] = [];
  const queue = latestWins<number, string>(
    (question, { progress, signal }) =>
      new Promise((resolve, reject) => {
        under.push({ question, progress, answer: () => resolve(`answer ${question}`) });
        signal.addEventListener('abort', () => reject(new CancelledError()));
      }),
  );
  const settled: string[] = [];
  const ask = (question: number) =>
    queue
      .ask(question, () => undefined)
      .then(
        (answer) => settled.push(answer),
        (error: unknown) =>
          settled.push(error instanceof CancelledError ? `cancelled ${question}` : 'failed'),
      );
  return { under, queue, ask, settled };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

test('of three in a row the first is called off, the second never starts, the third is answered', async () => {
  const { under, ask, settled } = byHand();
  const asked = [ask(1), ask(2), ask(3)];
  await turn();
  expect(under.map(({ question }) => question)).toEqual([1, 3]);
  under[1]?.answer();
  await Promise.all(asked);
  expect(settled.toSorted()).toEqual(['answer 3', 'cancelled 1', 'cancelled 2']);
});

test('one that is past half is let finish', async () => {
  const { under, ask, settled } = byHand();
  const asked = [ask(1)];
  under[0]?.progress(0.6, '');
  asked.push(ask(2));
  await turn();
  expect(under).toHaveLength(1);
  under[0]?.answer();
  await turn();
  under[1]?.answer();
  await Promise.all(asked);
  expect(settled).toEqual(['answer 1', 'answer 2']);
});

test('calling off settles what runs and what waits', async () => {
  const { under, queue, ask, settled } = byHand();
  const first = ask(1);
  under[0]?.progress(0.9, '');
  const asked = [first, ask(2)];
  queue.callOff();
  await Promise.all(asked);
  expect(settled.toSorted()).toEqual(['cancelled 1', 'cancelled 2']);
  void ask(3);
  await turn();
  expect(under.at(-1)?.question).toBe(3);
});
