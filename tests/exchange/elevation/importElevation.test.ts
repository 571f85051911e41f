import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { importElevation, type ImportedGround } from '../../../src/exchange/elevation/importElevation.ts';
import { reportText } from '../../../src/exchange/reportText.ts';
import { faultText } from '../../../src/plan/faultText.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { openPath, openText } from '../opened.ts';

const FOLDER = 'tests/inputs/terrain';

const ground = (text: string): ImportedGround => {
  const outcome = importElevation(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};

const head = (change: Readonly<Record<string, string | number | null>> = {}): string =>
  Object.entries({ ncols: 3, nrows: 2, xllcorner: 100, yllcorner: 200, cellsize: 2, ...change })
    .flatMap(([key, value]) => (value === null ? [] : [`${key} ${value}`]))
    .join('\n');

const SIX = '\n12.5 13 14\n15 16 17.25\n';

test.each([
  ['kootenai-1m.asc', '1fa39e20291f'],
  ['kootenai-viewshed-a-gdal.asc', '520c8fa2856c'],
  ['kootenai-viewshed-a-grass.asc', '709b6367fb45'],
  ['west-bijou-gully-3m.asc', '44d09eed97ca'],
  ['west-bijou-viewshed-gdal.asc', '3d5d85fa924f'],
  ['west-bijou-viewshed-grass.asc', 'acb7a5ecbaac'],
])('%s is the file that was received', (file, sum) => {
  const bytes = readFileSync(`${FOLDER}/${file}`);
  expect(createHash('sha256').update(bytes).digest('hex').slice(0, 12)).toBe(sum);
});

test('a grid is laid about the origin, its southern row first, from the whole metre below its lowest height', () => {
  expect(ground(head() + SIX).ground).toEqual({
    kind: 'grid',
    left: -3,
    bottom: -2,
    cell: 2,
    columns: 3,
    rows: 2,
    heights: [3, 4, 5.25, 0.5, 1, 2],
    got: 'mapped',
  });
});

test('the report says what was taken, where the origin is, and what heights count from', () => {
  const text = head({ nodata_value: 13 }) + SIX;
  expect(reportText(ground(text).report).map((line) => line.text)).toEqual([
    '5 heights of the ground',
    '1 cell without a height, which gets that of the nearest that has one',
    'The file names no unit: cells and heights count as metres',
    'The middle of the grid is the origin of the site: “103, 202”',
    'Heights count from z = 0 at: “12 m”',
  ]);
  expect(ground(text).ground.heights).toEqual([3, 4, 5.25, 0.5, null, 2]);
});

test('corner and centre of the first cell place a grid alike, in any case and order of keywords', () => {
  const centre = `NROWS 2\r\nNCOLS 3\r\nCELLSIZE 2\r\nXLLCENTER 101\r\nYLLCENTER 201\r\n12.5 13 14 15 16\r\n17.25`;
  expect(ground(centre)).toEqual(ground(head() + SIX));
});

test('what the format calls no data is −9999 where the file names none, and nan', () => {
  expect(ground(`${head()}\n1 -9999 3 nan 5 6`).ground.heights).toEqual([null, 4, 5, 0, null, 2]);
});

describe('a file is refused with a way out', () => {
  test.each([
    ['a missing size', head({ cellsize: null }) + SIX, 'elevation.head'],
    ['a missing corner', head({ yllcorner: null }) + SIX, 'elevation.head'],
    ['half a column', head({ ncols: 2.5 }) + SIX, 'elevation.head'],
    [
      'degrees',
      head({ xllcorner: -105.5, yllcorner: 40.1, cellsize: 0.000833333333 }) + SIX,
      'elevation.degrees',
    ],
    ['cells of a millimetre', head({ cellsize: 0.001, xllcorner: 5000 }) + SIX, 'elevation.cell'],
    ['cells of 5 km', head({ cellsize: 5000 }) + SIX, 'elevation.cell'],
    ['too many cells', head({ ncols: 20_000, nrows: 20_000 }) + SIX, 'elevation.cells'],
    ['a word among heights', `${head()}\n1 2 three 4 5 6`, 'elevation.number'],
    ['a height too few', `${head()}\n1 2 3 4 5`, 'elevation.count'],
    ['a height too many', `${head()}\n1 2 3 4 5 6 7`, 'elevation.count'],
    ['nothing known', head({ nodata_value: 1 }) + '\n1 1 1 1 1 1', 'elevation.empty'],
    ['no data taken for heights', `${head({ nodata_value: 0 })}\n1 2 3 4 -9999 6`, 'elevation.relief'],
    [
      'a strip of 300 km',
      `${head({ ncols: 300, nrows: 1, cellsize: 1000 })}\n${'1 '.repeat(300)}`,
      'elevation.wide',
    ],
  ])('%s', (_, text, code) => {
    const outcome = openText(text, 'slope.asc');
    expect(outcome.ok ? [] : outcome.faults.map((fault) => fault.code)).toEqual([code]);
    const words = outcome.ok ? '' : outcome.faults.map(faultText).join('');
    expect(words).toMatch(/^“slope\.asc” .*\. (Export|Cut|It may)/);
  });
});

test.each([
  ['kootenai-1m.asc', 50, 37, 0],
  ['west-bijou-gully-3m.asc', 43, 89, 2739],
])(
  '%s opens as a plan with that ground, which is read again as it was written',
  (file, columns, rows, unknown) => {
    const outcome = openPath(`${FOLDER}/${file}`);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
    const { plan } = outcome.value;
    expect(plan.name).toBe(file.replace('.asc', ''));
    expect(plan.ground).toMatchObject({ kind: 'grid', columns, rows });
    const heights = plan.ground.kind === 'grid' ? plan.ground.heights : [];
    expect(heights.filter((height) => height === null)).toHaveLength(unknown);
    const known = heights.flatMap((height) => height ?? []);
    expect(Math.min(...known)).toBeLessThan(1);
    expect(readPlan(planText(plan))).toEqual({ ok: true, value: plan, notes: [] });
  },
);
