import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Opening } from '../../../src/model/structure.ts';
import { addStructure } from '../../../src/plan/commands/addStructure.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { inHand, nothing, rectangle } from './drawn.ts';
import { pointing } from './pointing.ts';

function site(): Plan {
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
  if (!house.ok) throw new Error('the house was refused');
  const fence = addStructure(house.value.plan, {
    kind: 'barrier',
    sort: 'fence',
    line: [
      [-5, -6],
      [15, -6],
    ],
    closed: false,
    base: 0,
    height: 1.8,
    thickness: 0.05,
    passage: 'solid',
    openings: [],
    got: { line: 'measured', height: 'measured', thickness: 'measured' },
  });
  if (!fence.ok) throw new Error('the fence was refused');
  return fence.value.plan;
}

type Hand = ReturnType<typeof inHand>;

const openings = (hand: Hand, name: string): readonly Opening[] => {
  const found = hand.structure(name);
  if (!found || !('openings' in found)) throw new Error(`no openings in ${name}`);
  return found.openings;
};

describe('the opening tool', () => {
  test('says where it would go, from both ends, and what it snapped to', () => {
    const hand = inHand('opening', site());
    expect(hand.text()).toBe('Point at a wall, a fence or a hedge.');
    hand.hover([5.05, 0.02]);
    expect(hand.text()).toBe('Door · 4.55 from the west corner · 4.55 from the east corner · middle');
    expect(hand.state().ghost).toMatchObject({ kind: 'sketch' });
    hand.hover([0, -5.9]);
    expect(hand.text()).toBe('Gate · 4.50 from the west end · 14.50 from the east end');
    expect(hand.now().undoName).toBeNull();
  });

  test('a press puts a door, and the strip asks; each number is a step', () => {
    const hand = inHand('opening', site());
    hand.click([5.05, 0.02]);
    expect(openings(hand, 'House')).toMatchObject([
      { kind: 'door', face: 0, along: 4.55, width: 0.9, sill: 0 },
    ]);
    expect(hand.now()).toMatchObject({ tool: 'rest', selected: { kind: 'opening' }, undoName: 'Add Door' });
    expect(hand.state().strip?.fields.map(({ label }) => label)).toEqual([
      'From the west corner',
      'Width',
      'Height',
      'Sill',
    ]);
    expect(hand.type('2', 'tab')).toBeNull();
    expect(hand.type('1', 'enter', 'width')).toBeNull();
    expect(openings(hand, 'House')[0]).toMatchObject({ along: 2, width: 1, got: 'measured' });
    expect(hand.state().strip).toBeNull();
    for (let k = 0; k < 3; k += 1) hand.editor.undo();
    expect(hand.now().plan).toEqual(site());
  });

  test('the key again takes window and archway on a wall, archway on a line', () => {
    const hand = inHand('opening', site());
    const at = [5, 0] as const;
    hand.tools.again();
    hand.hover(at);
    expect(hand.text()).toMatch(/^Window/);
    hand.hover([5, -6]);
    expect(hand.text()).toMatch(/^Archway/);
    hand.tools.again();
    hand.hover(at);
    expect(hand.text()).toMatch(/^Archway/);
    hand.tools.again();
    hand.hover(at);
    expect(hand.text()).toMatch(/^Door/);
    hand.tools.choose('kind', 'window');
    hand.hover(at);
    expect(hand.text()).toMatch(/^Window/);
  });

  test('a gate reaches as high as its fence', () => {
    const hand = inHand('opening', site());
    hand.click([5, -6]);
    expect(openings(hand, 'Fence')).toMatchObject([{ kind: 'gate', height: 1.8, sill: 0, leaf: 'closed' }]);
  });

  test('in a turned view it is the wall that is struck', () => {
    const hand = inHand('opening', site());
    const viewer: Vec3 = [30, 4, 12];
    hand.tools.click(pointing(site(), [10, 3, 1.5], {}, viewer));
    expect(openings(hand, 'House')).toMatchObject([{ face: 1 }]);
    expect(openings(hand, 'House')[0]?.along).toBeCloseTo(2.55, 9);
  });

  test('between an opening and a corner it snaps to equal gaps', () => {
    const hand = inHand('opening', site());
    hand.click([2, 0]);
    hand.editor.hold('opening');
    // The door reaches from 1.55 to 2.45; the middle of what is left to the corner is 6.225.
    hand.hover([6.3, 0]);
    expect(hand.text()).toContain('equal gaps');
    hand.hover([2.02, 0]);
    expect(JSON.stringify(hand.state().ghost)).toContain('in line with Door');
    hand.click([6.3, 0]);
    expect(openings(hand, 'House')[1]?.along).toBeCloseTo(6.225 - 0.45, 3);
  });

  test('stays 50 mm inside its wall, in steps of 50 mm', () => {
    const hand = inHand('opening', site());
    hand.click([0.1, 0]);
    expect(openings(hand, 'House')[0]?.along).toBe(0.05);
    hand.editor.hold('opening');
    hand.click([7.33, 0]);
    expect(openings(hand, 'House')[1]?.along).toBeCloseTo(6.9, 9);
  });

  test('one wider than what is left is refused in words, and the former width is kept', () => {
    const hand = inHand('opening', site());
    hand.click([9, -6]);
    expect(hand.type('18.9', 'tab')).toBeNull();
    expect(hand.type('1.2', 'enter', 'width')).toBe(
      'The gate is wider than the 1.10 m left on Fence. Narrow it, or move it.',
    );
    expect(openings(hand, 'Fence')[0]).toMatchObject({ along: 18.9, width: 1 });
  });

  test('on another opening it is not put, and the ghost is wrong', () => {
    const hand = inHand('opening', site());
    hand.click([5, 0]);
    hand.editor.hold('opening');
    hand.click([5.2, 0]);
    expect(openings(hand, 'House')).toHaveLength(1);
    expect(hand.state()).toMatchObject({ name: 'opening seeking', cursor: 'not-allowed' });
    expect(hand.state().strip?.trouble).toBe(true);
  });

  test('over open ground there is nothing to cut into', () => {
    const hand = inHand('opening', site());
    hand.hover([5, -0.27]);
    expect(hand.text()).toMatch(/^Door/);
    hand.hover([5, -0.29]);
    expect(hand.state().ghost).toBeNull();
    hand.click([30, 30]);
    expect(hand.text()).toMatch(/^Nothing to cut into here/);
    expect(hand.now().plan).toEqual(site());
  });
});
