import { expect, test } from 'vitest';
import { createCautioner } from '../../../src/assess/cautions/cautioner.ts';
import { runSteps } from '../../../src/assess/session.ts';
import { cautionWords } from '../../../src/draw/cautions/cautionWords.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { chanceFrom, trials, type Chance } from '../../house/seeded.ts';
import { randomPlan } from '../../plan/randomPlan.ts';
import { randomSite } from '../randomSite.ts';
import { face, night } from './sites.ts';

/** Some things to be seen, anywhere on a site, and a camera that says all that it can. */
function asking(plan: Plan, chance: Chance): Plan {
  const place = () => [chance.between(-15, 15), chance.between(-15, 15)] as const;
  const bands = ['detect', 'observe', 'recognise', 'identify'] as const;
  const asked = [
    face([place()], { id: 'r1', band: chance.pick(bands), looks: { kind: 'place', at: place() } }),
    face([place(), place()], { id: 'r2', shape: 'approach', band: chance.pick(bands) }),
    face([place(), place(), place()], {
      id: 'r3',
      shape: 'area',
      target: 'ground',
      targetHeight: 0,
      band: 'detect',
    }),
    face([place()], { id: 'r4', target: 'plate', band: 'observe', looks: { kind: 'bearing', bearing: 10 } }),
  ];
  const housings = ['dome', 'panTiltZoom', 'turret', null] as const;
  const cameras = Object.values(plan.cameras).map((camera) => ({
    ...camera,
    housing: chance.pick(housings),
    infrared: chance.next() < 0.7 ? { range: chance.between(1, 60), beam: chance.between(10, 200) } : null,
    exposure: chance.next() < 0.5 ? { day: 5, night: 30 } : null,
    sheet: {
      ...camera.sheet,
      imagesPerSecond: 2,
      focusDistance: chance.between(0.5, 40),
      powerClass: chance.whole(0, 8),
    },
  }));
  return {
    ...plan,
    origin: {
      latitude: chance.between(-89, 89),
      longitude: chance.between(-180, 180),
      trueNorth: chance.between(0, 360),
    },
    requirements: Object.fromEntries(asked.map((one) => [one.id, one])),
    requirementOrder: asked.map(({ id }) => id),
    situations: { ...plan.situations, night },
    situationOrder: [...plan.situationOrder, 'night'],
    cameras: Object.fromEntries(cameras.map((one) => [one.id, one])),
  };
}

/** Every number of a value, however deep. */
const numbersOf = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : [];
};

test('whatever stands and whatever is asked, cautions have finite figures, ids of their own and whole words', () => {
  const found = new Set<number>();
  for (let seed = 1; seed <= trials(2, 600); seed += 1) {
    const chance = chanceFrom(seed);
    const plan = asking(seed % 2 === 0 ? randomSite(chance, 6, 2) : randomPlan(chance), chance);
    const cautioner = createCautioner();
    for (const id of plan.cameraOrder.slice(0, 2)) {
      const cautions = runSteps(cautioner.steps(plan, id))?.cautions ?? [];
      const ids = cautions.map((one) => one.id);
      expect(new Set(ids).size, `seed ${seed}, ${id}`).toBe(ids.length);
      for (const { figures, places, weight, row, id: name } of cautions) {
        found.add(row);
        const numbers = numbersOf([figures, places, weight]);
        expect(
          numbers.every(Number.isFinite),
          `seed ${seed}, ${id}, ${name}: ${JSON.stringify(figures)}`,
        ).toBe(true);
        expect(name, `seed ${seed}`).toMatch(/^[A-Za-z0-9_.-]{1,64}$/);
        expect(cautionWords({ figures }, 'metres').said).not.toMatch(/NaN|undefined|Infinity/);
      }
    }
  }
  // A sample is enough to meet a good part of the table.
  expect(found.size).toBeGreaterThan(6);
});
