import fc from 'fast-check';
import { expect, test } from 'vitest';
import { graft } from '../../src/worker/graft.ts';

test('what did not change keeps its identity, what changed and what holds it does not', () => {
  const former = {
    name: 'A',
    structures: { house: { height: 4.5, line: [[0, 0]] }, fence: { height: 1.8 } },
  };
  const copy = structuredClone(former);
  copy.structures.fence.height = 2;
  const grafted = graft(former, copy);
  expect(grafted.structures.house).toBe(former.structures.house);
  expect(grafted.structures.fence).not.toBe(former.structures.fence);
  expect(grafted).not.toBe(former);
  expect(grafted).toEqual(copy);
});

test('an equal copy becomes the former itself', () => {
  const former = { a: [1, 2, { b: null }] };
  expect(graft(former, structuredClone(former))).toBe(former);
});

test('a key or an item that went is not kept', () => {
  expect(graft({ a: 1, b: 2 }, { a: 1 })).toEqual({ a: 1 });
  expect(graft([1, 2], [1])).toEqual([1]);
  expect(graft({ a: undefined }, {})).toEqual({});
});

test('grafting never changes what is meant', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (former, next) => {
      expect(graft(former, next)).toEqual(next);
    }),
  );
});
