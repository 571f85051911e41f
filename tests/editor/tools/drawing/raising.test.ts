import { describe, expect, test } from 'vitest';
import { inHand, nothing, rectangle, withBlocks } from '../drawn.ts';
import { pointing } from '../pointing.ts';

type Hand = ReturnType<typeof inHand>;

describe('raising', () => {
  const closed = (): Hand => {
    const hand = inHand('outline', withBlocks({ Shed: rectangle(20, 0, 22, 2) }, 3.1));
    hand.click([0, 0]);
    hand.type('8x6');
    return hand;
  };

  test('begins at 2.70; Enter takes it, a number another, and the next house begins there', () => {
    const hand = closed();
    expect(hand.structure('House')).toMatchObject({ height: 2.7, got: { height: 'guessed' } });
    expect(hand.type('5.1')).toBeNull();
    expect(hand.structure('House')).toMatchObject({ height: 5.1, got: { height: 'measured' } });
    expect(hand.now().undoName).toBe('Height of House');
    hand.editor.hold('outline');
    hand.click([30, 0]);
    hand.type('8x6');
    expect(hand.structure('Building')).toMatchObject({ height: 5.1 });
  });

  test('no height is refused in words, and the former kept', () => {
    const hand = closed();
    expect(hand.type('0')).toBe('Height must be above 0. 2.70 is kept.');
    expect(hand.structure('House')).toMatchObject({ height: 2.7 });
  });

  test('Ctrl+Z before the pointer moved takes the outline back, and no level line stays', () => {
    const hand = closed();
    expect(hand.state().name).toBe('outline raising');
    hand.editor.undo();
    expect(hand.structure('House')).toBeUndefined();
    expect(hand.state().name).toBe('outline armed');
    expect(hand.state().ghost).toMatchObject({ lines: [] });

    // A number stepped by its button is taken back by itself: the line comes down with it.
    const stepped = closed();
    stepped.tools.type('height', 3.5);
    stepped.editor.undo();
    expect(stepped.state()).toMatchObject({
      name: 'outline raising',
      strip: { fields: [{ value: 2.7 }] },
      ghost: {
        lines: [
          {
            points: [
              [0, 0, 2.7],
              [8, 0, 2.7],
              [8, 6, 2.7],
              [0, 6, 2.7],
            ],
          },
        ],
      },
    });
  });

  test('the pointer pulls it, one step; Esc puts it back', () => {
    const hand = closed();
    const viewer = [4, -40, 15] as const;
    const { plan } = hand.now();
    // The upright over the last corner drawn, at the back.
    const over = (z: number) => pointing(plan, [0, 6, z], { metresPerPixel: 0.005 }, viewer);
    hand.tools.hover(over(2.7));
    hand.tools.hover(over(4));
    const height = () => {
      const house = hand.structure('House');
      return house?.kind === 'building' ? house.height : 0;
    };
    expect(height()).toBeCloseTo(4, 1);
    hand.tools.hover(over(3.11));
    expect(height()).toBe(3.1);
    expect(hand.text()).toContain('as high as Shed');
    hand.tools.click(over(3.11));
    expect(height()).toBe(3.1);
    expect(hand.state().name).toBe('rest asking');
    hand.editor.undo();
    expect(height()).toBe(2.7);

    // It is pulled by as much as the pointer rises, wherever that begins.
    const below = closed();
    below.tools.hover(over(1.5));
    below.tools.hover(over(2.8));
    const house = below.structure('House');
    expect(house?.kind === 'building' && house.height).toBeCloseTo(4, 1);

    const other = closed();
    other.tools.hover(over(2.7));
    other.tools.hover(over(4));
    other.tools.escape();
    expect(other.structure('House')).toMatchObject({ height: 2.7 });
    expect(other.now().undoName).toBe('Draw House');
  });
});

describe('the strip that still asks', () => {
  const made = (): Hand => {
    const hand = inHand('outline');
    hand.click([0, 0]);
    hand.type('8x6');
    hand.type('2.7');
    return hand;
  };

  test('asks the roof, then its numbers, each a step; Enter ends it', () => {
    const hand = made();
    expect(hand.now().tool).toBe('rest');
    expect(hand.text()).toBe('Give it a roof, or leave it flat.');
    hand.tools.choose('roof', 'gable');
    expect(hand.state().strip?.fields.map(({ label }) => label)).toEqual(['Roof pitch', 'Overhang']);
    expect(hand.now().undoName).toBe('Roof of House');
    expect(hand.type('40', 'tab')).toBeNull();
    expect(hand.state().strip).not.toBeNull();
    expect(hand.type('0.3', 'enter', 'roof overhang')).toBeNull();
    expect(hand.state().strip).toBeNull();
    expect(hand.structure('House')).toMatchObject({ roof: { kind: 'gable', pitch: 40, overhang: 0.3 } });
    for (const name of [
      'Overhang of House',
      'Roof pitch of House',
      'Roof of House',
      'Height of House',
      'Draw House',
    ]) {
      expect(hand.now().undoName).toBe(name);
      hand.editor.undo();
    }
    expect(hand.now().plan).toEqual(nothing);
  });

  test('a number out of its bounds stays, with words; the former is kept', () => {
    const hand = made();
    hand.tools.choose('roof', 'hip');
    expect(hand.type('95')).toBe('Roof pitch must be from 0.0° to 80.0°. 35.0° is kept.');
    expect(hand.structure('House')).toMatchObject({ roof: { pitch: 35 } });
  });

  test('stays while the pointer looks about, and goes with a click elsewhere or another tool', () => {
    const hand = made();
    hand.hover([30, 30]);
    expect(hand.state().strip?.choices?.[0]?.key).toBe('roof');
    hand.click([30, 30]);
    expect(hand.state().strip).toBeNull();
    const other = made();
    other.editor.hold('line');
    expect(other.state().name).toBe('line armed');
  });

  test('does nothing more to a house that is undone', () => {
    const hand = made();
    hand.editor.undo();
    hand.editor.undo();
    hand.tools.choose('roof', 'hip');
    expect(hand.now().plan).toEqual(nothing);
  });
});
