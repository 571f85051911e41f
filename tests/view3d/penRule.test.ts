import { expect, test } from 'vitest';
import { PenRule } from '../../src/view3d/navigate/PenRule.ts';

test('without a pen, fingers draw and every touch counts', () => {
  const rule = new PenRule();
  expect([rule.hasPen, rule.onlyMoves, rule.isPalm(0)]).toEqual([false, false, false]);
});

test('once a pen has touched, fingers only move the view, unless they are said to draw', () => {
  const rule = new PenRule();
  rule.seen(1000);
  expect([rule.hasPen, rule.onlyMoves]).toEqual([true, true]);
  rule.letFingersDraw(true);
  expect(rule.onlyMoves).toBe(false);
});

test('a touch within half a second of the pen is the hand that holds it', () => {
  const rule = new PenRule();
  rule.seen(1000);
  expect([rule.isPalm(1499), rule.isPalm(1500)]).toEqual([true, false]);
});
