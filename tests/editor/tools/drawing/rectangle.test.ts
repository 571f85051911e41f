import { describe, expect, test } from 'vitest';
import type { Ring } from '../../../../src/model/structure.ts';
import { inHand, nothing, rectangle, withBlocks } from '../drawn.ts';
import { fromAbove } from '../planView.ts';

type Hand = ReturnType<typeof inHand>;

const outlineOf = (name: string, hand: Hand): Ring => {
  const found = hand.structure(name);
  if (!found || !('outline' in found)) throw new Error(`no outline of ${name}`);
  return found.outline;
};

describe('a rectangle', () => {
  test('is dragged from corner to corner on the working axes', () => {
    const hand = inHand('outline');
    hand.drag([0, 0], [5, 3]);
    expect(hand.state().name).toBe('outline raising');
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 5, 3));
  });

  test('Shift makes it square', () => {
    const hand = inHand('outline');
    hand.drag([0, 0], [5, -3], { shift: true });
    expect(outlineOf('House', hand)).toEqual([
      [0, 0],
      [0, -5],
      [5, -5],
      [5, 0],
    ]);
  });

  test('of no depth is none', () => {
    const hand = inHand('outline');
    hand.drag([0, 0], [5, 0]);
    expect(hand.now().plan).toBe(nothing);
    expect(hand.text()).toBe('Both sides must be 0.01 m or more.');
  });

  test('is typed after one corner: right and up, a minus the other way', () => {
    const hand = inHand('outline');
    hand.click([1, 1]);
    expect(hand.type('3.2x-6')).toBeNull();
    expect(outlineOf('House', hand)).toEqual([
      [1, 1],
      [1, -5],
      [4.2, -5],
      [4.2, 1],
    ]);
    expect(hand.structure('House')).toMatchObject({ got: { outline: 'measured' } });
  });

  test('without a sign goes to the quadrant of a pointer that has moved; a plus keeps its side', () => {
    const moved = inHand('outline');
    moved.click([1, 1]);
    moved.hover([-3, -4]);
    moved.type('2x3');
    expect(outlineOf('House', moved).map(([x, y]) => Math.sign(x + y - 2))).not.toContain(1);
    const plus = inHand('outline');
    plus.click([1, 1]);
    plus.hover([-3, -4]);
    plus.type('+2x3');
    expect(outlineOf('House', plus)).toContainEqual([3, -2]);
    const still = inHand('outline');
    still.click([1, 1], { free: true });
    // A hand that trembles by less than 4 px has not moved.
    still.hover([0.96, 0.96], { free: true });
    still.type('2x3');
    expect(outlineOf('House', still)).toEqual(rectangle(1, 1, 3, 4));
  });

  test('after two corners is refused in words', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([3, 0]);
    expect(hand.type('2x3')).toBe('A rectangle begins from one corner.');
  });

  test('from a corner of something askew runs along its side', () => {
    const askew = withBlocks({
      Shed: [
        [0, 0],
        [4, 3],
        [1, 7],
        [-3, 4],
      ],
    });
    const hand = inHand('outline', askew);
    hand.click([4, 3]);
    hand.type('5x5');
    // The side is 3 in 4: 5 along it is 4 east and 3 north.
    const [, beside, , up] = outlineOf('House', hand);
    expect(beside?.[0]).toBeCloseTo(8, 9);
    expect(beside?.[1]).toBeCloseTo(6, 9);
    expect(up?.[0]).toBeCloseTo(1, 9);
    expect(up?.[1]).toBeCloseTo(7, 9);
  });
});

describe('standing off', () => {
  const garage = withBlocks({ Garage: rectangle(10, 0, 14, 6) });

  test('a number and an arrow over a corner stand off from it, and again; Space begins there', () => {
    const hand = inHand('outline', garage);
    hand.hover([14, 0]);
    expect(hand.type('1', 'right')).toBeNull();
    expect(hand.state().name).toBe('outline offset');
    expect(hand.type('.5', 'down')).toBeNull();
    hand.tools.click(fromAbove([14, 0]));
    hand.type('2x2');
    expect(outlineOf('House', hand)[0]).toEqual([15, -0.5]);
  });

  test('a press on the place that stands off begins there too, one elsewhere begins elsewhere', () => {
    const begun = (press: readonly [number, number]) => {
      const hand = inHand('outline', garage);
      hand.hover([14, 0]);
      hand.type('1.23', 'right');
      hand.click(press);
      hand.type('2x2');
      return outlineOf('House', hand)[0];
    };
    expect(begun([15.25, 0.02])).toEqual([15.23, 0]);
    expect(begun([18, 3])).toEqual([18, 3]);
  });

  test('over nothing a number asks for a corner; Backspace takes the last leg back', () => {
    const hand = inHand('outline', garage);
    hand.hover([-20, -20]);
    expect(hand.type('1', 'right')).toMatch(/^Point at a corner first/);
    hand.hover([14, 0]);
    expect(hand.type('1')).toMatch(/^End the number with an arrow/);
    hand.type('1', 'right');
    hand.type('2', 'up');
    hand.tools.back();
    hand.tools.click(fromAbove([14, 0]));
    hand.type('2x2');
    expect(outlineOf('House', hand)[0]).toEqual([15, 0]);
  });
});
