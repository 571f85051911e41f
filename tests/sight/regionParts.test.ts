import { expect, test } from 'vitest';
import { regionParts } from '../../src/sight/regionParts.ts';
import { trianglesArea } from '../../src/sight/triangulate.ts';

const ring = (x0: number, y0: number, x1: number, y1: number): Float64Array =>
  Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);
const ground = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
] as const;

const found = (regions: readonly (readonly Float64Array[])[]) =>
  new Map(
    regionParts(ground, regions)?.map(({ members, triangles }) => [members.join(), trianglesArea(triangles)]),
  );

test('parts are told by which regions cover them, counted in squares of a metre', () => {
  const rectangles = [
    [0, 0, 6, 6],
    [4, 4, 9, 9],
    [5, 0, 8, 5],
    [-3, 9, 12, 20],
  ] as const;
  const counts = new Map<string, number>();
  for (let x = 0; x < 10; x += 1)
    for (let y = 0; y < 10; y += 1) {
      const members = rectangles.flatMap(([x0, y0, x1, y1], at) =>
        x >= x0 && x < x1 && y >= y0 && y < y1 ? [at] : [],
      );
      if (members.length > 0) counts.set(members.join(), (counts.get(members.join()) ?? 0) + 1);
    }
  const parts = found(rectangles.map(([x0, y0, x1, y1]) => [ring(x0, y0, x1, y1)]));
  expect([...parts.keys()].sort()).toEqual([...counts.keys()].sort());
  for (const [members, area] of parts) expect(area, `${members}`).toBeCloseTo(counts.get(members) ?? NaN, 5);
});

test('a hole of a region is not in it, a region without rings covers nothing', () => {
  const hollow = [ring(1, 1, 7, 7), Float64Array.of(2, 2, 2, 4, 4, 4, 4, 2)];
  expect(found([[], hollow, []])).toEqual(new Map([['1', expect.closeTo(32, 5)]]));
  expect(found([])).toEqual(new Map());
});

test('a region over all of the ground leaves no part without it', () => {
  expect(found([[ring(-1, -1, 11, 11)], [ring(0, 0, 2, 2)]])).toEqual(
    new Map([
      ['0,1', expect.closeTo(4, 5)],
      ['0', expect.closeTo(96, 5)],
    ]),
  );
});
