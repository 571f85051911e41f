import { describe, expect, test } from 'vitest';
import { distance } from '../../../src/base/vector.ts';
import { dimensionsOf } from '../../../src/editor/dimensions/dimensionsOf.ts';
import type { Dimension } from '../../../src/editor/dimensions/dimension.ts';
import type { Selected } from '../../../src/editor/editor.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../plans.ts';
import { house, site, window } from '../site.ts';

const thing = (id: string): Selected => ({ kind: 'structure', id });

function named(plan: Plan, of: Selected, key: string, swapped = false): Dimension {
  const found = dimensionsOf(plan, of, swapped).find((one) => one.key === key);
  if (!found) throw new Error(`no ${key}`);
  return found;
}

function after(plan: Plan, dimension: Dimension, value: number): Plan {
  const tried = dimension.set(plan, value);
  if (!tried.ok) throw new Error(tried.words);
  return tried.plan;
}

const outline = (plan: Plan) => {
  const found = plan.structures['house'];
  if (found?.kind !== 'building') throw new Error('no house');
  return found.outline;
};

describe('dimensions of a house', () => {
  const ell = house({
    outline: [
      [0, 0],
      [4, 0],
      [4, -2],
      [9, -2],
      [9, 6],
      [0, 6],
    ],
  });

  test('edges are drawn along themselves and say their length', () => {
    const edges = dimensionsOf(site(ell), thing('house')).filter(({ key }) => key.startsWith('edge'));
    expect(edges.map(({ value }) => value)).toEqual([4, 2, 5, 8, 9, 6]);
    for (const { between, value, moves } of edges) {
      expect(between && distance(...between)).toBeCloseTo(value, 9);
      expect(moves).toBe('second');
    }
  });

  test('a square corner takes the next edge along', () => {
    const plan = site(ell);
    // Edge 5 is the north wall, drawn from east to west: its far end takes the west wall along.
    expect(outline(after(plan, named(plan, thing('house'), 'edge 4'), 10))).toEqual([
      [-1, 0],
      [4, 0],
      [4, -2],
      [9, -2],
      [9, 6],
      [-1, 6],
    ]);
  });

  test('swapped, the first end moves and has the dot', () => {
    const plan = site(ell);
    const north = named(plan, thing('house'), 'edge 4', true);
    expect(north.moves).toBe('first');
    expect(outline(after(plan, north, 10))).toEqual([
      [0, 0],
      [4, 0],
      [4, -2],
      [10, -2],
      [10, 6],
      [0, 6],
    ]);
  });

  test('position moves the whole', () => {
    const plan = site(ell);
    expect(outline(after(plan, named(plan, thing('house'), 'north'), -3))[4]).toEqual([9, 3]);
    expect(named(plan, thing('house'), 'east').value).toBe(0);
  });

  test('typed sizes count as taped', () => {
    const plan = site(ell);
    const next = after(plan, named(plan, thing('house'), 'edge 0'), 3).structures['house'];
    expect(next?.kind === 'building' && next.got.outline).toBe('measured');
  });

  test('what cannot be is refused in words, and nothing is kept of it', () => {
    const plan = site(house({ openings: [window('w')] }));
    expect(named(plan, thing('house'), 'height').set(plan, 0)).toMatchObject({
      ok: false,
      words: 'Wall height must be above 0. 2.70 is kept.',
    });
    expect(named(plan, thing('house'), 'height').set(plan, 1.5).ok).toBe(false);
    expect(named(plan, thing('house'), 'height').set(plan, 1.91).ok).toBe(true);
    expect(named(plan, thing('house'), 'edge 0').set(plan, 2).ok).toBe(false);
    expect(named(plan, thing('house'), 'edge 0').set(plan, 2.01).ok).toBe(true);
  });

  test('height and overhang are drawn where they are', () => {
    const roof = { kind: 'gable', pitch: 40, overhang: 0.5, ridge: 90, parapet: 0.3 } as const;
    const plan = site(house({ roof, base: 0.2 }));
    const height = named(plan, thing('house'), 'height').between;
    expect(height?.[0]).toEqual([8, 0, 0.2]);
    expect(height?.[1][2]).toBeCloseTo(2.9, 9);
    const overhang = named(plan, thing('house'), 'roof overhang').between;
    expect(overhang && distance(...overhang)).toBeCloseTo(0.5, 9);
    expect(overhang?.[0][1] === 0 || overhang?.[0][1] === 6).toBe(true);
  });
});

describe('dimensions of an opening', () => {
  const on: Selected = { kind: 'opening', id: 'w', on: 'house' };
  const place = (plan: Plan) => {
    const found = plan.structures['house'];
    return found && 'openings' in found ? found.openings[0] : undefined;
  };

  test('to both ends of its wall, by their winds', () => {
    const plan = site(house({ openings: [window('w')] }));
    const [first, second] = dimensionsOf(plan, on);
    expect([first?.label, first?.value]).toEqual(['From the west corner', 1]);
    expect([second?.label, second?.value]).toEqual(['From the east corner', 6]);
    for (const one of [first, second])
      expect(one?.between && distance(...one.between)).toBeCloseTo(one?.value ?? 0, 9);
    expect(place(after(plan, named(plan, on, 'rest'), 2))?.along).toBe(5);
    expect(place(after(plan, named(plan, on, 'along'), 2))?.along).toBe(2);
  });

  test('on a wall drawn the other way round it is measured from where it was drawn', () => {
    const outlineBack = [...house().outline].reverse();
    const plan = site(house({ outline: outlineBack, openings: [window('w', { face: 2 })] }));
    const [first] = dimensionsOf(plan, on);
    expect([first?.label, first?.value]).toEqual(['From the east corner', 1]);
    expect(first?.between && distance(...first.between)).toBeCloseTo(1, 9);
  });
});

test('every dimension of the sample can be set to what it is, and stays it', () => {
  const plan = demo();
  const all: Selected[] = [
    ...plan.structureOrder.map(thing),
    ...plan.cameraOrder.map((id): Selected => ({ kind: 'camera', id })),
  ];
  const troubles = all.flatMap((of) =>
    dimensionsOf(plan, of).flatMap((dimension) => {
      const about = `${'id' in of ? of.id : ''} ${dimension.key}`;
      const tried = dimension.set(plan, dimension.value);
      if (!tried.ok) return [`${about}: ${tried.words}`];
      const again = dimensionsOf(tried.plan, of).find(({ key }) => key === dimension.key);
      return Math.abs((again?.value ?? Infinity) - dimension.value) < 1e-9 ? [] : [`${about} differs`];
    }),
  );
  expect(troubles).toEqual([]);
  expect(all.flatMap((of) => dimensionsOf(plan, of)).length).toBeGreaterThan(50);
});

test('every length that is drawn is as long as it says', () => {
  const plan = demo();
  const drawn = plan.structureOrder.flatMap((id) =>
    dimensionsOf(plan, thing(id)).flatMap(({ key, between, value, measure }) =>
      between && measure === 'length' && !['base', 'east', 'north'].includes(key)
        ? [{ about: `${id} ${key}`, off: distance(...between) - value }]
        : [],
    ),
  );
  expect(drawn.length).toBeGreaterThan(20);
  expect(drawn.filter(({ off }) => Math.abs(off) > 1e-6)).toEqual([]);
});
