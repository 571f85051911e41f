import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../../src/base/vector.ts';
import { inHand } from '../drawn.ts';

type Hand = ReturnType<typeof inHand>;

/** Middles of the posts in the order of their group, m, to a tenth of a millimetre. */
function middles({ now }: Hand): readonly Vec2[] {
  const { groups, groupOrder, structures } = now().plan;
  return (groups[groupOrder[0] ?? '']?.members ?? []).map((id): Vec2 => {
    const post = structures[id];
    if (post?.kind !== 'block') throw new Error(`${id} is no post`);
    const mean = (axis: 0 | 1): number => {
      const sum = post.outline.reduce((so, corner) => so + corner[axis], 0);
      return Math.round((sum / post.outline.length) * 1e4) / 1e4 + 0;
    };
    return [mean(0), mean(1)];
  });
}

/** A row drawn from west to east. */
function row(length = '6'): Hand {
  const hand = inHand('posts');
  hand.click([0, 0]);
  hand.type(length, 'right');
  hand.tools.enter();
  return hand;
}

describe('a row of posts', () => {
  test('stands along what was drawn, one at each end, grouped and selected, one step', () => {
    const hand = row();
    // 6 m at most 1.5 m apart: four gaps.
    expect(middles(hand)).toEqual([
      [0, 0],
      [1.5, 0],
      [3, 0],
      [4.5, 0],
      [6, 0],
    ]);
    expect(hand.now().undoName).toBe('Draw Posts');
    expect(hand.now().selection).toHaveLength(5);
    expect(hand.text()).toBe('5 posts, 1.50 apart');
    hand.editor.undo();
    expect(hand.now().plan.structureOrder).toEqual([]);
    expect(hand.now().plan.groupOrder).toEqual([]);
  });

  test('a count typed in the strip spreads so many evenly; posts keep their ids, all stay selected', () => {
    const hand = row();
    const before = hand.now().plan.structureOrder;
    expect(hand.type('7', 'tab', 'count')).toBeNull();
    expect(middles(hand)).toEqual([0, 1, 2, 3, 4, 5, 6].map((x) => [x, 0]));
    expect(hand.now().plan.structureOrder.slice(0, 5)).toEqual(before);
    expect(hand.now().selection).toHaveLength(7);
    expect(hand.now().undoName).toBe('Count of Posts');
    expect(hand.type('3', 'tab', 'count')).toBeNull();
    expect(middles(hand)).toEqual([
      [0, 0],
      [3, 0],
      [6, 0],
    ]);
    expect(hand.now().plan.structureOrder).toEqual(before.slice(0, 3));
  });

  test('a distance apart typed is the greatest there is; height and thickness are those of all', () => {
    const hand = row('5');
    expect(hand.type('2', 'tab', 'spacing')).toBeNull();
    // Three gaps of 1.667: two of 2 would leave one over.
    expect(middles(hand).map(([x]) => x)).toEqual([0, 1.6667, 3.3333, 5]);
    expect(hand.type('0.9', 'tab', 'height')).toBeNull();
    expect(hand.type('0.2', 'tab', 'thickness')).toBeNull();
    const posts = Object.values(hand.now().plan.structures);
    expect(posts).toHaveLength(4);
    for (const post of posts) {
      if (post.kind !== 'block') throw new Error('a post is a block');
      expect(post.height).toBe(0.9);
      const [a = [0, 0], b = [0, 0]] = post.outline;
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(0.2, 9);
    }
  });

  test('round a corner one post stands at the corner; a ring has none twice', () => {
    const hand = inHand('posts');
    hand.click([0, 0]);
    hand.type('3', 'right');
    hand.type('3', 'up');
    hand.tools.enter();
    expect(middles(hand)).toEqual([
      [0, 0],
      [1.5, 0],
      [3, 0],
      [3, 1.5],
      [3, 3],
    ]);
    expect(hand.state().strip?.fields.map(({ key }) => key)).toEqual(['spacing', 'height', 'thickness']);

    const ring = inHand('posts');
    ring.click([0, 0]);
    ring.type('3', 'right');
    ring.type('3', 'up');
    ring.type('3', 'left');
    ring.click([0, 0]);
    expect(middles(ring)).toHaveLength(8);
    expect(new Set(middles(ring).map(String)).size).toBe(8);
  });

  test('no count but from 1 to 200 is taken', () => {
    const hand = row();
    expect(hand.type('0', 'tab', 'count')).toContain('from 1 to 200');
    expect(hand.type('201', 'tab', 'count')).toContain('from 1 to 200');
    expect(middles(hand)).toHaveLength(5);
  });
});
