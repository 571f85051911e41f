import { expect, test } from 'vitest';
import { createSharing } from '../../src/worker/sharing.ts';

const NOBODY = new Set<string>();
const idle = () => false;
const whole = (...ids: readonly string[]) => ({ whole: ids, causes: [] });
const wholes = (shares: ReadonlyMap<number, { readonly whole: readonly string[] }>) =>
  Object.fromEntries([...shares].map(([worker, share]) => [worker, share.whole]));

test('cameras are shared out evenly, each asked for once', () => {
  const shares = createSharing(3).share(whole('a', 'b', 'c', 'd', 'e', 'f', 'g'), NOBODY, idle);
  const sizes = [...shares.values()].map((share) => share.whole.length);
  expect(sizes.toSorted((one, two) => one - two)).toEqual([2, 2, 3]);
  expect(
    [...shares.values()]
      .flatMap((share) => share.whole)
      .toSorted()
      .join(''),
  ).toBe('abcdefg');
});

test('a camera goes back to the worker that knows it', () => {
  const sharing = createSharing(3);
  const first = wholes(sharing.share(whole('a', 'b', 'c'), NOBODY, idle));
  for (const [worker, ids] of Object.entries(first))
    expect(wholes(sharing.share(whole(...ids), NOBODY, idle))).toEqual({ [worker]: ids });
});

test('a camera that is dragged has a worker of its own, where there are two', () => {
  const sharing = createSharing(2);
  sharing.share(whole('a', 'b', 'c', 'd'), NOBODY, idle);
  const shares = Object.values(wholes(sharing.share(whole('a', 'b', 'c', 'd'), new Set(['c']), idle)));
  expect(shares.map((ids) => ids.toSorted().join('')).toSorted()).toEqual(['abd', 'c']);
  expect(wholes(createSharing(1).share(whole('a', 'b', 'c'), new Set(['c']), idle))[0]?.[0]).toBe('c');
});

test('a camera that is dragged does not wait for a worker that is still busy', () => {
  const sharing = createSharing(2);
  const before = wholes(sharing.share(whole('a', 'b'), NOBODY, idle));
  const home = before[0]?.includes('a') ? 0 : 1;
  const shares = wholes(sharing.share(whole('a'), new Set(['a']), (worker) => worker === home));
  expect(shares).toEqual({ [1 - home]: ['a'] });
});

test('what is to be covered and what only lacks causes are told apart in each share', () => {
  const shares = createSharing(2).share({ whole: ['a', 'b'], causes: ['c'] }, NOBODY, idle);
  expect([...shares.values()].flatMap((share) => share.whole).toSorted()).toEqual(['a', 'b']);
  expect([...shares.values()].flatMap((share) => share.causes)).toEqual(['c']);
});
