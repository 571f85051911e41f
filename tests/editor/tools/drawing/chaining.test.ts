import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../../src/base/vector.ts';
import type { Sketch } from '../../../../src/editor/tools/chart.ts';
import { inHand, nothing, rectangle, withBlocks } from '../drawn.ts';
import { fromAbove } from '../planView.ts';

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

describe('an outline corner by corner', () => {
  test('clicks put corners, a click on the first closes, and the house is selected', () => {
    const hand = inHand('outline');
    expect(hand.text()).toBe('Pick the first corner.');
    hand.click([0, 0]);
    expect(hand.state().name).toBe('outline chaining');
    expect(hand.text()).toMatch(/^Type a length, then an arrow/);
    hand.click([8, 0]);
    hand.click([8, 6]);
    expect(hand.now().plan).toBe(nothing);
    hand.hover([0.1, 0.1]);
    expect(hand.text()).toBe('Press to close.');
    expect(sketchOf(hand).marks.map(({ sign }) => sign)).toContain('ring');
    hand.click([0.1, 0.1]);
    expect(hand.state().name).toBe('outline raising');
    expect(outlineOf('House', hand)).toEqual([
      [0, 0],
      [8, 0],
      [8, 6],
    ]);
    expect(hand.now().selected).toMatchObject({ kind: 'structure' });
    expect(hand.now().undoName).toBe('Draw House');
  });

  test('one that was clicked clockwise is kept counter-clockwise, from the same first corner', () => {
    const hand = inHand('outline');
    for (const corner of [
      [0, 0],
      [0, 6],
      [8, 6],
      [8, 0],
    ] as const)
      hand.click(corner);
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 8, 6));
  });

  test('a press, a drag and a release put a corner', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.drag([3, 1], [8, 0]);
    hand.drag([3, 1], [8, 6]);
    hand.tools.enter();
    expect(outlineOf('House', hand)).toHaveLength(3);
  });

  test('two presses on one spot place and finish', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([8, 0]);
    hand.click([8, 6]);
    hand.tools.double(fromAbove([8, 6]));
    expect(hand.state().name).toBe('outline raising');
    expect(outlineOf('House', hand)).toHaveLength(3);
  });

  test('a point within 10 mm of the last is ignored', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([0.009, 0], { free: true });
    expect(sketchOf(hand).marks.filter(({ sign }) => sign === 'fixed')).toHaveLength(1);
    hand.click([0.011, 0], { free: true });
    expect(sketchOf(hand).marks.filter(({ sign }) => sign === 'fixed')).toHaveLength(2);
  });

  test('a square corner has its tick, and lengths stand on the sides', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([8, 0]);
    hand.hover([8, 3]);
    const { marks, plates } = sketchOf(hand);
    expect(marks).toContainEqual({ at: [8, 0, 0], sign: 'perpendicular' });
    expect(plates.filter(({ between }) => between).map(({ text }) => text)).toEqual(['8.00', '3.00']);
    expect(hand.text()).toMatch(/^3\.00 · 90\.0° left/);
  });
});

describe('typed edges', () => {
  test('a number and an arrow run along the working axis', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    expect(hand.type('4.2', 'right')).toBeNull();
    expect(hand.type('3 + 0.5', 'up')).toBeNull();
    expect(hand.type('420 cm', 'left')).toBeNull();
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual([
      [0, 0],
      [4.2, 0],
      [4.2, 3.5],
      [0, 3.5],
    ]);
    expect(hand.structure('House')).toMatchObject({ got: { outline: 'measured' } });
  });

  test('a number and Enter run where the pointer is; without one they ask which way', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    expect(hand.type('5')).toMatch(/^Which way/);
    hand.hover([0.02, 2]);
    expect(hand.type('5')).toBeNull();
    hand.hover([3, 5]);
    expect(hand.type('4')).toBeNull();
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual([
      [0, 0],
      [4, 5],
      [0, 5],
    ]);
  });

  test('a turn after < is from the last side, right positive; the first from north', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    expect(hand.type('5<90')).toBeNull();
    expect(hand.type('4<-90')).toBeNull();
    expect(hand.type('5<-90')).toBeNull();
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 5, 4));
  });

  test('a turn that ends with an arrow is from that arrow', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.type('5', 'right');
    hand.type('4<-90', 'right');
    hand.type('5', 'left');
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 5, 4));
  });

  test('number, Tab, turn, Enter is the same', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.type('5', 'right');
    expect(hand.type('4', 'tab')).toBeNull();
    expect(hand.state().strip?.fields.map(({ key, value }) => [key, value])[0]).toEqual(['length', 4]);
    expect(hand.type('-90', 'enter', 'turn')).toBeNull();
    expect(hand.type('5', 'left')).toBeNull();
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual(rectangle(0, 0, 5, 4));
  });

  test('a bare number is in the unit of the plan', () => {
    const hand = inHand('outline', { ...nothing, settings: { ...nothing.settings, units: 'millimetres' } });
    hand.click([0, 0]);
    hand.type('4200', 'right');
    hand.type('3 m', 'up');
    hand.tools.enter();
    expect(outlineOf('House', hand)).toEqual([
      [0, 0],
      [4.2, 0],
      [4.2, 3],
    ]);
  });

  test('what is no length stays, with words', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    const before = hand.state();
    expect(hand.type(`7' 1O"`, 'right')).toMatch(/is not a length/);
    expect(hand.type('1,234.5', 'right')).toMatch(/could mean two things. Write 1234.5/);
    expect(hand.type('0', 'right')).toMatch(/0.01 m or more/);
    expect(hand.type('5<north', 'right')).toMatch(/is not an angle/);
    expect(hand.state()).toBe(before);
  });

  test('an outline clicked over a picture is mapped, over nothing guessed', () => {
    const hand = inHand('outline');
    for (const corner of [
      [0, 0],
      [8, 0],
      [8, 6],
    ] as const)
      hand.click(corner);
    hand.tools.enter();
    expect(hand.structure('House')).toMatchObject({ got: { outline: 'guessed' } });
  });
});

describe('back and away', () => {
  test('Backspace takes corners off until none is left', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([6, 0]);
    hand.tools.back();
    expect(hand.state().name).toBe('outline chaining');
    hand.tools.back();
    expect(hand.state().name).toBe('outline armed');
  });

  test('Ctrl+Z in a chain takes a corner, not a step of the plan', () => {
    const hand = inHand('outline', withBlocks({ Shed: rectangle(20, 20, 22, 22) }));
    hand.click([0, 0]);
    hand.click([6, 0]);
    hand.editor.undo();
    expect(sketchOf(hand).marks.filter(({ sign }) => sign === 'fixed')).toHaveLength(1);
    expect(hand.structure('Shed')).toBeDefined();
  });

  test('Esc drops the chain, Ctrl+Z brings it back to hand, Esc twice leaves the tool', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.click([6, 0]);
    hand.tools.escape();
    expect(hand.state().name).toBe('outline armed');
    hand.editor.undo();
    expect(hand.state().name).toBe('outline chaining');
    hand.tools.escape();
    hand.tools.escape();
    expect(hand.now().tool).toBe('rest');
    expect(hand.now().plan).toBe(nothing);
  });

  test('another tool drops the chain', () => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.editor.hold('tree');
    expect(hand.state().name).toBe('tree placing');
    expect(hand.now().plan).toBe(nothing);
  });

  test('a plan that another tab writes takes no house, and says so', () => {
    const hand = inHand('outline');
    hand.editor.store.setState({ readOnly: true });
    for (const corner of [
      [0, 0],
      [8, 0],
      [8, 6],
    ] as const)
      hand.click(corner);
    hand.tools.enter();
    expect(hand.now().plan).toBe(nothing);
    expect(hand.now().notice?.text).toContain('another tab');
  });
});
