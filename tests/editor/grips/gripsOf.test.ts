import { describe, expect, test } from 'vitest';
import type { Selected } from '../../../src/editor/editor.ts';
import { gripsOf } from '../../../src/editor/grips/gripsOf.ts';
import type { PlacedGrip } from '../../../src/editor/grips/placedGrip.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { setSpots } from '../../../src/plan/commands/setSpots.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../plans.ts';
import { garage, house, site, window } from '../site.ts';

const only = (id: string): readonly Selected[] => [{ kind: 'structure', id }];

/** The one handle with these parts. */
function gripOf(plan: Plan, selection: readonly Selected[], parts: object): PlacedGrip {
  const found = gripsOf(plan, selection).filter(({ grip }) =>
    Object.entries(parts).every(([key, value]) => Reflect.get(grip, key) === value),
  );
  const [one] = found;
  if (!one || found.length !== 1) throw new Error(`${found.length} handles of ${JSON.stringify(parts)}`);
  return one;
}

const tree: Structure = {
  kind: 'tree',
  id: 'tree',
  name: 'Tree',
  hidden: false,
  locked: false,
  at: [3, -5],
  base: 0.5,
  height: 6,
  crownRadius: 2,
  clear: 2,
  trunkDiameter: 0.3,
  inLeaf: true,
  got: { at: 'guessed', height: 'guessed', crown: 'guessed' },
};

const van: Structure = {
  kind: 'vehicle',
  id: 'van',
  name: 'Van',
  hidden: false,
  locked: false,
  sort: 'van',
  at: [3, -5],
  heading: 90,
  base: 0,
  length: 5,
  width: 2,
  height: 2.2,
  got: { at: 'guessed', size: 'guessed' },
};

describe('handles of a building', () => {
  test('corners in the order drawn, and edges with their way out', () => {
    const plan = site(house({ base: 0.4 }));
    expect(gripOf(plan, only('house'), { part: 'corner', index: 2 }).at).toEqual([8, 6, 0.4]);
    const north = gripOf(plan, only('house'), { part: 'edge', index: 2 });
    expect(north.at).toEqual([4, 6, 0.4]);
    expect(north.way).toEqual({ along: [0, 1, 0] });
    expect(north.words).toBe('Edge 3 of House');
  });

  test('out is out of an outline that runs clockwise, too', () => {
    const plan = site(house({ outline: [...house().outline].reverse() }));
    // Reversed, the first edge is the north wall.
    expect(gripOf(plan, only('house'), { part: 'edge', index: 0 }).way).toEqual({ along: [0, 1, 0] });
  });

  test('the ridge is held at the highest line of what is built, the overhang at the fascia', () => {
    const roof = { kind: 'gable', pitch: 40, overhang: 0.5, ridge: 90, parapet: 0.3 } as const;
    const plan = site(house({ roof }));
    const [x, y, z] = gripOf(plan, only('house'), { part: 'ridge' }).at;
    // Ridge along x over the middle of 6 m and two overhangs of 0.5: 3.5 m from the soffit's edge.
    expect([x, y]).toEqual([4, 3]);
    expect(z).toBeCloseTo(2.7 + 3.5 * Math.tan((40 * Math.PI) / 180), 9);
    const fascia = gripOf(plan, only('house'), { part: 'overhang' });
    expect([-0.5, 6.5]).toContain(fascia.at[1]);
    expect(fascia.at[2]).toBe(2.7);
  });

  test('a flat roof has no ridge, a parapet no overhang', () => {
    const parts = (plan: Plan) => gripsOf(plan, only('house')).map(({ grip }) => grip.part);
    expect(parts(site(house()))).not.toContain('ridge');
    expect(parts(site(house()))).toContain('overhang');
    const parapet = { kind: 'parapet', pitch: 0, overhang: 0, ridge: null, parapet: 0.3 } as const;
    expect(parts(site(house({ roof: parapet })))).not.toContain('overhang');
  });

  test('a locked one has locked handles', () => {
    const plan = site(house({ locked: true }));
    expect(gripsOf(plan, only('house')).every(({ locked }) => locked)).toBe(true);
    expect(gripsOf(site(house()), only('house')).some(({ locked }) => locked)).toBe(false);
  });
});

describe('handles of other things', () => {
  test('a tree: height, crown, clear height', () => {
    const plan = site(tree);
    expect(gripOf(plan, only('tree'), { part: 'height' }).at).toEqual([3, -5, 6.5]);
    expect(gripOf(plan, only('tree'), { part: 'crown' }).at).toEqual([5, -5, 4.5]);
    expect(gripOf(plan, only('tree'), { part: 'clear' }).at).toEqual([3, -5, 2.5]);
  });

  test('a vehicle is turned by a handle before its front', () => {
    const { at, way } = gripOf(site(van), only('van'), { part: 'heading' });
    expect(way).toBe('turn');
    expect(at[0]).toBeGreaterThan(5.5);
    expect(at[1]).toBeCloseTo(-5, 9);
  });

  test('an opening: sides named as seen from outside, a sill only of a window', () => {
    const plan = site(house({ openings: [window('w'), window('d', { kind: 'door', along: 4, sill: 0 })] }));
    const of = (id: string): readonly Selected[] => [{ kind: 'opening', id, on: 'house' }];
    // The south wall seen from the south: west is left.
    expect(gripOf(plan, of('w'), { side: 'left' }).at).toEqual([1, 0, 1.4]);
    expect(gripOf(plan, of('w'), { side: 'right' }).at).toEqual([2, 0, 1.4]);
    expect(gripOf(plan, of('w'), { side: 'head' }).at).toEqual([1.5, 0, 1.9]);
    expect(gripOf(plan, of('w'), { side: 'sill' }).at).toEqual([1.5, 0, 0.9]);
    const sides = gripsOf(plan, of('d')).map(({ grip }) => (grip.part === 'opening' ? grip.side : null));
    expect(sides).toEqual(['body', 'left', 'right', 'head']);
  });

  test('an opening in an outline drawn clockwise is held where it is built', () => {
    const outline = [...house().outline].reverse();
    // Reversed, edge 2 runs from (8, 0) to (0, 0): one metre on is x = 7, and right seen from outside is east.
    const plan = site(house({ outline, openings: [window('w', { face: 2 })] }));
    const on: readonly Selected[] = [{ kind: 'opening', id: 'w', on: 'house' }];
    expect(gripOf(plan, on, { side: 'right' }).at[0]).toBeCloseTo(7, 9);
    expect(gripOf(plan, on, { side: 'left' }).at[0]).toBeCloseTo(6, 9);
    const built = plan.structures['house'];
    const xs = built ? solidsOf(built).solids.flatMap(({ positions }) => [...positions]) : [];
    expect(xs.some((value) => Math.abs(value - 7) < 1e-9)).toBe(true);
  });

  test('the boundary and spot heights', () => {
    const ring = [
      [-5, -5],
      [20, -5],
      [20, 12],
    ] as const;
    const plan = { ...site(house()), boundary: ring };
    const corners = gripsOf(plan, [{ kind: 'boundary' }]).filter(({ grip }) => grip.part === 'boundary');
    expect(corners.map(({ at }) => at)).toEqual(ring.map(([x, y]) => [x, y, 0]));
    const spots = [
      { at: [0, 0], height: 0.2, got: 'measured' },
      { at: [9, 0], height: 0.4, got: 'measured' },
      { at: [0, 9], height: -0.1, got: 'measured' },
    ] as const;
    const set = setSpots(plan, spots);
    if (!set.ok) throw new Error('spots');
    expect(gripOf(set.value, [{ kind: 'ground' }], { part: 'spot', index: 1 }).at).toEqual([9, 0, 0.4]);
  });

  test('several have one body and one turn', () => {
    const plan = site(house(), garage());
    const grips = gripsOf(plan, [...only('house'), ...only('garage')]);
    expect(grips.map(({ grip }) => grip.part)).toEqual(['body', 'turn']);
    expect(grips[0]?.at.slice(0, 2)).toEqual([8, 3]);
    expect(gripsOf(plan, [])).toEqual([]);
  });
});

test('every structure of the sample has handles, each of one kind once', () => {
  const plan = demo();
  const all = plan.structureOrder.map((id) => gripsOf(plan, only(id)));
  expect(all.filter((grips) => grips.length === 0)).toEqual([]);
  const keys = all
    .flatMap((grips) => grips.map(({ grip }) => JSON.stringify(grip)))
    .filter((key) => key !== TURN);
  expect(new Set(keys).size).toBe(keys.length);
  expect(all.flat().every(({ at }) => at.every(Number.isFinite))).toBe(true);
});

/** Each selection has one of these. */
const TURN = JSON.stringify({ part: 'turn' });
