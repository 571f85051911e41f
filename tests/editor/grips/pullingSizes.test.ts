import { describe, expect, test } from 'vitest';
import type { Selected } from '../../../src/editor/editor.ts';
import type { Grip } from '../../../src/editor/grips/grip.ts';
import { holding } from './holding.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Building, Structure } from '../../../src/model/structure.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { garage, house, site, window } from '../site.ts';

const plain = (part: 'height' | 'ridge' | 'overhang' | 'base', structure = 'house'): Grip => ({
  part,
  structure,
});

describe('heights', () => {
  test('the wall’s top goes up with the pointer and down as far as the window needs', () => {
    const { tools, building, pull, now, state } = holding(site(house({ openings: [window('w')] })));
    pull(plain('height'), [[8, 0, 3.25]]);
    tools.release();
    expect(building().height).toBeCloseTo(3.25, 3);
    expect(now().undoName).toBe('Wall height of House');
    pull(plain('height'), [[8, 0, 0.3]]);
    // Sill 0.90 and height 1.00, with a centimetre of wall above.
    expect(building().height).toBeCloseTo(1.91, 9);
    expect(state().strip?.text).toContain('Stops here');
    tools.release();
  });

  test('it is drawn to the height of another thing', () => {
    const { tools, building, pull, state } = holding(site(house(), garage()));
    pull(plain('height'), [[8, 0, 2.42]], { free: false });
    expect(state().strip?.text).toContain('height of Garage');
    tools.release();
    expect(building().height).toBeCloseTo(2.4, 9);
  });

  test('a ridge pulled up stands where it was pulled to', () => {
    const roof = { kind: 'gable', pitch: 30, overhang: 0.4, ridge: 90, parapet: 0.3 } as const;
    const { tools, building, pull } = holding(site(house({ roof })));
    pull(plain('ridge'), [[4, 3, 6.2]]);
    tools.release();
    const zs = solidsOf(building()).solids.flatMap(({ positions }) =>
      [...positions].filter((_, k) => k % 3 === 2),
    );
    expect(Math.max(...zs)).toBeCloseTo(6.2, 3);
    // Its eaves have stayed: 2.70 up and 0.40 out.
    expect(building().height).toBe(2.7);
    expect(building().roof.overhang).toBe(0.4);
  });

  test('an overhang grows outwards', () => {
    const roof = { kind: 'hip', pitch: 30, overhang: 0.4, ridge: null, parapet: 0.3 } as const;
    const { tools, building, pull, placeOf } = holding(site(house({ roof })));
    const [x, y, z] = placeOf(plain('overhang'));
    const out = y < 0 ? -1 : 1;
    pull(plain('overhang'), [[x, y + out * 0.2, z]]);
    tools.release();
    expect(building().roof.overhang).toBeCloseTo(0.6, 3);
  });

  test('straight from above a height is not dragged, and the strip says so', () => {
    const { pull, state, building } = holding(site(house()));
    pull(plain('height'), [[8, 0.001, 3]], {}, [8, 0, 60]);
    expect(state().strip?.text).toContain('edge-on');
    expect(building().height).toBe(2.7);
  });
});

describe('a tree, a canopy, spot heights', () => {
  const tree: Structure = {
    kind: 'tree',
    id: 'tree',
    name: 'Tree',
    hidden: false,
    locked: false,
    at: [3, -5],
    base: 0,
    height: 6,
    crownRadius: 2,
    clear: 2,
    trunkDiameter: 0.3,
    inLeaf: true,
    got: { at: 'guessed', height: 'measured', crown: 'guessed' },
  };

  test('crown and clear height', () => {
    const { tools, structure, pull } = holding(site(tree), { kind: 'structure', id: 'tree' });
    pull({ part: 'crown', structure: 'tree' }, [[5.5, -5, 4]]);
    tools.release();
    pull({ part: 'clear', structure: 'tree' }, [[3, -5, 2.4]]);
    tools.release();
    const after = structure('tree');
    expect(after.kind === 'tree' && after.crownRadius).toBeCloseTo(2.5, 3);
    expect(after.kind === 'tree' && after.clear).toBeCloseTo(2.4, 3);
    expect(after.got).toEqual(tree.got);
  });

  test('a canopy by its top', () => {
    const canopy: Structure = {
      kind: 'canopy',
      id: 'porch',
      name: 'Porch',
      hidden: false,
      locked: false,
      outline: [
        [9, -3],
        [11, -3],
        [11, -1],
        [9, -1],
      ],
      top: 2.5,
      thickness: 0.15,
      posts: 2,
      got: { outline: 'guessed', top: 'guessed', thickness: 'guessed' },
    };
    const { tools, structure, pull } = holding(site(canopy), { kind: 'structure', id: 'porch' });
    pull({ part: 'top', structure: 'porch' }, [[11, -3, 2.8]]);
    tools.release();
    const after = structure('porch');
    expect(after.kind === 'canopy' && after.top).toBeCloseTo(2.8, 3);
  });

  test('a spot height goes up and down', () => {
    const spots = [
      { at: [0, -5], height: 0, got: 'guessed' },
      { at: [9, -5], height: 0, got: 'guessed' },
      { at: [0, -9], height: 0, got: 'guessed' },
    ] as const;
    const plan: Plan = { ...site(), ground: { kind: 'spots', spots } };
    const { tools, now, pull } = holding(plan, { kind: 'ground' });
    pull({ part: 'spot', index: 1 }, [[9, -5, 0.35]]);
    tools.release();
    const { ground } = now().plan;
    expect(ground.kind === 'spots' && ground.spots.map(({ height }) => Math.round(height * 1000))).toEqual([
      0, 350, 0,
    ]);
  });
});

describe('an opening', () => {
  const on: Selected = { kind: 'opening', id: 'w', on: 'house' };
  const side = (name: 'body' | 'left' | 'right' | 'head' | 'sill'): Grip => ({
    part: 'opening',
    structure: 'house',
    opening: 'w',
    side: name,
  });
  const cases = [
    { name: 'drawn counter-clockwise', plan: site(house({ openings: [window('w')] })), west: 1, east: 2 },
    {
      name: 'drawn clockwise',
      plan: site(house({ outline: [...house().outline].reverse(), openings: [window('w', { face: 2 })] })),
      west: 6,
      east: 7,
    },
  ];

  /** From where to where it stands on the south wall, by the first corner of its edge as drawn. */
  const reach = ({ outline, openings }: Building): [number, number] => {
    const [opening] = openings;
    const a = opening && outline[opening.face];
    const b = opening && outline[(opening.face + 1) % outline.length];
    if (!opening || !a || !b) throw new Error('no window');
    const way = Math.sign(b[0] - a[0]);
    const ends = [a[0] + way * opening.along, a[0] + way * (opening.along + opening.width)];
    return [Math.min(...ends), Math.max(...ends)];
  };

  for (const { name, plan, west, east } of cases) {
    test(`${name}: a side moves alone`, () => {
      const { tools, building, pull } = holding(plan, on);
      pull(side('right'), [[east + 0.5, 0, 1.4]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west, 6);
      expect(reach(building())[1]).toBeCloseTo(east + 0.5, 3);
      pull(side('left'), [[west - 0.25, 0, 1.4]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west - 0.25, 3);
      expect(reach(building())[1]).toBeCloseTo(east + 0.5, 3);
    });

    test(`${name}: the body slides as it is`, () => {
      const { tools, building, pull } = holding(plan, on);
      pull(side('body'), [[(west + east) / 2 - 0.3, 0, 1.5]]);
      tools.release();
      expect(reach(building())[0]).toBeCloseTo(west - 0.3, 3);
      expect(reach(building())[1]).toBeCloseTo(east - 0.3, 3);
      expect(building().openings[0]?.sill).toBeCloseTo(1, 3);
    });
  }

  test('head and sill: the other stays', () => {
    const { tools, building, pull } = holding(site(house({ openings: [window('w')] })), on);
    pull(side('head'), [[1.5, 0, 2.2]]);
    tools.release();
    pull(side('sill'), [[1.5, 0, 0.6]]);
    tools.release();
    const [after] = building().openings;
    expect(after?.sill).toBeCloseTo(0.6, 3);
    expect((after?.sill ?? 0) + (after?.height ?? 0)).toBeCloseTo(2.2, 3);
  });

  test('slid past the end it stops at the last place that fits', () => {
    const { building, pull, state } = holding(site(house({ openings: [window('w')] })), on);
    pull(side('body'), [[9.5, 0, 1.4]]);
    expect(reach(building())[1]).toBeCloseTo(7.99, 6);
    expect(state().strip?.trouble).toBe(true);
  });

  test('it is drawn to the middle of the window beside it', () => {
    const openings = [window('w'), window('v', { along: 5, width: 2, name: 'Bay' })];
    const { building, pull, state } = holding(site(house({ openings })), on);
    pull(side('right'), [[3.02, 0, 1.4]], { free: false });
    expect(building().openings[0]?.width).toBe(2);
    expect(state().strip?.text).toContain('as wide as Bay');
  });
});
