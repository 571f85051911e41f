import { describe, expect, test } from 'vitest';
import type { Structure } from '../../../src/model/structure.ts';
import { at, feature, found, polygon, square } from '../opened.ts';

const only = (structures: readonly Structure[]): Structure => {
  const [one, ...others] = structures;
  if (!one || others.length > 0) throw new Error(`one structure was expected, got ${structures.length}`);
  return one;
};

describe('what else blocks a view', () => {
  const line = (properties: Record<string, unknown>, ...corners: [number, number][]) =>
    feature({ type: 'LineString', coordinates: corners }, properties);

  test('walls, fences and hedges stand along their lines, kerbs and bollards do not', () => {
    const ends: [number, number][] = [at(0, 0), at(10, 0)];
    const { structures, report } = found(
      line({ barrier: 'wall', height: '2.4', width: '0.3' }, ...ends),
      line({ barrier: 'fence', fence_type: 'chain_link' }, ...ends),
      line({ barrier: 'fence' }, ...ends),
      line({ barrier: 'hedge' }, ...ends),
      line({ barrier: 'kerb' }, ...ends),
      feature({ type: 'Point', coordinates: at(1, 1) }, { barrier: 'bollard' }),
      feature({ type: 'Point', coordinates: at(1, 1) }, { barrier: 'gate' }),
    );
    expect(structures).toMatchObject([
      {
        kind: 'barrier',
        sort: 'wall',
        height: 2.4,
        thickness: 0.3,
        passage: 'solid',
        got: { height: 'mapped', thickness: 'mapped' },
      },
      { sort: 'fence', height: 1.5, passage: 'screen', got: { height: 'guessed' } },
      { sort: 'fence', passage: 'solid' },
      { sort: 'hedge', passage: 'solid' },
    ]);
    expect(report.left.map(({ code, count }) => [code, count])).toEqual([
      ['left.lowBarrier', 2],
      ['left.gate', 1],
    ]);
    expect(report.assumed).toContainEqual({ code: 'assumed.fence', count: 1, names: ['Barrier 3'] });
  });

  test('a line that comes back to its beginning is a closed barrier; a hedge mapped as ground is a block', () => {
    const { structures } = found(
      line({ barrier: 'wall' }, ...square(0, 0, 10)),
      polygon([square(20, 0, 10)], { barrier: 'wall' }),
      polygon([square(40, 0, 2)], { barrier: 'hedge', area: 'yes' }),
    );
    expect(structures).toMatchObject([
      { kind: 'barrier', closed: true },
      { kind: 'barrier', closed: true },
      { kind: 'block', passage: 'solid', height: 1.5 },
    ]);
    expect(structures[0]?.kind === 'barrier' && structures[0].line).toHaveLength(4);
  });

  test('a line that crosses itself is left out by name', () => {
    const { report, notes } = found(
      line({ barrier: 'wall', name: 'Knot' }, at(0, 0), at(10, 10), at(10, 0), at(0, 10)),
      polygon([square(0, 0, 9)]),
    );
    expect(report.left).toContainEqual({ code: 'left.barrier', count: 1, names: ['Knot'] });
    expect(notes).toMatchObject([{ code: 'barrier.crosses', subject: 'Knot' }]);
  });

  test('single trees stand with the sizes that are tagged, or guessed ones', () => {
    const { structures } = found(
      polygon([square(0, 0, 9)]),
      feature(
        { type: 'Point', coordinates: at(20, 0) },
        { natural: 'tree', height: '12', diameter_crown: '6', circumference: '0.9' },
      ),
      feature({ type: 'Point', coordinates: at(30, 0) }, { natural: 'tree' }),
    );
    expect(structures.filter(({ kind }) => kind === 'tree')).toMatchObject([
      {
        height: 12,
        crownRadius: 3,
        trunkDiameter: 0.9 / Math.PI,
        got: { height: 'mapped', crown: 'mapped' },
      },
      { height: 8, crownRadius: 2.5, inLeaf: true, got: { height: 'guessed', crown: 'guessed' } },
    ]);
  });

  test('a carport is a board on posts, seen through below', () => {
    const structure = only(found(polygon([square(0, 0, 5)], { building: 'carport' })).structures);
    expect(structure).toMatchObject({ kind: 'canopy', top: 3, thickness: 0.2, posts: 4 });
  });

  test('what lies underground is left out', () => {
    const { report } = found(
      polygon([square(0, 0, 9)]),
      polygon([square(0, 0, 5)], { building: 'yes', location: 'underground' }),
    );
    expect(report.left).toEqual([{ code: 'left.underground', count: 1, names: [] }]);
  });
});
