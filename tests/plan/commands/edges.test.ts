import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { bowEdge } from '../../../src/plan/commands/bowEdge.ts';
import { setEdgeLength } from '../../../src/plan/commands/setEdgeLength.ts';
import { slideEdge } from '../../../src/plan/commands/slideEdge.ts';
import { splitEdge } from '../../../src/plan/commands/splitEdge.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { buildingWith, rectangle } from '../../model/sampleStructures.ts';
import { randomPlan } from '../randomPlan.ts';
import { wholePlan } from '../wholePlan.ts';
import { codesOf, cornersAt, edgesOf, openingAt, planWith, valueOf } from './outlines.ts';

const seeds = Array.from({ length: trials(200, 3000) }, (_, index) => 52_000 + index);

describe('slideEdge', () => {
  test('moves a wall outwards whichever way the ring was drawn', () => {
    expect(cornersAt(valueOf(slideEdge(wholePlan(), 'house', 1, 2)), 'house')).toEqual([
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ]);
    const clockwise = planWith(buildingWith({ outline: rectangle(8, 6).toReversed() }));
    // Edge 0 is the north one, from (0, 6) to (8, 6).
    expect(cornersAt(valueOf(slideEdge(clockwise, 'house', 0, 1)), 'house').slice(0, 2)).toEqual([
      [0, 7],
      [8, 7],
    ]);
  });

  test('neighbours keep their headings', () => {
    const outline: Vec2[] = [
      [0, 0],
      [8, 0],
      [6, 4],
      [2, 4],
    ];
    const next = cornersAt(valueOf(slideEdge(planWith(buildingWith({ outline })), 'house', 2, 1)), 'house');
    expect(next[2]?.[0]).toBeCloseTo(5.5, 12);
    expect(next[2]?.[1]).toBeCloseTo(5, 12);
    expect(next[3]?.[0]).toBeCloseTo(2.5, 12);
  });

  test('a neighbour in line gets a step, and what is on the walls stays on them', () => {
    const split = valueOf(splitEdge(wholePlan(), 'house', 0, 0.5));
    const next = valueOf(slideEdge(split, 'house', 1, 1.5));
    expect(cornersAt(next, 'house')).toEqual([
      [0, 0],
      [4, 0],
      [4, -1.5],
      [8, -1.5],
      [8, 6],
      [0, 6],
    ]);
    expect(openingAt(next)).toMatchObject({ face: 0, along: 2 });
    expect(next.structures['house']).toMatchObject({ services: [{ face: 2, along: 2 }] });
    expect(next.cameras['C1']?.mount).toMatchObject({ face: 2, corner: 'end', distance: 2 });
  });

  test('stops before an edge is gone', () => {
    expect(codesOf(slideEdge(wholePlan(), 'house', 1, -8))).toEqual(['edit.edgeGone']);
    expect(codesOf(slideEdge(wholePlan(), 'house', 1, Number.NaN))).not.toEqual([]);
  });
});

describe('setEdgeLength', () => {
  const l: Vec2[] = [
    [0, 0],
    [6, 0],
    [6, 3],
    [2, 3],
    [2, 7],
    [0, 7],
  ];

  test('at a square corner the next edge slides along', () => {
    const next = cornersAt(
      valueOf(setEdgeLength(planWith(buildingWith({ outline: l })), 'house', 0, 7.5)),
      'house',
    );
    expect(next).toEqual([
      [0, 0],
      [7.5, 0],
      [7.5, 3],
      [2, 3],
      [2, 7],
      [0, 7],
    ]);
  });

  test('at an inner corner too, and from either end', () => {
    const plan = planWith(buildingWith({ outline: l }));
    expect(cornersAt(valueOf(setEdgeLength(plan, 'house', 2, 5)), 'house')).toEqual([
      [0, 0],
      [6, 0],
      [6, 3],
      [1, 3],
      [1, 7],
      [0, 7],
    ]);
    expect(cornersAt(valueOf(setEdgeLength(plan, 'house', 2, 5, false)), 'house')).toEqual([
      [0, 0],
      [7, 0],
      [7, 3],
      [2, 3],
      [2, 7],
      [0, 7],
    ]);
  });

  test('elsewhere the corner moves alone', () => {
    const outline: Vec2[] = [
      [0, 0],
      [8, 0],
      [4, 5],
    ];
    const plan = planWith(buildingWith({ outline }));
    expect(cornersAt(valueOf(setEdgeLength(plan, 'house', 0, 10)), 'house')).toEqual([
      [0, 0],
      [10, 0],
      [4, 5],
    ]);
  });

  test('the edge is as long as was said, whatever the outline', () => {
    for (const seed of seeds.slice(0, 120)) {
      const chance = chanceFrom(seed);
      const plan = randomPlan(chance);
      const [structure] = Object.values(plan.structures);
      if (!structure || edgesOf(structure) === 0) continue;
      const edge = chance.whole(0, edgesOf(structure) - 1);
      const wanted = chance.between(0.5, 12);
      const next = setEdgeLength(plan, structure.id, edge, wanted, chance.next() < 0.5);
      if (!next.ok) continue;
      const corners = cornersAt(next.value, structure.id);
      const was = cornersAt(plan, structure.id);
      // A ring that turned over, or got a step, counts its edges anew; then some edge is as long.
      const lengths = corners.map((a, k) => {
        const b = corners[(k + 1) % corners.length] ?? a;
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
      });
      const near = corners.length === was.length ? [lengths[edge] ?? 0, ...lengths] : lengths;
      expect(Math.min(...near.map((length) => Math.abs(length - wanted)))).toBeLessThan(1e-9 * 1e4);
    }
  });

  test('an open line grows at its end', () => {
    const next = valueOf(setEdgeLength(wholePlan(), 'hedge', 0, 15));
    expect(cornersAt(next, 'hedge')).toEqual([
      [-2, -6],
      [13, -6],
    ]);
    expect(codesOf(setEdgeLength(wholePlan(), 'hedge', 0, 0))).toEqual(['edit.edgeGone']);
  });
});

describe('bowEdge', () => {
  test('puts plain corners on the arc, within 5 mm of it', () => {
    const plan = planWith(buildingWith({ outline: rectangle(8, 6) }));
    const corners = cornersAt(valueOf(bowEdge(plan, 'house', 0, 2)), 'house');
    // Through (0, 0), (4, −2), (8, 0): middle (4, 3), radius 5.
    const arc = corners.filter(([, y]) => y < 1e-9);
    expect(arc.length).toBeGreaterThan(8);
    for (const [x, y] of arc) expect(Math.hypot(x - 4, y - 3)).toBeCloseTo(5, 9);
    arc.slice(1).forEach(([x, y], k) => {
      const [u = 0, v = 0] = arc[k] ?? [];
      expect(5 - Math.hypot((x + u) / 2 - 4, (y + v) / 2 - 3)).toBeLessThan(0.005);
    });
    expect(codesOf(bowEdge(plan, 'house', 0, 4.1))).toEqual(['edit.bow']);
  });
});
