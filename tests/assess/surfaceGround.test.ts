import { expect, test } from 'vitest';
import { surfaceGround } from '../../src/assess/ground.ts';
import { INSIDE } from '../../src/coverage/state.ts';
import { solidsOf } from '../../src/model/solids.ts';
import { roofSurfaces, wallSurfaces } from '../../src/model/surface.ts';
import { blockWith, buildingWith, rectangle, turned } from '../model/sampleStructures.ts';

/** A house whose walls lie in no round numbers, also far from the origin. */
test.each([
  [33, 0],
  [71.3, 0],
  [12.7, 80_000],
])('walls and roofs of a house turned by %d° are not inside it, %d m out', (turn, away) => {
  const outline = turned(rectangle(9, 6), turn, [away, -away / 3]);
  const house = buildingWith({
    outline,
    roof: { kind: 'gable', pitch: 37, overhang: 0.4, ridge: null, parapet: 0 },
  });
  const { solids } = solidsOf(house);
  for (const surface of [...wallSurfaces(house), ...roofSurfaces(house, solids)]) {
    const { bare, within } = surfaceGround({ solids, ground: 0 }, surface, 0.2);
    expect(bare.includes(INSIDE), `${surface.name}`).toBe(false);
    expect(within.inside.value, `${surface.name}`).toBeLessThan(1e-6);
  }
});

test('what stands against a wall covers that part of it', () => {
  const house = buildingWith({ id: 'house', outline: turned(rectangle(9, 6), 33) });
  const store = blockWith({
    id: 'store',
    outline: turned(rectangle(2, 1, [3, -1]), 33),
    base: 0,
    height: 1.5,
  });
  const solids = [...solidsOf(house).solids, ...solidsOf(store).solids];
  const inside = wallSurfaces(house).map(
    (surface) => surfaceGround({ solids, ground: 0 }, surface, 0.2).within.inside.value,
  );
  // 2 m along the wall and 1.5 m high, on one wall only.
  expect(Math.max(...inside)).toBeCloseTo(3, 3);
  expect(inside.filter((area) => area > 1e-6)).toHaveLength(1);
});
