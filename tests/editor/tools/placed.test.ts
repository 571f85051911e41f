import { describe, expect, test } from 'vitest';
import type { Structure } from '../../../src/model/structure.ts';
import { inHand, nothing, rectangle, withBlocks } from './drawn.ts';

type Hand = ReturnType<typeof inHand>;

function found<K extends Structure['kind']>(
  hand: Hand,
  name: string,
  kind: K,
): Extract<Structure, { kind: K }> {
  const isKind = (one: Structure): one is Extract<Structure, { kind: K }> => one.kind === kind;
  const structure = hand.structure(name);
  if (!structure || !isKind(structure)) throw new Error(`no ${kind} ${name}`);
  return structure;
}

describe('the tree tool', () => {
  test('a press puts a tree, and the strip asks height, crown and leaves', () => {
    const hand = inHand('tree');
    hand.click([3, 4]);
    expect(found(hand, 'Tree', 'tree')).toMatchObject({ at: [3, 4], crownRadius: 1.5, inLeaf: true });
    expect(hand.now()).toMatchObject({ tool: 'rest', undoName: 'Add Tree', selected: { kind: 'structure' } });
    expect(hand.state().strip?.fields.map(({ label }) => label)).toEqual(['Height', 'Crown radius']);
    expect(hand.type('7', 'tab')).toBeNull();
    expect(hand.type('2.2', 'enter', 'crownRadius')).toBeNull();
    expect(found(hand, 'Tree', 'tree')).toMatchObject({ height: 7, crownRadius: 2.2 });
  });

  test('a drag on gives the crown; in its drag Esc puts none', () => {
    const hand = inHand('tree');
    hand.drag([3, 4], [5.6, 4]);
    expect(found(hand, 'Tree', 'tree')).toMatchObject({ at: [3, 4], crownRadius: 2.5 });
    hand.tools.choose('leaf', 'bare');
    expect(found(hand, 'Tree', 'tree').inLeaf).toBe(false);
    hand.editor.undo();
    hand.editor.undo();
    expect(hand.now().plan).toEqual(nothing);
  });
});

describe('the vehicle tool', () => {
  test('a press puts its middle, the next turns its front; one step', () => {
    const hand = inHand('vehicle');
    hand.click([3, 4]);
    expect(hand.state().name).toBe('vehicle heading');
    expect(hand.now().undoName).toBeNull();
    hand.click([8, 4]);
    expect(found(hand, 'Car', 'vehicle')).toMatchObject({ at: [3, 4], heading: 90, sort: 'car' });
    expect(hand.now()).toMatchObject({ tool: 'rest', undoName: 'Add Car' });
  });

  test('the key again takes a van; a drag does both', () => {
    const hand = inHand('vehicle');
    hand.tools.again();
    hand.drag([3, 4], [3, -4]);
    expect(found(hand, 'Van', 'vehicle')).toMatchObject({ at: [3, 4], heading: 180, sort: 'van' });
  });

  test('within 10° of an edge near by it is parallel to it', () => {
    const askew = withBlocks({
      Shed: [
        [0, 0],
        [4, 1],
        [3, 5],
        [-1, 4],
      ],
    });
    const edge = (Math.atan2(4, 1) * 180) / Math.PI;
    const turned = (off: number): number => {
      const hand = inHand('vehicle', askew);
      hand.click([2, -4]);
      const way = ((edge + off) * Math.PI) / 180;
      hand.click([2 + 6 * Math.sin(way), -4 + 6 * Math.cos(way)]);
      return found(hand, 'Car', 'vehicle').heading;
    };
    expect(turned(9.5)).toBeCloseTo(edge, 6);
    expect(turned(-9.5)).toBeCloseTo(edge, 6);
    expect(turned(10.5)).toBe(Math.round(edge + 10.5));
  });

  test('its bearing is typed; Esc in the turn takes it back to its place', () => {
    const hand = inHand('vehicle');
    hand.click([3, 4]);
    hand.tools.escape();
    expect(hand.state().name).toBe('vehicle placing');
    hand.click([3, 4]);
    expect(hand.type('-30')).toBeNull();
    expect(found(hand, 'Car', 'vehicle').heading).toBe(330);
  });
});

describe('spot heights', () => {
  test('each is a press and a number, and a step; three are spots of the ground', () => {
    const hand = inHand('spot');
    for (const [at, height] of [
      [[0, 0], '71.8'],
      [[10, 0], '72.2'],
      [[0, 10], '71'],
    ] as const) {
      hand.click(at);
      expect(hand.state().name).toBe('spot height');
      expect(hand.type(height)).toBeNull();
      expect(hand.now().tool).toBe('spot');
    }
    expect(hand.now().plan.ground).toMatchObject({
      kind: 'spots',
      spots: [
        { at: [0, 0], height: 71.8, got: 'measured' },
        { at: [10, 0], height: 72.2 },
        { at: [0, 10], height: 71 },
      ],
    });
    for (let k = 0; k < 3; k += 1) hand.editor.undo();
    expect(hand.now().plan).toEqual(nothing);
  });

  test('no second height at one place, and no spots on a map of heights', () => {
    const hand = inHand('spot');
    hand.click([0, 0]);
    hand.type('1');
    hand.click([0, 0]);
    expect(hand.text()).toMatch(/has its height here already/);
    const grid = {
      kind: 'grid',
      left: 0,
      bottom: 0,
      cell: 1,
      columns: 1,
      rows: 1,
      heights: [1],
      got: 'mapped',
    } as const;
    const other = inHand('spot', { ...nothing, ground: grid });
    other.click([5, 5]);
    expect(other.state().name).toBe('spot placing');
    expect(other.text()).toMatch(/map of heights/);
  });

  test('a height that is no length stays', () => {
    const hand = inHand('spot', withBlocks({ Shed: rectangle(5, 5, 6, 6) }));
    hand.click([0, 0]);
    expect(hand.type('high')).toMatch(/is not a length/);
    expect(hand.type('9999')).toBe('Height must be from -1000 to 1000 m.');
    expect(hand.now().undoName).toBeNull();
  });
});
