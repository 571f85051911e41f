import { differenceEuclidean, formatHex, wcagContrast } from 'culori';
import { describe, expect, test } from 'vitest';
import {
  between,
  contrast,
  hexFromLab,
  labFromHex,
  numberFromHex,
  rgbFromHex,
} from '../../src/draw/colour.ts';
import { ink } from '../../src/draw/ink.ts';
import { chanceFrom } from '../house/seeded.ts';

// Judge: culori, a general colour library.
const apart = differenceEuclidean('lab65');
const tokens = Object.values(ink).flatMap((theme) =>
  Object.values({ ...theme }).flatMap((value) => (typeof value === 'number' ? [] : value)),
);

describe('colours', () => {
  test('lightness and hue axes are those of a general colour library, for every token', () => {
    for (const hex of tokens) {
      const [l, a, b] = labFromHex(hex);
      expect(apart(hex, { mode: 'lab65', l, a, b })).toBeLessThan(0.02);
    }
  });

  test('every token comes back from lightness and hue axes as it was', () => {
    for (const hex of tokens) expect(hexFromLab(labFromHex(hex))).toBe(hex.toUpperCase());
  });

  test('contrast is that of a general colour library', () => {
    const chance = chanceFrom(11);
    for (let i = 0; i < 200; i += 1) {
      const [a, b] = [chance.pick(tokens), chance.pick(tokens)];
      expect(contrast(a, b)).toBeCloseTo(wcagContrast(a, b), 3);
    }
  });

  test('a colour outside what the screen has ends at its edge', () => {
    expect(hexFromLab([100, 0, 0])).toBe(formatHex('white')?.toUpperCase());
    expect(hexFromLab([0, 0, 0])).toBe('#000000');
    expect(hexFromLab([50, 200, 200])).toMatch(/^#[0-9A-F]{6}$/);
  });

  test('half-way between two is half-way in each part', () => {
    expect(between('#000000', '#FF8000', 0.5)).toBe('#804000');
  });

  test('as one number it has red highest', () => {
    expect(numberFromHex('#0A0B0C')).toBe(0x0a0b0c);
  });

  test.each(['red', '#12', '#12345G', '123456', '#12345678'])('%s is refused', (hex) => {
    expect(() => rgbFromHex(hex)).toThrow(/#RRGGBB/);
  });
});
