import { expect, test } from 'vitest';
import { library } from '../../../src/editor/devices/library.ts';
import { sensors } from '../../../src/editor/settings/sensors.ts';
import { sheetFaults } from '../../../src/optics/consistency.ts';

const devices = library();

test('every housing has a device of our own to begin with, under a name of its own', () => {
  expect(new Set(devices.map(({ housing }) => housing))).toEqual(
    new Set(['turret', 'dome', 'bullet', 'box', 'tube', 'panTiltZoom']),
  );
  expect(new Set(devices.map(({ name }) => name)).size).toBe(devices.length);
  expect(devices.every(({ basis }) => basis === 'common practice, no source')).toBe(true);
});

test.each(devices.map((entry) => [entry.name, entry] as const))('%s agrees with itself', (name, entry) => {
  expect(sheetFaults({ ...entry, sheet: { ...entry.sheet, name } }, name)).toEqual([]);
});

test('sensors are those of the table of formats, whole or cut to a wide shape', () => {
  for (const { name, device } of devices) {
    const { width, height } = device.sensor;
    const type = sensors.find((one) => one.width === width && one.height >= height);
    expect(`${name}: ${type?.name}`).not.toContain('undefined');
  }
});
