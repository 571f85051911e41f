import { describe, expect, test } from 'vitest';
import { cross, subtract, unit, type Vec2, type Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Barrier, Opening } from '../../src/model/structure.ts';
import { meshFaults } from './meshChecks.ts';
import { barrierWith, openingWith } from './sampleStructures.ts';

const fence = (change: Partial<Barrier>): readonly Solid[] => {
  const { solids } = solidsOf(
    barrierWith({ sort: 'fence', passage: 'screen', height: 1.5, thickness: 0.05, ...change }),
  );
  expect(solids.flatMap((solid) => meshFaults(solid))).toEqual([]);
  return solids;
};

const bodyOf = ([body]: readonly Solid[]): Solid => {
  if (!body) throw new Error('nothing was built');
  return body;
};

interface Triangle {
  readonly centre: Vec3;
  readonly outward: Vec3;
  readonly sheet: Vec3;
}

/** The triangles of a solid, with outward normals from their own corners. */
const trianglesOf = ({ positions, triangles, sheets }: Solid): readonly Triangle[] => {
  if (!sheets) throw new Error('no sheets');
  expect(sheets).toHaveLength(triangles.length);
  const corner = (at: number): Vec3 => {
    const from = 3 * (triangles[at] ?? NaN);
    return [positions[from] ?? NaN, positions[from + 1] ?? NaN, positions[from + 2] ?? NaN];
  };
  return Array.from({ length: triangles.length / 3 }, (_, t) => {
    const [a, b, c] = [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)];
    return {
      centre: [0, 1, 2].map((axis) => ((a[axis] ?? NaN) + (b[axis] ?? NaN) + (c[axis] ?? NaN)) / 3) as never,
      outward: unit(cross(subtract(b, a), subtract(c, a))),
      sheet: [sheets[3 * t] ?? NaN, sheets[3 * t + 1] ?? NaN, sheets[3 * t + 2] ?? NaN],
    };
  });
};

/** The runs that a point over ground is nearest to; two at a mitre. */
const nearestRuns = (line: readonly Vec2[], closed: boolean, [x, y]: Vec3): number[] => {
  const count = closed ? line.length : line.length - 1;
  const away = Array.from({ length: count }, (_, k) => {
    const [[ax, ay], [bx, by]] = [line[k] ?? [NaN, NaN], line[(k + 1) % line.length] ?? [NaN, NaN]];
    const [dx, dy] = [bx - ax, by - ay];
    const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(x - ax - share * dx, y - ay - share * dy);
  });
  const least = Math.min(...away);
  return away.flatMap((distance, k) => (distance < least + 1e-9 ? [k] : []));
};

/** Whether a sheet's normal is square to a run. */
const isSquare = (line: readonly Vec2[], run: number, [nx, ny, nz]: Vec3): boolean => {
  const [[ax, ay], [bx, by]] = [line[run] ?? [NaN, NaN], line[(run + 1) % line.length] ?? [NaN, NaN]];
  const length = Math.hypot(bx - ax, by - ay);
  return (
    nz === 0 &&
    Math.abs(Math.hypot(nx, ny) - 1) < 1e-12 &&
    Math.abs(nx * (bx - ax) + ny * (by - ay)) < 1e-9 * length
  );
};

const bent: readonly Vec2[] = [
  [0, 0],
  [6, 0],
  [9, 4],
  [9, 9],
  [3, 8],
];
const sharp: readonly Vec2[] = [
  [0, 0],
  [6, 0],
  [1, 1],
  [6, 2.5],
];

describe('a fence that is a screen', () => {
  test.each<[string, Partial<Barrier>]>([
    ['bent', { line: bent }],
    ['closed', { line: bent, closed: true }],
    ['bevelled at sharp turns', { line: sharp }],
    [
      'with gates, low and full',
      {
        line: bent,
        openings: [
          openingWith({ id: 'a', face: 0, along: 2, width: 1, height: 1 }),
          openingWith({ id: 'b', face: 0, along: 4, width: 1, height: 0.8, sill: 0.3 }),
          openingWith({ id: 'c', face: 2, along: 2, width: 1, height: 1.5, kind: 'archway' }),
        ],
      },
    ],
  ])('%s: each triangle has the normal of its own run', (_, change) => {
    const line = change.line ?? bent;
    const found = trianglesOf(bodyOf(fence(change)));
    expect(found.length).toBeGreaterThan(20);
    for (const { centre, sheet } of found) {
      const runs = nearestRuns(line, change.closed ?? false, centre);
      expect(runs.some((run) => isSquare(line, run, sheet))).toBe(true);
    }
  });

  test('an upright long side has its own normal for a sheet, whichever way it looks', () => {
    const sides = trianglesOf(bodyOf(fence({ line: bent }))).filter(
      ({ outward, sheet }) => Math.abs(outward[0] * sheet[0] + outward[1] * sheet[1]) > 1 - 1e-9,
    );
    // Two long sides of two triangles for each of four runs.
    expect(sides).toHaveLength(16);
  });
});

describe('what has no sheets', () => {
  test.each<[string, Partial<Barrier>]>([
    ['a solid fence', { passage: 'solid' }],
    ['a bare hedge', { sort: 'hedge' }],
  ])('%s', (_, change) => {
    expect(bodyOf(fence(change))).not.toHaveProperty('sheets');
  });

  test('a bare crown', () => {
    const { solids } = solidsOf({
      kind: 'tree',
      id: 'tree',
      name: 'Tree',
      hidden: false,
      locked: false,
      at: [0, 0],
      base: 0,
      height: 5,
      crownRadius: 1.5,
      clear: 2,
      trunkDiameter: 0.3,
      inLeaf: false,
      got: { at: 'measured', height: 'guessed', crown: 'guessed' },
    });
    expect(solids.map(({ passage, sheets }) => [passage, sheets])).toEqual([
      ['solid', undefined],
      ['screen', undefined],
    ]);
  });
});

describe('a leaf that is a screen', () => {
  const leafWith = (change: Partial<Opening>): Solid => {
    const gate = openingWith({ id: 'gate', along: 2, width: 1, height: 1.5, ...change });
    const leaf = fence({
      line: [
        [0, 0],
        [8, 6],
      ],
      openings: [gate],
    }).find(({ id }) => id.endsWith('.gate'));
    if (!leaf) throw new Error('no leaf');
    return leaf;
  };
  const sheetsAlong = (leaf: Solid, [x, y]: Vec2): number[] =>
    trianglesOf(leaf).map(({ sheet }) => Math.abs(sheet[0] * x + sheet[1] * y));

  test('is one sheet across its opening when shut', () => {
    for (const along of sheetsAlong(leafWith({ passage: 'screen' }), [0.8, 0.6]))
      expect(along).toBeCloseTo(0, 12);
  });

  test('turns a quarter with the leaf when open', () => {
    for (const along of sheetsAlong(leafWith({ passage: 'screen', leaf: 'open' }), [0.8, 0.6]))
      expect(along).toBeCloseTo(1, 12);
  });

  test('has none where the leaf is solid or glass', () => {
    expect(leafWith({ passage: 'solid' }).sheets).toBeUndefined();
    expect(leafWith({ passage: 'screen', leaf: 'glazed' }).sheets).toBeUndefined();
  });
});
