import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { GREATEST_FILE } from '../../src/exchange/fileText.ts';
import { openFile } from '../../src/exchange/openFile.ts';
import { faultText } from '../../src/plan/faultText.ts';
import { collection, feature, finish, openText, openPath, polygon, square } from './opened.ts';

const demo = readFileSync('shared/plans/demo.plan.json', 'utf8');

const codeOf = (outcome: ReturnType<typeof openText>) => {
  if (outcome.ok) throw new Error('the file was accepted');
  const [fault] = outcome.faults;
  expect(faultText(fault ?? { code: '', path: [] })).toMatch(/^[A-Z“].*\.$/s);
  return fault?.code;
};

test('a plan file opens as it is, without a report', () => {
  const outcome = openPath('shared/plans/demo.plan.json');
  expect(outcome).toMatchObject({
    ok: true,
    notes: [],
    value: { report: null, plan: { id: 'demo', name: 'Kiln Cottage' } },
  });
});

test('a map becomes a plan that is named after its file', () => {
  const outcome = openText(
    JSON.stringify(collection(polygon([square(0, 0, 9)]))),
    'C:\\maps\\Kiln Lane.geo.json',
  );
  expect(outcome).toMatchObject({
    ok: true,
    value: { plan: { name: 'Kiln Lane', structureOrder: ['building-1'] }, report: { taken: [{ count: 1 }] } },
  });
});

test('what a file is depends on what it holds, not on its name', () => {
  expect(openText(demo, 'street.geojson').ok).toBe(true);
  expect(openText(JSON.stringify(collection(polygon([square(0, 0, 9)]))), 'house.plan.json').ok).toBe(true);
  expect(openText(`\uFEFF\n ${demo}`).ok).toBe(true);
});

describe('what cannot be opened says why', () => {
  test.each([
    ['file.empty', ''],
    ['file.empty', ' \n'],
    ['file.unknown', '<?xml version="1.0"?><osm/>'],
    ['file.unknown', 'id,name\n1,House'],
    ['file.unknown', '[1, 2, 3]'],
    ['file.unknown', '{"hello": "world"}'],
    ['file.truncated', demo.slice(0, 2000)],
    ['file.truncated', JSON.stringify(collection(polygon([square(0, 0, 9)]))).slice(0, -40)],
    ['file.notJson', '{"version": 1, oops}'],
    ['plan.newer', '{"version": 99}'],
    ['plan.noVersion', '{"structures": {}}'],
    ['geojson.pointsOnly', JSON.stringify(collection(feature({ type: 'Point', coordinates: [0, 0] })))],
  ])('%s: %s', (code, text) => {
    expect(codeOf(openText(text))).toBe(code);
  });

  test('a picture is no plan', () => {
    const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
    expect(codeOf(finish(openFile('house.png', png)))).toBe('file.unknown');
  });

  test('a file over 64 MB is refused before it is read', () => {
    const outcome = finish(openFile('country.geojson', new Uint8Array(GREATEST_FILE + 1)));
    expect(codeOf(outcome)).toBe('file.tooBig');
    expect(outcome.ok ? '' : faultText(outcome.faults[0] ?? { code: '', path: [] })).toMatch(
      /“country.geojson” is 65 MB; at most 64 MB/,
    );
  });

  test('text of that size is not', () => {
    const bytes = new Uint8Array(GREATEST_FILE).fill(0x20);
    expect(codeOf(finish(openFile('blank.json', bytes)))).toBe('file.empty');
  });
});

test('opening goes in steps, from nothing to all of it', () => {
  const many = Array.from({ length: 2000 }, (_, index) => polygon([square(index * 12, 0, 10)]));
  const steps = openFile('row.geojson', new TextEncoder().encode(JSON.stringify(collection(...many))));
  const seen: { share: number; doing: string }[] = [];
  for (let next = steps.next(); !next.done; next = steps.next()) seen.push(next.value);
  expect(seen.map(({ share }) => share)).toEqual(seen.map(({ share }) => share).toSorted((a, b) => a - b));
  expect(new Set(seen.map(({ doing }) => doing))).toEqual(
    new Set(['Reading the file', 'Reading features', 'Finding the site', 'Building structures']),
  );
  expect(seen.at(-1)?.share).toBeGreaterThan(0.9);
});
