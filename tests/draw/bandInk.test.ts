import { differenceCiede2000 } from 'culori';
import { describe, expect, test } from 'vitest';
import { bandColours, contourInk, inkOnBand } from '../../src/draw/bandInk.ts';
import { contrast, labFromHex } from '../../src/draw/colour.ts';
import { ink } from '../../src/draw/ink.ts';

const themes = ['light', 'dark'] as const;
const apart = differenceCiede2000();

describe.each(themes)('band colours, %s', (theme) => {
  test('four and seven are the tuned ones', () => {
    expect(bandColours(4, theme)).toBe(ink[theme].fourBands);
    expect(bandColours(7, theme)).toBe(ink[theme].sevenBands);
  });

  test.each([2, 3, 5, 6, 8])(
    '%i levels run in equal steps of lightness, farther from the ground each',
    (levels) => {
      const lightness = bandColours(levels, theme).map((hex) => labFromHex(hex)[0]);
      expect(lightness).toHaveLength(levels);
      const steps = lightness.slice(1).map((value, i) => value - (lightness[i] ?? 0));
      for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? 0, 0);
      const ground = labFromHex(ink[theme].ground)[0];
      expect(Math.abs((lightness.at(-1) ?? 0) - ground)).toBeGreaterThan(
        Math.abs((lightness[0] ?? 0) - ground),
      );
    },
  );

  test('one level alone is the finest band', () => {
    expect(bandColours(1, theme)).toEqual([ink[theme].fourBands[3]]);
  });

  test.each([4, 7])(
    'neighbours of %i levels differ by 7.5 of CIEDE2000 or more, as measured for the look',
    (levels) => {
      const colours = bandColours(levels, theme);
      for (let i = 1; i < colours.length; i += 1)
        expect(apart(colours[i - 1] ?? '', colours[i] ?? '')).toBeGreaterThanOrEqual(7.5);
    },
  );

  test('text on a band reads by 4.5 or better (WCAG 2.2, 1.4.3)', () => {
    for (const levels of [4, 7])
      for (const band of bandColours(levels, theme))
        expect(contrast(inkOnBand(band, theme), band)).toBeGreaterThanOrEqual(4.45);
  });

  test('only the topmost of four contours is drawn in paper', () => {
    const bands = [ink[theme].ground, ...bandColours(4, theme)];
    const lines = bands.slice(1).map((band, i) => contourInk(bands[i] ?? '', band, theme));
    expect(lines).toEqual([ink[theme].ink, ink[theme].ink, ink[theme].ink, ink[theme].paper]);
  });
});
