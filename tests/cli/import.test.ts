import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { planJsonSchema } from '../../src/plan/schema.ts';
import { planAt, scratch, soffit, soffitJson } from './ran.ts';

const files = scratch();
afterAll(files.clear);

describe('import', () => {
  const street = 'tests/inputs/osm/bristol-terraces.geojson';

  test('makes a plan of a street, with what was taken, left and assumed', () => {
    const out = files.file('street.json');
    const told = soffitJson('import', street, '--out', out) as {
      taken: unknown[];
      credits: string[];
      origin: { latitude: number };
    };
    expect(told.taken).toMatchObject([{ code: 'taken.building', count: 89 }]);
    expect(told.credits[0]).toMatch(/OpenStreetMap contributors/);
    expect(told.origin.latitude).toBeCloseTo(51.4576, 3);
    const plan = planAt(out);
    expect(plan).toMatchObject({ name: 'bristol-terraces', structureOrder: { length: 89 } });
    expect(plan.id).toBe('map-db2217d9e789');
  });

  test('says it in words too, and the plan can be covered', () => {
    const out = files.file('street2.json');
    const { code, out: text } = soffit('import', street, '--out', out);
    expect(code).toBe(0);
    expect(text).toMatch(/Taken:\n {2}89 buildings\nLeft out:\n/);
    const looking = [
      '--eye',
      '0,0,6',
      '--pan',
      '90',
      '--tilt',
      '20',
      '--focal',
      '2.8',
      '--sensor',
      '5.37x3.04',
      '--frame',
      '2688x1520',
    ];
    const mounted = files.file('street3.json');
    expect(soffit('mount', out, '--id', 'C1', ...looking, '--out', mounted).code).toBe(0);
    const told = soffitJson('cover', mounted) as {
      within: string;
      cameras: { byState: Record<string, { value: number }> }[];
    };
    expect(told.within).toBe('board');
    expect(told.cameras[0]?.byState['covered']?.value).toBeGreaterThan(0);
  });

  test('brings an older plan up to the present version', () => {
    const out = files.file('old.json');
    expect(soffit('import', 'tests/old/0.plan.json', '--out', out).code).toBe(0);
    expect(planAt(out)).toMatchObject({ version: 4, id: 'first-draft' });
  });
});

test('schema prints the published schema', () => {
  const { code, out } = soffit('schema');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual(planJsonSchema());
  expect(out).toBe(readFileSync('shared/schema/plan.schema.json', 'utf8'));
  const devices = soffit('schema', 'devices');
  expect(devices.out).toBe(readFileSync('shared/schema/devices.schema.json', 'utf8'));
});
