import { describe, expect, test } from 'vitest';
import { sin, tan } from '../../../src/base/angle.ts';
import type { Block } from '../../../src/model/structure.ts';
import { factsOf, houseTurned, siteOf, turned } from '../../draw/card/cardSites.ts';
import { closeTo } from '../../draw/card/near.ts';
import { arm } from './taping.ts';

describe('the aim', () => {
  test.each([
    { turn: 0, pan: 225, right: 45 },
    { turn: 0, pan: 150, right: -30 },
    { turn: 90, pan: 225, right: -45 },
    { turn: 181, pan: 350, right: -11 },
  ])('with the house turned by $turn° a pan of $pan° is $right° to the right', ({ turn, pan, right }) => {
    // The first wall looks south, turned clockwise with the house; with the back to it clockwise is to the right.
    expect(factsOf(siteOf([houseTurned(turn)], arm, { pan })).turned).toBeCloseTo(right, 9);
  });

  test('two marks on the ground lie where the picture’s edges meet it', () => {
    const facts = factsOf(siteOf([houseTurned(0)], arm, { pan: 180, tilt: 35 }));
    expect(facts.set.device.lens.statedHfov?.atShortest).toBe(100);
    expect(facts.marks.map(({ side }) => side)).toEqual(['left', 'right']);
    // On the middle of an edge a ray lies half the stated 100° off the axis, in the plane of axis and level; its ground is as
    // far ahead as that of the axis.
    const ahead = 2.4 / tan(35);
    const along = 2.4 / sin(35);
    for (const { side, out, beside, at, down } of facts.marks) {
      expect(down).toBe(0.5);
      expect(at[2]).toBeCloseTo(0, 9);
      expect(out).toBeCloseTo(ahead + 0.2, 9);
      // Back to the wall, looking south, right is west.
      expect(beside).toBeCloseTo((side === 'right' ? 1 : -1) * along * tan(50), 6);
      expect(beside).toBeCloseTo(-(at[0] - 3.8), 9);
    }
  });

  test('marks turn with the house', () => {
    const facts = factsOf(siteOf([houseTurned(123)], arm, { pan: 303, tilt: 35 }));
    const straight = factsOf(siteOf([houseTurned(0)], arm, { pan: 180, tilt: 35 }));
    expect(facts.marks.map(({ out, beside }) => [out, beside])).toEqual(
      straight.marks.map(({ out, beside }) => [closeTo(out, 9), closeTo(beside, 9)]),
    );
    const [mark] = facts.marks;
    const [first] = straight.marks;
    if (!mark || !first) throw new Error('no mark');
    const [x, y] = turned([first.at[0], first.at[1]], 123);
    expect(mark.at).toEqual([closeTo(x, 9), closeTo(y, 9), closeTo(0, 9)]);
  });

  test('a mark that something stands on or before is not given', () => {
    const shed: Block = {
      kind: 'block',
      id: 'shed',
      name: 'Shed',
      hidden: false,
      locked: false,
      // East of the way to the left mark, from the ground up: the whole left edge ends on it.
      outline: [
        [4.6, -8],
        [12, -8],
        [12, -1],
        [4.6, -1],
      ],
      base: 0,
      height: 2,
      passage: 'solid',
      got: { outline: 'measured', base: 'measured', height: 'measured' },
    };
    const facts = factsOf(siteOf([houseTurned(0), shed], arm, { pan: 180, tilt: 35 }));
    expect(facts.marks.map(({ side }) => side)).toEqual(['right']);
  });
});
