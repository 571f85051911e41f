import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { defaultDevice } from '../../src/plan/defaultDevice.ts';
import { defaultSettings } from '../../src/plan/defaultSettings.ts';
import { editionOf, editions, findEdition } from '../../src/plan/editions.ts';

test('the 2014 edition is the default and asks for four densities', () => {
  // IEC 62676-4:2014, four of its six levels, as public catalogue entries for the later draft list them.
  const edition = editionOf(defaultSettings.edition);
  expect(edition.name).toBe('IEC 62676-4:2014');
  expect(edition.bands.map(({ key, density }) => [key, density])).toEqual([
    ['detect', 25],
    ['observe', 62.5],
    ['recognise', 125],
    ['identify', 250],
  ]);
});

test('the 2025 edition asks for seven', () => {
  // Densities by the same entries; names from memory, which the table says of itself.
  expect(findEdition('iec-62676-4-2025')?.bands.map(({ density }) => density)).toEqual([
    20, 40, 80, 125, 250, 500, 1500,
  ]);
  expect(readFileSync('shared/tables/bands.json', 'utf8')).toContain('from memory, not read in the standard');
});

test('bands rise, each with a key and a name of its own', () => {
  for (const { bands } of editions) {
    const densities = bands.map(({ density }) => density);
    expect(densities).toEqual(densities.toSorted((a, b) => a - b));
    expect(new Set(bands.map(({ key }) => key)).size).toBe(bands.length);
    expect(new Set(bands.map(({ name }) => name)).size).toBe(bands.length);
  }
});

test('an edition that the table lacks is a bug past the door', () => {
  expect(() => editionOf('of-1066')).toThrow('of-1066');
});

test('sensor sizes are those of the published tables, each with its source', () => {
  const table = JSON.parse(readFileSync('shared/tables/sensors.json', 'utf8')) as {
    sensors: { key: string; width: number; height: number; source: string }[];
  };
  const size = (key: string) => {
    const sensor = table.sensors.find((one) => one.key === key);
    return [sensor?.width, sensor?.height];
  };
  // A machine-vision lens page on sensor formats (excerpt): diagonals of 4, 6, 8, 11 and 16 mm.
  for (const [key, diagonal] of [
    ['1/4', 4],
    ['1/3', 6],
    ['1/2', 8],
    ['2/3', 11],
    ['1', 16],
  ] as const) {
    const [width = 0, height = 0] = size(key);
    expect(Math.hypot(width, height)).toBeCloseTo(diagonal, 6);
  }
  // 1920 × 1080 pixels of 2.9 µm (image-sensor data sheets, from memory).
  const [width = 0, height = 0] = size('1/2.8-16x9');
  expect(width).toBeCloseTo(1920 * 0.0029, 2);
  expect(height).toBeCloseTo(1080 * 0.0029, 2);
  expect(size('1/2.7-16x9')).toEqual([defaultDevice.sensor.width, defaultDevice.sensor.height]);
  for (const { source } of table.sensors) expect(source.length).toBeGreaterThan(10);
});
