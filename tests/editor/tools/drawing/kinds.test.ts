import { describe, expect, test } from 'vitest';
import type { Ring } from '../../../../src/model/structure.ts';
import { addStructure } from '../../../../src/plan/commands/addStructure.ts';
import { inHand, nothing, rectangle } from '../drawn.ts';
import { fromAbove } from '../planView.ts';

type Hand = ReturnType<typeof inHand>;

const outlineOf = (name: string, hand: Hand): Ring => {
  const found = hand.structure(name);
  if (!found || !('outline' in found)) throw new Error(`no outline of ${name}`);
  return found.outline;
};

describe('lines', () => {
  test('the key again takes fence, wall, hedge', () => {
    const hand = inHand('line');
    const chosen = () => hand.state().strip?.choices?.[0]?.chosen;
    expect(chosen()).toBe('fence');
    hand.tools.again();
    expect(chosen()).toBe('wall');
    hand.tools.again();
    expect(chosen()).toBe('hedge');
    hand.tools.again();
    expect(chosen()).toBe('fence');
    hand.tools.choose('kind', 'hedge');
    expect(chosen()).toBe('hedge');
  });

  test('Enter ends it; the strip asks height, thickness and passage', () => {
    const hand = inHand('line');
    hand.click([0, 0]);
    hand.tools.enter();
    expect(hand.text()).toBe('A line needs two corners. One is placed.');
    hand.click([6, 0]);
    hand.tools.enter();
    expect(hand.state().strip?.fields.map(({ label }) => label)).toEqual(['Height', 'Thickness']);
    expect(hand.type('1.2', 'tab')).toBeNull();
    expect(hand.type('0.1', 'enter', 'thickness')).toBeNull();
    expect(hand.structure('Fence')).toMatchObject({ height: 1.2, thickness: 0.1, closed: false });
  });

  test('what it lets through is chosen', () => {
    const hand = inHand('line');
    hand.click([0, 0]);
    hand.click([6, 0]);
    hand.tools.enter();
    hand.tools.choose('passage', 'screen');
    expect(hand.structure('Fence')).toMatchObject({ passage: 'screen' });
  });

  test('two presses on one spot end it, its first corner closes it', () => {
    const hand = inHand('line');
    hand.click([0, 0]);
    hand.click([6, 0]);
    hand.tools.double(fromAbove([6, 0]));
    expect(hand.structure('Fence')).toMatchObject({ closed: false });
    const ring = inHand('line');
    for (const corner of [
      [0, 0],
      [6, 0],
      [6, 4],
      [0, 0],
    ] as const)
      ring.click(corner);
    expect(ring.structure('Fence')).toMatchObject({
      closed: true,
      line: [
        [0, 0],
        [6, 0],
        [6, 4],
      ],
    });
  });

  test('has no rectangle: a drag is one stretch', () => {
    const hand = inHand('line');
    hand.drag([0, 0], [5, 3], { free: true });
    hand.tools.enter();
    expect(hand.structure('Fence')).toMatchObject({
      line: [
        [0, 0],
        [5, 3],
      ],
    });
  });
});

describe('boundary, block and canopy', () => {
  test('a new boundary replaces the old one, and says so', () => {
    const hand = inHand('boundary');
    hand.drag([0, 0], [20, 10]);
    expect(hand.now().plan.boundary).toEqual(rectangle(0, 0, 20, 10));
    expect(hand.now().selected).toEqual({ kind: 'boundary' });
    expect(hand.now().notice).toBeNull();
    hand.editor.hold('boundary');
    hand.drag([30, 30], [40, 50]);
    expect(hand.now().plan.boundary).toEqual(rectangle(30, 30, 40, 50));
    expect(hand.now().notice?.text).toContain('Boundary replaced');
    hand.editor.undo();
    expect(hand.now().plan.boundary).toEqual(rectangle(0, 0, 20, 10));
  });

  test('a block is two clicks, or two typed sides, and a height', () => {
    const hand = inHand('block');
    hand.click([0, 0]);
    expect(hand.state().name).toBe('block rectangle');
    hand.click([1.5, 1]);
    hand.type('1.3');
    expect(hand.structure('Block')).toMatchObject({ outline: rectangle(0, 0, 1.5, 1), height: 1.3 });
    hand.editor.hold('block');
    hand.click([5, 5]);
    expect(hand.type('2', 'tab')).toBeNull();
    expect(hand.type('0.7', 'enter', 'up')).toBeNull();
    expect(outlineOf('Block 2', hand)).toEqual(rectangle(5, 5, 7, 5.7));
  });

  test('the height of a canopy is its top; its posts stand away from the house, and are asked', () => {
    const house = addStructure(nothing, {
      kind: 'building',
      outline: rectangle(0, 0, 10, 8),
      holes: [],
      base: 0,
      height: 3,
      roof: { kind: 'flat', pitch: 0, overhang: 0, ridge: null, parapet: 0 },
      wallThickness: null,
      openings: [],
      services: [],
      floors: [],
      yearBuilt: null,
      got: { outline: 'measured', base: 'measured', height: 'measured', roof: 'measured' },
    });
    if (!house.ok) throw new Error('refused');
    const hand = inHand('block', house.value.plan);
    hand.tools.again();
    hand.click([0, 0]);
    hand.type('3x-2');
    hand.type('2.5');
    const canopy = hand.structure('Canopy');
    expect(canopy).toMatchObject({ top: 2.5, thickness: 0.15, posts: 2 });
    expect(
      outlineOf('Canopy', hand)
        .slice(0, 2)
        .map(([, y]) => y),
    ).toEqual([-2, -2]);
    expect(hand.state().strip?.fields.map(({ label }) => label)).toEqual(['Thickness', 'Posts']);
    expect(hand.type('5', 'enter', 'posts')).toMatch(/^Posts must be from 0 to 4/);
    expect(hand.type('1.5', 'enter', 'posts')).toMatch(/not a whole number/);
    expect(hand.type('4', 'enter', 'posts')).toBeNull();
    expect(hand.structure('Canopy')).toMatchObject({ posts: 4 });
  });
});
