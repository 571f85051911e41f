import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PLAN_VERSION } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';

const files = readdirSync('tests/old').filter((name) => name.endsWith('.plan.json'));

const opened = (file: string) => {
  const read = readPlan(readFileSync(`tests/old/${file}`, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read;
};

test('every past version has a file here', () => {
  expect(files.toSorted()).toEqual(
    Array.from({ length: PLAN_VERSION }, (_, version) => `${version}.plan.json`),
  );
});

test.each(files)('%s opens as a plan of the present version', (file) => {
  const { value, notes } = opened(file);
  expect(value.version).toBe(PLAN_VERSION);
  expect(notes).toEqual([]);
});

test('version 0 is judged as it was when it had no settings', () => {
  const { value } = opened('0.plan.json');
  expect(value.structureOrder).toEqual(['house', 'hedge', 'mesh-fence']);
  expect(value.cameras['C3']?.mount).toMatchObject({ kind: 'arm', height: 2.7 });
  expect(value.settings).toMatchObject({ edition: 'iec-62676-4-2014', faceHeight: 1.6, plateHeight: 0.5 });
  expect(value.credits).toEqual([]);
});

test('version 1 is judged as it was: no lamps, no light of its own, trees as they are drawn', () => {
  const { value } = opened('1.plan.json');
  expect(value.ground).toEqual({ kind: 'flat', height: 0 });
  expect([value.patches, value.patchOrder, value.lamps, value.lampOrder]).toEqual([{}, [], {}, []]);
  expect(value.cameras['C1']).toMatchObject({ infrared: null, exposure: null, pan: 236 });
  expect(value.requirements['front-step']).toMatchObject({ looks: null, band: 'identify' });
  expect(value.situations).toMatchObject({
    'as-drawn': { night: false, treesInLeaf: null },
    winter: { night: true, treesInLeaf: false, leaves: { 'front-gate': 'open' } },
  });
  // Default settings of version 2, written out: a default that changes later must not change this.
  expect(value.settings).toMatchObject({ leastLux: 1, screenClosing: 30 });
});

test('version 2 is what it was: nothing grouped, no pictures, walls with nothing known on them', () => {
  const { value } = opened('2.plan.json');
  expect([value.groups, value.groupOrder, value.pictures, value.pictureOrder]).toEqual([{}, [], {}, []]);
  expect(value.structures['house']).toMatchObject({ kind: 'building', services: [], floors: [], height: 3 });
  expect(value.structures['hedge']).not.toHaveProperty('services');
  expect(value.ground).toMatchObject({ kind: 'spots', spots: { length: 3 } });
  expect(value.patches['drive']).toMatchObject({ pitch: 4, rises: 0 });
  expect(value.situations['bare']).toMatchObject({ treesInLeaf: false });
  expect(value.requirements['front-step']?.looks).toEqual({ kind: 'bearing', bearing: 180 });
});

test('version 3 is what it was: plates and limits not known, the same pictures, nothing on its cards', () => {
  const { value } = opened('3.plan.json');
  const { C1, C2, C7, C8, C9 } = value.cameras;
  const unknown = { pan: null, tilt: null, roll: null };
  const plate = { width: 0.12, height: 0.12, right: 0, up: 0 };
  expect(C1?.mount).toMatchObject({ kind: 'soffit', inset: 0.3, plate, limits: unknown });
  expect(C8?.mount).toEqual({
    kind: 'corner',
    host: 'house',
    face: 0,
    height: 2.4,
    reach: 0.2,
    plate,
    limits: unknown,
  });
  expect(C7?.mount).toMatchObject({ kind: 'pole', diameter: 0.1, limits: unknown });
  expect(C7?.mount).not.toHaveProperty('plate');
  expect(C9?.mount).toEqual({ kind: 'loose', eye: [1, -4, 3] });
  expect(C1?.device.modes).toMatchObject([
    { id: 'main', use: 'recorded', crop: { width: 1 }, cropKnown: false },
    { id: 'small', use: 'other', crop: { width: 0.9 }, cropKnown: true },
  ]);
  expect(C2?.device.lens).toMatchObject({ statedHfov: { atShortest: 70 }, statedVfov: null, statedIn: null });
  expect(C2).toMatchObject({ housing: null, card: { ticked: [], asBuilt: {} } });
  expect(Object.values(C2?.sheet ?? {})).toEqual([null, null, null, null, null, null]);
  expect(value.settings.cautions).toEqual({});
  expect(value.groups['front']).toMatchObject({ members: ['house', 'C1'] });
});
