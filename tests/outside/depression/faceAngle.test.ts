/*
 * Source: geometry, computed: depression to a face at 1.6 m is atan((h − 1.6)/d), the greatest mounting height for an angle
 * a is 1.6 + d tan a. That about 15° serves well and 20 to 30° is the usual outer limit for a face is common practice, no
 * source.
 */
import { describe, expect, test } from 'vitest';
import { BandRule, faceCapsOf } from '../../../src/coverage/rule.ts';
import { depressionAt } from '../../../src/optics/density.ts';
import { editionOf } from '../../../src/plan/editions.ts';

const FACE = 1.6;
/** Straight away from the camera, but not along an axis. */
const at = (over: number) => [7 + over * 0.6, -3 + over * 0.8, FACE] as const;

describe('the depression to a face', () => {
  const heights = [2.4, 3, 3.5, 4] as const;
  const rows = [
    { d: 2, angles: [21.801, 34.992, 43.531, 50.194] },
    { d: 3, angles: [14.931, 25.017, 32.347, 38.66] },
    { d: 4, angles: [11.31, 19.29, 25.408, 30.964] },
    { d: 6, angles: [7.595, 13.134, 17.571, 21.801] },
    { d: 10, angles: [4.574, 7.97, 10.758, 13.496] },
  ] as const;
  test.each(rows)('$d m away, from mounting heights of 2.4, 3, 3.5 and 4 m', ({ d, angles }) => {
    heights.forEach((height, index) => {
      const found = depressionAt([7, -3, height], at(d));
      expect(Math.abs(found - (angles[index] ?? 0)), `${height} m`).toBeLessThan(5.01e-4);
    });
  });
});

describe('the greatest mounting height', () => {
  const rows = [
    { d: 2, heights: [2.136, 2.755] },
    { d: 3, heights: [2.404, 3.332] },
    { d: 5, heights: [2.94, 4.487] },
    { d: 10, heights: [4.279, 7.374] },
  ] as const;

  test.each(rows)('for 15° and 30° to a face $d m away has just that depression', ({ d, heights }) => {
    [15, 30].forEach((angle, index) => {
      const found = depressionAt([7, -3, heights[index] ?? 0], at(d));
      const rad = (angle * Math.PI) / 180;
      // Half a millimetre of height, as an angle.
      const slack = ((5.01e-4 * Math.cos(rad) ** 2) / d) * (180 / Math.PI);
      expect(Math.abs(found - angle), `${angle}°`).toBeLessThan(slack);
    });
  });

  test.each(rows)(
    'is where a face $d m away loses its band: 1 mm below it keeps, 1 mm above it falls',
    ({ d, heights }) => {
      const { bands } = editionOf('iec-62676-4-2014');
      const limits = { identify: { above: 15, side: 45 }, recognise: { above: 30, side: 60 } };
      const face = { kind: 'face', height: FACE } as const;
      const rule = new BandRule(bands, faceCapsOf(face, bands, limits), 60);
      const band = (height: number) => rule.band(1000, 0, d, height - FACE);
      const [good, outer] = heights;
      expect([good - 0.001, good + 0.001, outer - 0.001, outer + 0.001].map(band)).toEqual([4, 3, 3, 2]);
    },
  );
});
