import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthOf, lengthText } from '../../src/base/length.ts';

const metres = (text: string, unit: 'metres' | 'millimetres' | 'feet' = 'metres') => {
  const reading = lengthOf(text, unit);
  return reading.ok ? reading.metres : reading.trouble;
};

// One inch is 25.4 mm by definition (international yard and pound agreement, 1959).
const INCH = 0.0254;

describe('a length is read as a person writes it', () => {
  test.each([
    ['2.4', 2.4],
    ['2,4', 2.4],
    ['240 cm', 2.4],
    ['2400mm', 2.4],
    ['.5', 0.5],
    ['8ft', 96 * INCH],
    ['7\' 10 1/2"', 94.5 * INCH],
    ['7\'10.5"', 94.5 * INCH],
    ['7′ 10½″', 94.5 * INCH],
    ['7 ft 10 in', 94 * INCH],
    ["7' 10", 94 * INCH],
    ['10 1/2 in', 10.5 * INCH],
    ['10 1/2', 10.5],
    ['11/4', 2.75],
    ['3.2 + 2 × 0.6', 4.4],
    ['(4.2 - 1.6) / 2', 1.3],
    ['2 * 1 ft + 10 cm', 0.7096],
    ['-1.5', -1.5],
    ['−1.5', -1.5],
    ['6 ft / 2', 36 * INCH],
    ['1 + 2 in', 1 + 2 * INCH],
  ])('%s', (text, expected) => {
    expect(metres(text)).toBeCloseTo(expected, 12);
  });

  test('a bare number is in the unit of the plan', () => {
    expect(metres('2400', 'millimetres')).toBeCloseTo(2.4, 12);
    expect(metres('8', 'feet')).toBeCloseTo(96 * INCH, 12);
    expect(metres('2 m', 'feet')).toBe(2);
  });
});

describe('what is no length is refused with the reason, never taken as 0', () => {
  test.each([
    ['', 'empty'],
    ['  ', 'empty'],
    ["7' 1O", 'unreadable'],
    ['two', 'unreadable'],
    ['2 m * 3 m', 'unreadable'],
    ['1 / 2 m', 'unreadable'],
    ['2 m + 3 * (1', 'unreadable'],
    ['1,234.5', 'ambiguous'],
    ['1.234,5', 'ambiguous'],
    ['3/0', 'by zero'],
    ['3 1/0 in', 'by zero'],
    ['1e5', 'unreadable'],
  ])('%s', (text, trouble) => {
    expect(metres(text)).toBe(trouble);
  });

  test('any text gives a finite number or a reason', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...Array.from('0123456789.,\'"/+-*() mftinc')) }),
        (text) => {
          const reading = lengthOf(text, 'metres');
          expect(reading.ok ? Number.isFinite(reading.metres) : reading.trouble).toBeTruthy();
        },
      ),
    );
  });
});

test('what is shown reads back to within half of the last figure', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.constantFrom('metres' as const, 'millimetres' as const, 'feet' as const),
      (value, unit) => {
        const shown = lengthText(value, unit);
        const back = metres(`${shown.text} ${shown.unit}`);
        const least = { metres: 0.005, millimetres: 0.0005, feet: INCH / 16 }[unit];
        expect(typeof back === 'number' ? Math.abs(back - value) : back).toBeLessThanOrEqual(least + 1e-9);
      },
    ),
  );
});
