import { expect, test } from 'vitest';
import { StretchList } from '../../src/sight/stretchList.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const put = (
  list: StretchList,
  low: number,
  high: number,
  start: number,
  step: number,
  owner: number,
): void => {
  list.depths[0] = start;
  list.depths[1] = step;
  list.put(low, high, owner);
};

/** The owner of each column from a first one on. */
const columns = (list: StretchList): number[] => {
  const into = new Int32Array(300);
  const count = list.read(into);
  const owners: number[] = [];
  for (let at = 0; at < count; at += 3)
    for (let column = into[at] ?? 0; column <= (into[at + 1] ?? -1); column += 1)
      owners.push(into[at + 2] ?? NaN);
  return owners;
};

test('a row of spans has the owners that each column by itself would have', () => {
  const chance = chanceFrom(93);
  const list = new StretchList();
  for (let trial = 0; trial < trials(800, 30_000); trial += 1) {
    const low = chance.whole(0, 5);
    const high = low + chance.whole(0, 30);
    list.reset(low, high);
    const owners = Array.from({ length: high - low + 1 }, () => -1);
    const depths = owners.map(() => 0);
    // Whole numbers, so that two depths tie or are far apart.
    for (let owner = 0; owner < chance.whole(1, 9); owner += 1)
      for (let parts = chance.whole(1, 3); parts > 0; parts -= 1) {
        const from = chance.whole(low, high);
        const to = Math.min(high, from + chance.whole(0, 20));
        const [start, step] = [chance.whole(200, 400), chance.whole(-5, 5)];
        put(list, from, to, start, step, owner);
        for (let column = from; column <= to; column += 1) {
          const depth = start + step * column;
          if (depth <= (depths[column - low] ?? 0)) continue;
          depths[column - low] = depth;
          owners[column - low] = owner;
        }
      }
    expect(columns(list), `seed 93, trial ${trial}`).toEqual(owners);
  }
});

test('neighbours of one owner are read as one', () => {
  const list = new StretchList();
  list.reset(0, 9);
  put(list, 0, 3, 2, 0, 7);
  put(list, 4, 9, 3, 0, 7);
  const into = new Int32Array(9);
  expect([list.read(into), ...into.subarray(0, 3)]).toEqual([3, 0, 9, 7]);
});

test('depths that single precision does not tell apart leave what came first', () => {
  const after = (share: number): number[] => {
    const list = new StretchList();
    list.reset(0, 1);
    put(list, 0, 1, 2, 0, 1);
    put(list, 0, 1, 2 * (1 + share), 0, 2);
    return columns(list);
  };
  expect(after(2 ** -26)).toEqual([1, 1]);
  expect(after(2 ** -22)).toEqual([2, 2]);
});

test('a row of more stretches than there was room for keeps them all', () => {
  const list = new StretchList();
  list.reset(0, 1999);
  const wanted = Array.from({ length: 2000 }, (_, column) => (column % 3 === 0 ? column % 7 : -1));
  wanted.forEach((owner, column) => {
    if (owner >= 0) put(list, column, column, 5, 0, owner);
  });
  const into = new Int32Array(6000);
  const count = list.read(into);
  const found = new Array<number>(2000).fill(NaN);
  for (let at = 0; at < count; at += 3)
    found.fill(into[at + 2] ?? NaN, into[at] ?? 0, (into[at + 1] ?? -1) + 1);
  expect(found).toEqual(wanted);
});

test('a row of more stretches than there was room for keeps them all', () => {
  const list = new StretchList();
  list.reset(0, 1999);
  for (let owner = 0; owner < 400; owner += 1) put(list, owner * 5, owner * 5 + 1, 2, 0, owner);
  const into = new Int32Array(3 * 1000);
  const count = list.read(into);
  // Each two columns of an owner and three of none.
  expect(count).toBe(3 * 800);
  for (let owner = 0; owner < 400; owner += 1)
    expect([...into.subarray(owner * 6, owner * 6 + 6)]).toEqual([
      owner * 5,
      owner * 5 + 1,
      owner,
      owner * 5 + 2,
      owner * 5 + 4,
      -1,
    ]);
});
