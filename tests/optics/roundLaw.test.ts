import { expect, test } from 'vitest';
import { greatestAngleRad } from '../../src/optics/lens.ts';
import { RoundLaw } from '../../src/optics/roundLaw.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

/** g(θ; k) / sin θ as the law has it. */
const plain = (k: number, angle: number): number =>
  (k > 0 ? Math.tan(k * angle) / k : k < 0 ? Math.sin(k * angle) / k : angle) / Math.sin(angle);

test('the series of a law is its formula to 14 digits, for every law and as far as it goes', () => {
  const chance = chanceFrom(61);
  let told = 0;
  for (let trial = 0; trial < trials(300, 5000); trial += 1) {
    const k = chance.pick([0, 0.5, -0.5, -1, chance.between(-1, 0.999)]);
    const greatest = Math.min(greatestAngleRad(k) * 0.999, chance.between(0.02, 2.2));
    const law = new RoundLaw(k, greatest);
    expect(law.least, `seed ${chance.seed}, law ${k} to ${greatest}`).toBeLessThan(1);
    for (let one = 0; one < 50; one += 1) {
      const angle = chance.between(1e-4, greatest);
      const cosine = Math.cos(angle);
      if (cosine < law.least) continue;
      told += 1;
      // The cosine has lost some of a small angle, but nothing that the ratio would tell.
      const off = Math.abs(law.at(cosine) / plain(k, angle) - 1);
      expect(off, `seed ${chance.seed}, law ${k} to ${greatest} at ${angle}`).toBeLessThan(2e-14);
    }
  }
  expect(told).toBeGreaterThan(trials(300, 5000) * 40);
});

test('the known ratios: 2 / (1 + cos θ) of the stereographic law, 1 of the orthographic', () => {
  expect(new RoundLaw(0.5, 1.2).at(Math.cos(1))).toBeCloseTo(2 / (1 + Math.cos(1)), 14);
  expect(new RoundLaw(-1, 1.2).at(Math.cos(1))).toBeCloseTo(1, 14);
});

test('for hardly any angle there is no series, and the formula is asked', () => {
  const law = new RoundLaw(0.5, 0.005);
  expect(law.least).toBeGreaterThan(1);
  expect([law.even.length, law.odd.length]).toEqual([0, 0]);
});
