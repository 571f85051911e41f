import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LIMITS, type Limit } from '../../src/plan/limits.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { cameraOn, hedge, house, wholePlan } from './wholePlan.ts';

// JSON has no −0: a plan that held one would come back with 0.
const within = ({ least, most }: Limit) =>
  fc.double({ min: least, max: most, noNaN: true }).map((number) => (number === 0 ? 0 : number));

const names = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }),
    fc.constantFrom('<img src=x onerror=alert(1)>', '"quoted"', '\\', '\u{1F3E0} Haus', '</script>'),
  )
  .filter((name) => !/[\p{Cc}\p{Cs}\u2028\u2029\u202A-\u202E\u2066-\u2069]/u.test(name));

const ids = fc
  .stringMatching(/^[a-z][A-Za-z0-9_-]{0,20}$/)
  .filter((id) => !['constructor', 'valueOf', 'door', 'toString'].includes(id));

const plans: fc.Arbitrary<Plan> = fc
  .record({
    ids: fc.uniqueArray(ids, { minLength: 2, maxLength: 6 }),
    names: fc.array(names, { minLength: 8, maxLength: 8 }),
    eye: fc.tuple(within(LIMITS.coordinate), within(LIMITS.coordinate), within(LIMITS.coordinate)),
    pan: within(LIMITS.bearing),
    tilt: within(LIMITS.tilt),
    range: within(LIMITS.range),
    height: within(LIMITS.height),
    law: fc.option(within(LIMITS.law), { nil: undefined }),
    latitude: within(LIMITS.latitude),
    located: fc.boolean(),
    heights: fc.array(fc.option(within(LIMITS.level)), { minLength: 6, maxLength: 6 }),
    candela: fc.array(within(LIMITS.candela), { minLength: 60, maxLength: 60 }),
    beam: within(LIMITS.beam),
    treesInLeaf: fc.option(fc.boolean()),
  })
  .map(({ ids: all, names: called, eye, pan, tilt, range, height, law, latitude, located, ...site }) => {
    const plan = wholePlan();
    const [first = 'a', ...others] = all;
    const camera = cameraOn(first, { kind: 'loose', eye });
    const lens = law === undefined ? camera.device.lens : { ...camera.device.lens, law };
    const structures = others.map((id, index) => ({
      ...(index % 2 === 0
        ? {
            ...house,
            openings: [],
            services: house.services.map((service) => ({ ...service, id: `tap-${index}`, height: 0 })),
          }
        : hedge),
      id,
      name: called[index] ?? id,
      height,
    }));
    return {
      ...plan,
      name: called.at(-1) ?? 'Plan',
      ground: {
        kind: 'grid',
        left: -3,
        bottom: 2,
        cell: 0.5,
        columns: 2,
        rows: 3,
        heights: site.heights,
        got: 'mapped',
      },
      lamps: {
        L1: {
          id: 'L1',
          name: 'Lamp',
          at: [1, 2],
          height: 3,
          light: {
            kind: 'photometric',
            source: 'own.ies',
            turn: 20,
            photometry: {
              verticals: site.candela.map((_, index) => index),
              horizontals: [0],
              candela: [site.candela],
            },
          },
          got: 'guessed',
        },
      },
      lampOrder: ['L1'],
      situations: {
        S1: { id: 'S1', name: 'S1', night: true, away: [], leaves: {}, treesInLeaf: site.treesInLeaf },
      },
      situationOrder: ['S1'],
      origin: located ? { latitude, longitude: 3, trueNorth: 0 } : null,
      cameras: {
        [first]: {
          ...camera,
          name: called[7] ?? first,
          pan,
          tilt,
          range,
          infrared: { range, beam: site.beam },
          device: { ...camera.device, lens },
        },
      },
      cameraOrder: [first],
      structures: Object.fromEntries(structures.map((structure) => [structure.id, structure])),
      structureOrder: others.toReversed(),
      groups: { G1: { id: 'G1', name: called[6] ?? 'G1', members: [first, ...others] } },
      groupOrder: ['G1'],
      pictures: Object.fromEntries(
        Object.entries(plan.pictures).map(([id, picture]) => [
          id,
          picture.use.kind === 'wall'
            ? { ...picture, use: { ...picture.use, structure: others[0] ?? '' } }
            : picture,
        ]),
      ),
    };
  });

test('a plan that is written and read again is the same plan', () => {
  fc.assert(
    fc.property(plans, (plan) => {
      expect(readPlan(planText(plan))).toEqual({ ok: true, value: plan, notes: [] });
    }),
    { numRuns: 300 },
  );
});

test('equal plans are equal files, whatever the order in which their keys were set', () => {
  const plan = wholePlan();
  const turned = (value: unknown): unknown =>
    typeof value !== 'object' || value === null || Array.isArray(value)
      ? value
      : Object.fromEntries(
          Object.entries(value)
            .toReversed()
            .map(([key, inner]: [string, unknown]) => [key, turned(inner)]),
        );
  expect(planText(turned(plan) as Plan)).toBe(planText(plan));
});

test.each([[['house', 'hedge']], [['hedge', 'house']]])(
  'records are written in the order that the plan gives them: %j',
  (order) => {
    const lines = planText({ ...wholePlan(), structureOrder: order }).split('\n');
    expect(lines.flatMap((line) => /^ {4}"(house|hedge)": \{/.exec(line)?.[1] ?? [])).toEqual(order);
  },
);

test('a number that JSON cannot write is a bug, not a hole in the file', () => {
  const plan = wholePlan();
  expect(() => planText({ ...plan, ground: { kind: 'flat', height: NaN } })).toThrow(RangeError);
});

test('a long list of numbers fills lines, and other lists keep one a line', () => {
  const candela = Array.from({ length: 60 }, (_, index) => 1000 + index);
  const plan = wholePlan();
  const lamp = plan.lamps['porch-lamp'];
  if (!lamp) throw new Error('the plan lost its lamp');
  const photometry = { verticals: candela.map((_, index) => index), horizontals: [0], candela: [candela] };
  const light = { kind: 'photometric', source: 'own.ies', turn: 0, photometry } as const;
  const lines = planText({ ...plan, lamps: { 'porch-lamp': { ...lamp, light } } }).split('\n');
  const filled = lines.filter((line) => /^ *10\d\d,/.test(line));
  expect(filled.flatMap((line) => line.match(/\d+/g) ?? []).map(Number)).toEqual(candela);
  expect(filled.length).toBeLessThan(6);
  expect(filled.every((line) => line.length <= 100)).toBe(true);
  expect(lines).toContain('  "structureOrder": ["house", "hedge"],');
});
