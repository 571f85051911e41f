import { expect } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** A picture of 500 px is shown 30 m wide, its upper left corner at the origin, until it has a scale. */
export const onPicture = ([u, v]: Vec2): Vec2 => [(u * 30) / 500, (-v * 30) / 500];

const cornersOf = (plan: Plan, name: string): readonly Vec2[] => {
  const found = Object.values(plan.structures).find((structure) => structure.name === name);
  if (!found)
    throw new Error(
      `no ${name}: ${Object.values(plan.structures)
        .map((one) => one.name)
        .join(', ')}`,
    );
  if (found.kind === 'barrier') return found.line;
  if ('outline' in found) return found.outline;
  throw new Error(`${name} has no outline`);
};

function expectCorners(plan: Plan, name: string, table: readonly Vec2[]): void {
  const corners = cornersOf(plan, name);
  expect(corners, `corners of ${name}`).toHaveLength(table.length);
  for (const [x, y] of table) {
    const off = Math.min(...corners.map(([a, b]) => Math.hypot(a - x, b - y)));
    expect(off, `${name}: corner ${x}, ${y}`).toBeLessThan(0.01);
  }
}

const box = (x0: number, y0: number, x1: number, y1: number): readonly Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

/** The table's plan, corner by corner within 10 mm. */
export function expectTheHouse(plan: Plan): void {
  expectCorners(plan, 'House', [
    [0, 0],
    [4.2, 0],
    [4.2, -1.6],
    [9, -1.6],
    [9, 0],
    [12, 0],
    [12, 7.2],
    [0, 7.2],
  ]);
  const kinds = Object.values(plan.structures).map(({ kind }) => kind);
  expect(kinds.toSorted()).toEqual([
    'barrier',
    'barrier',
    'building',
    'building',
    'building',
    'building',
    'canopy',
  ]);
  const buildings = Object.values(plan.structures).filter(({ kind }) => kind === 'building');
  const tables = [box(13, -0.5, 16.2, 5.5), box(-15, -1, -8, 8), box(22, -1, 30, 7)];
  const heights = [2.4, 5, 5.4];
  tables.forEach((table, index) => {
    const found = buildings.find(
      (one) =>
        one.kind === 'building' &&
        table.every(([x, y]) => one.outline.some(([a, b]) => Math.hypot(a - x, b - y) < 0.01)),
    );
    expect(found, `the building at ${table.join(' ')}`).toMatchObject({ height: heights[index] });
  });
  const [house] = buildings;
  expect(house).toMatchObject({ height: 2.7, roof: { kind: 'hip', pitch: 35, overhang: 0.45 } });
  expect((plan.boundary ?? []).length).toBe(4);
  for (const [x, y] of box(-6, -8, 20, 12))
    expect(Math.min(...(plan.boundary ?? []).map(([a, b]) => Math.hypot(a - x, b - y)))).toBeLessThan(0.01);
  const canopy = Object.values(plan.structures).find(({ kind }) => kind === 'canopy');
  expect(canopy).toMatchObject({ top: 2.5 });
  expectCorners(plan, canopy?.name ?? '', box(9, -1.4, 11.4, 0));
  const hedge = Object.values(plan.structures).find((one) => one.kind === 'barrier' && one.sort === 'hedge');
  expect(hedge).toMatchObject({ height: 1.6 });
  expectCorners(plan, hedge?.name ?? '', [
    [-6, -8],
    [13, -8],
  ]);
  const [gate] = hedge?.kind === 'barrier' ? hedge.openings : [];
  expect(gate).toMatchObject({ along: 11, width: 1.2 });
  const fence = Object.values(plan.structures).find((one) => one.kind === 'barrier' && one.sort === 'fence');
  expect(fence).toMatchObject({ height: 1.8 });
  expectCorners(plan, fence?.name ?? '', box(-6, -8, 20, 12));
}
