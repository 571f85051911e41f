import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/base/vector.ts';
import { validFootprint } from '../../../src/model/footprint.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import { SHAPES } from '../../../src/model/shapes/shapes.ts';
import type { Shape, ShapeParts } from '../../../src/model/shapes/shape.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { addStructures } from '../../../src/plan/commands/addStructures.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { meshFaults } from '../meshChecks.ts';

/** Sizes anywhere within their bounds, and at them as often as not. */
const anySizes = (shape: Shape, chance: Chance): Record<string, number> =>
  Object.fromEntries(
    shape.sizes.map(({ key, least, most, unit }) => {
      const value = chance.pick([least, most, chance.between(least, most), chance.between(least, most)]);
      return [key, unit === 'count' ? Math.round(value) : value];
    }),
  );

/** What stands on the ground, as a box: all of it lies along x and y. */
const groundOf = (structure: Structure): readonly Vec2[] => {
  switch (structure.kind) {
    case 'building':
    case 'block':
    case 'canopy':
      return structure.outline;
    case 'vehicle': {
      const [x, y] = structure.at;
      const [w, l] = [structure.width / 2, structure.length / 2];
      return [
        [x - w, y - l],
        [x + w, y + l],
      ];
    }
    case 'tree':
      return [structure.at];
    case 'barrier':
      return structure.line;
  }
};

interface Box {
  readonly name: string;
  readonly low: Vec2;
  readonly high: Vec2;
}

const boxOf = (structure: Structure): Box => {
  const points = groundOf(structure);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return {
    name: structure.name,
    low: [Math.min(...xs), Math.min(...ys)],
    high: [Math.max(...xs), Math.max(...ys)],
  };
};

const overlap = (a: Box, b: Box): boolean =>
  [0, 1].every(
    (k) => Math.min(a.high[k] ?? 0, b.high[k] ?? 0) - Math.max(a.low[k] ?? 0, b.low[k] ?? 0) > 1e-9,
  );

/** What is wrong with a shape that was made; empty when nothing is. */
const wrongWith = ({ structures, boundary }: ShapeParts): string[] => {
  const wrong: string[] = [];
  const outer = validFootprint(boundary, [], 'Boundary');
  if (!outer.ok || outer.value.reversed) wrong.push('the boundary');
  for (const key of ['id', 'name'] as const) {
    if (new Set(structures.map((structure) => structure[key])).size < structures.length)
      wrong.push(`one ${key} twice`);
  }
  for (const structure of structures) {
    const { solids, faults } = solidsOf(structure);
    if (solids.length === 0) wrong.push(`${structure.name} is nothing`);
    wrong.push(...faults.map(({ code }) => `${structure.name}: ${code}`));
    wrong.push(...solids.flatMap((solid) => meshFaults(solid).map((fault) => `${solid.name}: ${fault}`)));
  }
  const plot = { name: 'plot', low: boundary[0] ?? [0, 0], high: boundary[2] ?? [0, 0] };
  for (const { name, low, high } of structures.map(boxOf)) {
    const isOut = [0, 1].some(
      (k) => (low[k] ?? 0) < (plot.low[k] ?? 0) - 1e-9 || (high[k] ?? 0) > (plot.high[k] ?? 0) + 1e-9,
    );
    if (isOut) wrong.push(`${name} is off the plot`);
  }
  const standing = structures
    .filter(({ kind }) => kind === 'building' || kind === 'block' || kind === 'vehicle' || kind === 'canopy')
    .map(boxOf);
  standing.forEach((a, i) => {
    for (const b of standing.slice(i + 1)) if (overlap(a, b)) wrong.push(`${a.name} stands in ${b.name}`);
  });
  return wrong;
};

describe.each(SHAPES.map((shape) => [shape.name, shape] as const))('%s', (_, shape) => {
  test('describes sizes that a panel can show', () => {
    expect(new Set(shape.sizes.map(({ key }) => key)).size).toBe(shape.sizes.length);
    for (const { label, first, least, most } of shape.sizes) {
      expect(label.length).toBeGreaterThan(2);
      expect(first).toBeGreaterThanOrEqual(least);
      expect(first).toBeLessThanOrEqual(most);
      expect(least).toBeLessThan(most);
    }
  });
  test('stands with every size within its bounds: closed solids, openings that fit, nothing in anything', () => {
    expect(wrongWith(shape.make({}))).toEqual([]);
    for (let seed = 1; seed <= trials(50, 5000); seed++) {
      const sizes = anySizes(shape, chanceFrom(seed));
      expect({ seed, sizes, wrong: wrongWith(shape.make(sizes)) }).toEqual({ seed, sizes, wrong: [] });
    }
  });
  test('takes its sizes as they are given, and brings others to the nearer bound', () => {
    const firsts = Object.fromEntries(shape.sizes.map(({ key, first }) => [key, first]));
    expect(shape.make(firsts)).toEqual(shape.make({}));
    for (const { key, least, most } of shape.sizes) {
      expect(shape.make({ [key]: most + 1000 })).toEqual(shape.make({ [key]: most }));
      expect(shape.make({ [key]: least - 1000 })).toEqual(shape.make({ [key]: least }));
      expect(shape.make({ [key]: Number.NaN })).toEqual(shape.make({}));
      expect(JSON.stringify(shape.make({ [key]: most }))).not.toBe(
        JSON.stringify(shape.make({ [key]: least })),
      );
    }
  });
  test('can be kept in a plan file', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { structures } = shape.make(anySizes(shape, chanceFrom(seed)));
      const plan = addStructures(emptyPlan('shape', shape.name), { structures, origin: null, credits: [] });
      expect(readPlan(planText(plan))).toMatchObject({ ok: true, notes: [] });
    }
  });
});
