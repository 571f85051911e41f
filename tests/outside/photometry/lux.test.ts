import { describe, expect, test } from 'vitest';
import { luxOn } from '../../../src/coverage/light.ts';
import { readPhotometry } from '../../../src/exchange/photometry/readPhotometry.ts';
import type { Photometry } from '../../../src/optics/light.ts';
import { luxAt } from '../../../src/optics/photometry.ts';

/*
 * Source: the inverse square and cosine laws, E = I cos ε / d², as any text on lighting has them (from memory); on the
 * ground below a lamp at height h, at the angle γ from straight down, E = I(γ) cos³ γ / h². The figures were worked out
 * by hand from I, h and the place, with no angle in between where Pythagoras gives the distance.
 */

/** 1000 cd into every direction. */
const even: Photometry = { verticals: [0, 180], horizontals: [0], candela: [[1000, 1000]] };

/** A file of our own making, in the order of numbers that public parsers share. */
const OWN = `IESNA:LM-63-2002
[TEST] own
TILT=NONE
1 1000 1 4 1 1 2 0.1 0.1 0
1 1 10
0 30 60 90
0
1000 800 300 0
`;

const own = (): Photometry => {
  const read = readPhotometry('own.ies', OWN);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** Lux on level ground below a lamp at height `h`, `away` from the place straight below it; by both ways that there are. */
const onGround = (photometry: Photometry, h: number, away: number): readonly number[] => {
  const vertical = degrees(Math.atan2(away, h));
  const light = { kind: 'photometric', source: 'own.ies', turn: 0, photometry } as const;
  return [
    luxAt(photometry, vertical, 0, Math.hypot(h, away), vertical),
    luxOn(light, [0, 0, 1], away, 0, -h),
  ];
};

describe('a lamp of 1000 cd', () => {
  test('gives 40 lx at 5 m to a surface that faces it', () => {
    expect(luxAt(even, 53.13, 0, 5)).toBeCloseTo(40, 9);
  });

  test.each([
    [3, 4, 24],
    [4, 0, 62.5],
    [4, 3, 32],
    [4, 6, 10.6673],
  ])('%s m up gives the ground %s m away %s…', (h, away, lux) => {
    for (const found of onGround(even, h, away)) expect(found).toBeCloseTo(lux, 4);
  });
});

describe('a lamp of 1000, 800, 300 and 0 cd at 0, 30, 60 and 90°, 4 m up', () => {
  test.each([
    [0, 62.5],
    [2.3094, 32.476],
    [6.9282, 2.34375],
  ])('gives the ground %s m away %s lx', (away, lux) => {
    for (const found of onGround(own(), 4, away)) expect(found).toBeCloseTo(lux, 3);
  });
});
