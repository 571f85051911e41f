import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { addPicture } from '../../../src/plan/commands/addPicture.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { siteFromPicture } from '../../../src/plan/sitePicture.ts';
import { inHand, nothing, rectangle, withBlocks } from './drawn.ts';

function withPicture(plan: Plan, at: Vec2 = [0, 0], turn = 0): Plan {
  const file = { sha: 'b'.repeat(64), type: 'image/png', width: 1000, height: 800 } as const;
  const use = { kind: 'site', at, metresPerPixel: null, turn, strength: 0.35 } as const;
  const made = addPicture(plan, { name: 'Sheet', file, use });
  if (!made.ok) throw new Error('refused');
  return made.value.plan;
}

const ONE: Vec2 = [200, 600];
const TWO: Vec2 = [700, 480];

type Hand = ReturnType<typeof inHand>;

const picture = (hand: Hand) => {
  const [found] = Object.values(hand.now().plan.pictures);
  if (found?.use.kind !== 'site') throw new Error('no site picture');
  return { ...found, use: found.use };
};

function scaledBy(plan: Plan, text: string, by: 'right' | 'up' | 'enter'): Hand {
  const hand = inHand('scale', plan);
  const before = picture(hand);
  hand.click(siteFromPicture(before, ONE));
  hand.click(siteFromPicture(before, TWO));
  expect(hand.type(text, by)).toBeNull();
  return hand;
}

const onSite = (hand: Hand, point: Vec2): Vec2 => siteFromPicture(picture(hand), point);

const expectAt = ([x, y]: Vec2, [a, b]: Vec2) => {
  expect(x).toBeCloseTo(a, 9);
  expect(y).toBeCloseTo(b, 9);
};

describe('the scale tool', () => {
  test('a distance and an arrow place the line: the first point is 0, 0 in an empty plan', () => {
    const hand = scaledBy(withPicture(nothing), '12', 'right');
    expectAt(onSite(hand, ONE), [0, 0]);
    expectAt(onSite(hand, TWO), [12, 0]);
    expect(picture(hand)).toMatchObject({ locked: true });
    expect(picture(hand).use.metresPerPixel).toBeCloseTo(12 / Math.hypot(500, 120), 12);
    expect(hand.now()).toMatchObject({ tool: 'outline', undoName: 'Scale Sheet' });
    expectAt(onSite(scaledBy(withPicture(nothing), '12', 'up'), TWO), [0, 12]);
  });

  test('a distance and Enter leave the picture’s up north', () => {
    const hand = scaledBy(withPicture(nothing, [5, 5], 30), '13', 'enter');
    const size = 13 / Math.hypot(500, 120);
    expect(picture(hand).use.turn).toBe(0);
    expectAt(onSite(hand, TWO), [500 * size, 120 * size]);
  });

  test('in a plan with things the first point stays where it was', () => {
    const plan = withPicture(withBlocks({ Shed: rectangle(0, 0, 2, 2) }), [-4, 9], 17);
    const hand = inHand('scale', plan);
    const first = siteFromPicture(picture(hand), ONE);
    const after = scaledBy(plan, '12', 'right');
    expectAt(onSite(after, ONE), first);
    expectAt(onSite(after, TWO), [first[0] + 12, first[1]]);
  });

  test('without two points a number asks for them; nought is no distance', () => {
    const hand = inHand('scale', withPicture(nothing));
    expect(hand.text()).toBe('The picture has no scale. Pick two points and type their distance.');
    hand.click([1, -1]);
    expect(hand.tools.typed('distance', '12', 'enter')).toBe('Pick the second point.');
    hand.click([1, -1]);
    expect(hand.text()).toMatch(/^Both points are at one place/);
    hand.click([5, -1]);
    expect(hand.type('0')).toBe('A distance must be above 0.');
    expect(picture(hand).use.metresPerPixel).toBeNull();
  });

  test('one drag gives both points', () => {
    const hand = inHand('scale', withPicture(nothing));
    hand.drag([1, -1], [5, -1]);
    expect(hand.type('8', 'right')).toBeNull();
    expect(picture(hand).use.metresPerPixel).toBeCloseTo(0.06, 9);
  });

  test('Esc takes a point back at a time, then the picture that never had a scale', () => {
    const hand = inHand('scale', withPicture(nothing));
    hand.click([1, -1]);
    hand.click([5, -1]);
    hand.tools.escape();
    hand.tools.escape();
    expect(hand.now().tool).toBe('scale');
    hand.tools.escape();
    expect(hand.now().tool).toBe('rest');
    expect(hand.now().plan.pictures).toEqual({});
    hand.editor.undo();
    expect(Object.keys(hand.now().plan.pictures)).toHaveLength(1);
  });

  test('a picture that has a scale stays', () => {
    const hand = scaledBy(withPicture(nothing), '12', 'right');
    hand.editor.hold('scale');
    hand.tools.escape();
    expect(Object.keys(hand.now().plan.pictures)).toHaveLength(1);
  });

  test('without a picture it says so', () => {
    const hand = inHand('scale');
    expect(hand.text()).toBe('There is no site picture to scale. Trace a picture first.');
    hand.tools.escape();
    expect(hand.now().tool).toBe('rest');
  });
});
