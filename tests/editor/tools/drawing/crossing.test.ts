import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../../src/base/vector.ts';
import type { Sketch } from '../../../../src/editor/tools/chart.ts';
import { inHand, nothing, rectangle } from '../drawn.ts';

const outlineOf = (name: string, hand: ReturnType<typeof inHand>): readonly Vec2[] => {
  const found = hand.structure(name);
  if (!found || !('outline' in found)) throw new Error(`no outline of ${name}`);
  return found.outline;
};

const sketchOf = (hand: ReturnType<typeof inHand>): Sketch => {
  const { ghost } = hand.state();
  if (ghost?.kind !== 'sketch') throw new Error('nothing is sketched');
  return ghost;
};

describe('what crosses or is too little', () => {
  test('an edge that crosses is shown and refused by click and by number, and the chain stays', () => {
    const hand = inHand('outline');
    for (const corner of [
      [0, 0],
      [6, 0],
      [6, 4],
    ] as const)
      hand.click(corner);
    hand.hover([3, -2]);
    expect(hand.text()).toBe('Corner 4 crosses edge 1–2. Move it, or take it back with Backspace.');
    expect(hand.state().strip?.trouble).toBe(true);
    const sketch = sketchOf(hand);
    expect(sketch.lines.some(({ style, hatched }) => style === 'wrong' && hatched)).toBe(true);
    expect(sketch.marks).toContainEqual({ at: [3, -2, 0], sign: 'wrong' });
    hand.click([3, -2]);
    expect(sketchOf(hand).marks.filter(({ sign }) => sign === 'fixed')).toHaveLength(3);
    // From 6, 4 straight back over the side before.
    expect(hand.type('5', 'down')).toMatch(/touches edge/);
    hand.click([0, 4]);
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 6, 4));
  });

  test('an outline whose closing edge crosses stays open', () => {
    const hand = inHand('outline');
    for (const corner of [
      [0, 0],
      [4, 0],
      [4, 4],
      [2, 4],
      [2, 6],
      [6, 6],
      [6, 2],
    ] as const)
      hand.click(corner);
    hand.tools.enter();
    expect(hand.state().name).toBe('outline chaining');
    expect(hand.text()).toMatch(/^The edge that closes crosses edge/);
    expect(hand.now().plan).toBe(nothing);
  });

  test('two corners are no outline, by Enter and by a press on the first', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.tools.enter();
    expect(hand.text()).toBe('An outline needs three corners. One is placed.');
    hand.click([6, 0]);
    hand.tools.enter();
    expect(hand.text()).toBe('An outline needs three corners. Two are placed.');
    hand.click([0, 0]);
    expect(hand.text()).toBe('An outline needs three corners. Two are placed.');
    expect(hand.state().name).toBe('outline chaining');
  });
});
