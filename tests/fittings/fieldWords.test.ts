import { describe, expect, test } from 'vitest';
import { keptWords, stepped, typedNumber } from '../../src/fittings/fieldWords.ts';
import { angles, bearings, lengths, numbers } from '../../src/fittings/measure.ts';

const metres = lengths('metres');
const height = { least: 0.01, most: 1000 };

describe('what cannot be taken is answered in words on how to mend it', () => {
  test.each([
    ["7' 1O", "“7' 1O” is not a length. Write 7' 10\", 2.4 or 240 cm."],
    ['1,234.5', '“1,234.5” could mean two things. Write 1234.5.'],
    ['1.234,5', '“1.234,5” could mean two things. Write 1234,5.'],
    ['', 'Write a length: 7\' 10", 2.4 or 240 cm.'],
    ['0', 'Height must be from 0.01 m to 1000.00 m.'],
    ['3/0', '“3/0” divides by nought.'],
  ])('%s', (text, words) => {
    expect(typedNumber('Height', text, metres, height)).toEqual({ ok: false, words });
  });

  test('leaving says what is kept', () => {
    expect(keptWords('Height must be above 0.', 2.7, metres)).toBe('Height must be above 0. 2.70 m is kept.');
    expect(keptWords('“x” is not an angle.', 24, angles)).toBe('“x” is not an angle. 24.0° is kept.');
  });

  test('half a pixel is no number of pixels', () => {
    expect(typedNumber('Pixels', '2688.5', numbers('px', 1, [0, 0]), { least: 16, most: 1e5 }).ok).toBe(
      false,
    );
    expect(typedNumber('Pixels', '2688 px', numbers('px', 1, [0, 0]), { least: 16, most: 1e5 })).toEqual({
      ok: true,
      value: 2688,
    });
  });
});

test('a step holds at the bound, and tenths stay tenths', () => {
  expect(stepped(0.1, 2, 0.1, { least: -90, most: 90 })).toBe(0.3);
  expect(stepped(89.95, 1, 0.1, { least: -90, most: 90 })).toBe(90);
  expect(stepped(24, -10, 0.1, { least: -90, most: 90 })).toBe(23);
});

test('a bearing is shown within one turn', () => {
  expect(bearings.show(-90).text).toBe('270.0');
  expect(bearings.show(359.97).text).toBe('0.0');
});

test('a number shows the figures it needs, between the least and the most', () => {
  const millimetres = numbers('mm', 0.1, [1, 3]);
  expect(millimetres.show(2.8).text).toBe('2.8');
  expect(millimetres.show(5.57).text).toBe('5.57');
  expect(millimetres.show(4).text).toBe('4.0');
  expect(millimetres.show(1 / 3).text).toBe('0.333');
});
