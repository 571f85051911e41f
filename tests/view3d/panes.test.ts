import { describe, expect, test } from 'vitest';
import type { Structure } from '../../src/model/structure.ts';
import { pick, pickable } from '../../src/view3d/picking.ts';
import { solidsOf } from '../../src/model/solids.ts';
import { panesOf } from '../../src/view3d/solids/panes.ts';
import { demo } from '../editor/plans.ts';

const house = (): Extract<Structure, { kind: 'building' }> => {
  const structure = demo().structures['house'];
  if (structure?.kind !== 'building') throw new Error('the sample has a house');
  return structure;
};

describe('leaves and panes of a block', () => {
  test('stand a hair before the back of their recess', () => {
    const { solids } = solidsOf(house());
    const { faces } = panesOf(house());
    expect(faces.length).toBe(house().openings.length);
    for (const face of faces) {
      const p = face.positions;
      const middle = [0, 1, 2].map((axis) => ((p[axis] ?? 0) + (p[6 + axis] ?? 0)) / 2);
      // Along the foot of the pane, turned outwards.
      const normal = [(p[4] ?? 0) - (p[1] ?? 0), (p[0] ?? 0) - (p[3] ?? 0)];
      const size = Math.hypot(...normal);
      const along = [-(normal[0] ?? 0) / size, -(normal[1] ?? 0) / size, 0] as const;
      const from = [
        (middle[0] ?? 0) - along[0] * 0.05,
        (middle[1] ?? 0) - along[1] * 0.05,
        middle[2] ?? 0,
      ] as const;
      const hit = pick(pickable(solids), { from, along });
      expect(hit?.distance).toBeGreaterThan(0.05);
      expect(hit?.distance).toBeLessThan(0.06);
    }
  });

  test('a hollow building has real ones, and an archway none', () => {
    expect(panesOf({ ...house(), wallThickness: 0.3 })).toEqual({ faces: [], bars: [] });
    const open = house().openings.map((opening) => ({ ...opening, kind: 'archway' as const }));
    expect(panesOf({ ...house(), openings: open }).faces).toEqual([]);
  });
});
