import { describe, expect, test } from 'vitest';
import type { Caution } from '../../../src/assess/cautions/caution.ts';
import type { Figures } from '../../../src/assess/cautions/figures.ts';
import { cautionWords, lacksWords, notReady, shownFirst } from '../../../src/draw/cautions/cautionWords.ts';
import { monthsText, sayIn } from '../../../src/draw/cautions/say.ts';
import { statusWords } from '../../../src/draw/cautions/status.ts';

const asked = { requirement: 'the gate' };

/** One of every row, and of every turn that a row can take. */
const ALL: readonly Figures[] = [
  { row: 1, ...asked, angle: 52.4, limit: 45 },
  { row: 2, ...asked, angle: 33, limit: 20, mostHeight: 2.86 },
  { row: 3, ...asked, pixels: 12.34, leastPixels: 15, angle: null, mostAngle: 30 },
  { row: 3, ...asked, pixels: 12.34, leastPixels: 15, angle: 41, mostAngle: 30 },
  { row: 4, ...asked, other: 'the door' },
  { row: 5, ...asked, when: 'night', of: 'face', millimetres: 56, exposure: 40, taken: true, speed: 1.4 },
  { row: 5, ...asked, when: 'day', of: 'plate', millimetres: 6, exposure: 2, taken: false, speed: 2.8 },
  { row: 6, ...asked, pictures: 0, seconds: 0.3, speed: 1.4 },
  { row: 6, ...asked, pictures: 1, seconds: 0.3, speed: 4 },
  { row: 7, ...asked, focus: 5, distance: 12, near: 3.39, far: 9.53 },
  { row: 7, ...asked, focus: 5, distance: 2, near: 3.39, far: null },
  { row: 8, end: 'longest', focalLength: 11.8, limit: 0.05 },
  { row: 9, mode: 'Main stream', why: 'stabilised', lost: 0.1 },
  {
    row: 10,
    ...asked,
    mode: 'Sub stream',
    density: 64,
    band: 'Observe',
    wanted: 'Recognise',
    recorded: false,
  },
  { row: 10, ...asked, mode: 'Sub stream', density: 12, band: null, wanted: 'Recognise', recorded: true },
  { row: 11, ...asked, ratio: 1.6, more: 0.31 },
  { row: 12, thing: 'Gutter', near: 0.21, far: 6.6, times: 988, share: 0.19 },
  { row: 12, thing: 'Gutter', near: 0.1, far: 30, times: 90_000, share: 0 },
  { row: 13, what: 'picture', surface: 'South wall', angle: 4.2 },
  { row: 13, what: 'beam', surface: 'South wall', angle: -12 },
  { row: 13, what: 'soffit', surface: 'House', angle: 0 },
  { row: 14, open: true, infrared: true },
  { row: 15, what: 'cover', thing: 'House', distance: 0.1 },
  { row: 15, what: 'leaves', thing: 'Hedge', distance: 1.2 },
  { row: 16, from: 6.5, to: 8, months: [10, 11, 12, 1], minutes: 70, inFrame: true },
  { row: 17, share: 0.34 },
  { row: 18, ...asked, opening: 'Archway', share: 0.06 },
  { row: 19, what: 'lamp', thing: 'Street lamp', distance: 12 },
  { row: 19, what: 'vehicle', thing: 'Van', distance: 8 },
  { row: 20, ...asked, distance: 14, range: 20, sure: 10, beside: false },
  { row: 20, ...asked, distance: 14, range: 20, sure: 10, beside: true },
  { row: '20.beam', beam: 80, share: 0.12 },
  { row: 21, ...asked },
  { row: 22, thing: 'Window', share: 0.4, near: 0.3 },
  { row: 23, ...asked, thing: 'Van', clear: 0.08 },
  { row: 24, thing: 'Hedge', years: 3, area: 12.3 },
  { row: 25, thing: 'Hedge', share: 0.2, near: 4 },
  { row: 26, what: 'parking', thing: 'Drive' },
  { row: 26, what: 'leaf', thing: 'Gate' },
  { row: 27, thing: 'Fence', share: 0.04, angle: 30 },
  { row: 28, ...asked, thing: 'Garage', size: 'height', got: 'mapped', tolerance: 1 },
  { row: 29, thing: 'ground', height: 2.4 },
  { row: 30, what: 'lintel', thing: 'Window', distance: 0.12 },
  { row: 30, what: 'jamb', thing: 'Window', distance: 0.05 },
  { row: 30, what: 'edge', thing: 'corner', distance: 0.05 },
  { row: 31, height: null, floor: null, joists: null, inJoists: false },
  { row: 31, height: 2.1, floor: 'Ground floor', joists: { from: 2.4, to: 2.7 }, inJoists: false },
  { row: 31, height: 2.5, floor: 'Ground floor', joists: { from: 2.4, to: 2.7 }, inJoists: true },
  { row: 32, what: 'line', thing: 'Socket', distance: 0.04 },
  { row: 32, what: 'top', thing: 'ceiling of Ground floor', distance: 0.1 },
  { row: 32, what: 'corner', thing: 'corner', distance: 0.1 },
  { row: 32, what: 'meter', thing: 'Gas meter', distance: 0.3 },
  { row: 33, year: null },
  { row: 33, year: 1974 },
  { row: 34, height: 3.2, out: 0.8, on: 'ground', why: null },
  { row: 34, height: 3.2, out: 0.8, on: 'Conservatory', why: 'thing' },
  { row: 34, height: 3.2, out: 0.8, on: 'ground', why: 'neighbour' },
  { row: 35, of: 'pole', length: 4, angle: 24 },
  { row: 36, thing: 'Boiler flue', distance: 0.7 },
  { row: 37, rise: null, plug: 0.02, fall: 5, bare: true },
  { row: 37, rise: 0.026, plug: 0.02, fall: 5, bare: false },
  { row: 38, why: 'building', thing: 'Shed', distance: 9 },
  { row: 38, why: 'pole', thing: 'C4', distance: 9 },
  { row: 39, reserved: 46.2, budget: 50, spare: 3.8 },
  { row: 39, reserved: 61.6, budget: 50, spare: -11.6 },
  { row: 40, band: 'Recognise', area: 63.8, bound: 0.01, openings: [] },
  { row: 40, band: 'Recognise', area: 0, bound: 0, openings: ['Window of House', 'Door of House'] },
];

const rowOf = ({ row }: Figures): number => (row === '20.beam' ? 20 : row);

describe('the words of every row', () => {
  test('there is an example of each', () => {
    expect([...new Set(ALL.map(rowOf))].toSorted((one, two) => one - two)).toEqual(
      Array.from({ length: 40 }, (_, row) => row + 1),
    );
  });

  test.each(ALL.map((figures) => [JSON.stringify(figures), figures] as const))('%s', (_, figures) => {
    for (const units of ['metres', 'millimetres', 'feet'] as const) {
      const { said, advice } = cautionWords({ figures }, units);
      for (const text of [said, advice]) {
        // Whole sentences with their figures, nothing left to fill in, no promise.
        expect(text).toMatch(/^[\p{Lu}“1].*\.$/u);
        expect(text).not.toMatch(/undefined|NaN|null|[{}]|\.\.| {2}|will identify|\bsafe\b/u);
      }
    }
    expect(statusWords(rowOf(figures))).not.toBe('');
  });
});

test('figures are said in the plan’s units', () => {
  const figures = { row: 29, thing: 'ground', height: 2.4 } as const;
  expect(cautionWords({ figures }, 'metres').said).toBe('The lens is 2.40 m above the ground: within reach.');
  expect(cautionWords({ figures }, 'millimetres').said).toContain('2400 mm');
  expect(cautionWords({ figures }, 'feet').said).toContain(`7' 10 1/2"`);
});

test('runs of months also over the turn of the year', () => {
  expect(monthsText([10, 11, 12, 1])).toBe('from October to January');
  expect(monthsText([5])).toBe('in May');
  expect(monthsText([3, 4, 9])).toBe('from March to April and in September');
  expect(monthsText([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])).toBe('all year');
});

test('hours, exposures and shares', () => {
  const say = sayIn('metres');
  expect(say.hour(6.5)).toBe('06:30');
  expect(say.exposure(40)).toBe('1/25 s');
  expect(say.exposure(1000)).toBe('1.0 s');
  expect(say.share(0.004)).toBe('less than 1 %');
});

const caution = (severity: Caution['severity'], at: number, ticked = false): Caution => ({
  id: `${severity}-${at}`,
  row: 29,
  severity,
  weight: 1,
  figures: { row: 29, thing: 'ground', height: 2 },
  places: [],
  thresholds: [],
  situations: [],
  ticked,
});

test('at most five are said at once, but every stop', () => {
  const tells = [1, 2, 3, 4, 5, 6].map((at) => caution('tell', at));
  expect(shownFirst([caution('stop', 0), ...tells]).first).toHaveLength(5);
  const stops = [1, 2, 3, 4, 5, 6].map((at) => caution('stop', at));
  expect(shownFirst([...stops, ...tells]).first).toEqual(stops);
  expect(shownFirst([...stops, ...tells]).rest).toEqual(tells);
});

test('a card is not ready while a stop is not ticked', () => {
  const cautions = [caution('stop', 1, true), caution('stop', 2), caution('fails', 3)];
  expect(notReady({ cautions }).map(({ id }) => id)).toEqual(['stop-2']);
});

test('what could not be told is said', () => {
  expect(lacksWords([])).toBeNull();
  expect(lacksWords(['origin', 'floors'])).toBe(
    'Not told, since it is not given: where the site lies on Earth (the sun); floors and ceilings (where the hole comes out).',
  );
});
