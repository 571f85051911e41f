import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readPhotometry } from '../../../src/exchange/photometry/readPhotometry.ts';
import type { Photometry } from '../../../src/optics/light.ts';
import { candelaAt } from '../../../src/optics/photometry.ts';

/*
 * Source: the test files of the public repository dlippok/photometric-viewer, commit 98cd88eb0d, MIT licence
 * (tests/inputs/README.md). They were written by that project and differ from one another in one field each.
 */

const FILES = [
  ['absolute_photometry', '95dd6bc22aa9', 1],
  ['imperial_units', '29301543abb2', 1],
  ['point_opening', 'd9694effcb0a', 1],
  ['rectangular_opening_with_height', '8fe2b4c20a4a', 1],
  // The one whose header has a multiplier, of 1.5.
  ['relative_photometry_with_multiplier', 'f418cd35a8ee', 1.5],
] as const;

const read = (name: string): Photometry => {
  const outcome = readPhotometry(name, readFileSync(`tests/inputs/ies/${name}.ies`, 'utf8'));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  expect(outcome.notes).toEqual([]);
  return outcome.value;
};

describe.each(FILES)('%s', (name, sum, multiplier) => {
  test('is the file that was received', () => {
    const bytes = readFileSync(`tests/inputs/ies/${name}.ies`);
    expect(createHash('sha256').update(bytes).digest('hex').slice(0, 12)).toBe(sum);
  });

  test('has 37 angles from 0 to 90°, 2.5° apart, and shines the same all round', () => {
    const { verticals, horizontals, candela } = read(name);
    expect(verticals).toEqual(Array.from({ length: 37 }, (_, at) => 2.5 * at));
    expect(horizontals).toEqual([0]);
    expect(candela.map((row) => row.length)).toEqual([37]);
  });

  // Read off the files by eye: the 1st, 2nd, 9th, 16th, 19th, 20th and 36th candela value.
  test.each([
    [0, 2200],
    [2.5, 2000.2],
    [20, 600.3],
    [37.5, 320],
    [45, 40.1],
    [47.5, 20],
    [87.5, 1],
  ])('at %s° has %s cd, times its multiplier', (vertical, candela) => {
    const index = vertical / 2.5;
    const photometry = read(name);
    expect(photometry.candela[0]?.[index]).toBeDefined();
    expect(candelaAt(photometry, vertical, 123)).toBeCloseTo(candela * multiplier, 9);
  });
});
