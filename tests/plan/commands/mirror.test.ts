import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../../src/base/fault.ts';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import { solidsOf } from '../../../src/model/solids.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { mirrorThings, moveThings, turnThings } from '../../../src/plan/commands/moveThings.ts';
import type { Movable } from '../../../src/plan/commands/thing.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { bodyOf, eyesOf, randomPlan, troubleOf } from '../randomPlan.ts';
import { wholePlan } from '../wholePlan.ts';

const valueOf = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};

const all = (plan: Plan): Movable[] => [
  ...plan.structureOrder.map((id): Movable => ({ kind: 'structure', id })),
  ...plan.cameraOrder.map((id): Movable => ({ kind: 'camera', id })),
];

/** Without openings that do not fit: their distance past the end of a wall is not what a mirror can give back. */
const plain = (plan: Plan): Plan => ({
  ...plan,
  structures: Object.fromEntries(
    Object.entries(plan.structures).map(([id, structure]): [string, Structure] => {
      if (!('openings' in structure)) return [id, structure];
      const wrong = new Set(
        solidsOf(structure).faults.map(({ path: [list, index] }) => (list === 'openings' ? index : null)),
      );
      return [id, { ...structure, openings: structure.openings.filter((_, k) => !wrong.has(k)) }];
    }),
  ),
});

const seeds = Array.from({ length: trials(150, 3000) }, (_, index) => 41_000 + index);

/** Complex numbers are the oracle: a turn is a product, a mirror a conjugate. */
type Complex = readonly [number, number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];

interface Way {
  readonly name: string;
  readonly run: (plan: Plan, things: readonly Movable[]) => Outcome<Plan>;
  readonly place: (at: Vec2) => Vec2;
  /** A direction over ground. */
  readonly way: (along: Vec2) => Vec2;
  readonly mirrors: boolean;
}

const turned: Way = {
  name: 'turned by 30° clockwise about (3, −2)',
  run: (plan, things) => turnThings(plan, things, [3, -2], 30),
  way: (along) => times(along, [Math.sqrt(3) / 2, -0.5]),
  place: ([x, y]) => {
    const [u, v] = times([x - 3, y + 2], [Math.sqrt(3) / 2, -0.5]);
    return [u + 3, v - 2];
  },
  mirrors: false,
};

// A line that rises three in four: doubled, its direction is (4 + 3i)² / 25.
const line: Complex = [7 / 25, 24 / 25];
const mirrored: Way = {
  name: 'mirrored in the line from (1, 1) to (5, 4)',
  run: (plan, things) => mirrorThings(plan, things, [1, 1], [5, 4]),
  way: ([x, y]) => times(line, [x, -y]),
  place: ([x, y]) => {
    const [u, v] = times(line, [x - 1, 1 - y]);
    return [u + 1, v + 1];
  },
  mirrors: true,
};

const slid: Way = {
  name: 'moved by (3.5, −2.25)',
  run: (plan, things) => moveThings(plan, things, [3.5, -2.25]),
  way: (along) => along,
  place: ([x, y]) => [x + 3.5, y - 2.25],
  mirrors: false,
};

describe.each([slid, turned, mirrored])('$name', ({ run, place, way, mirrors }) => {
  test.each(seeds)('everything is where the formula has it (seed %i)', (seed) => {
    const chance = chanceFrom(seed);
    const plan = plain(randomPlan(chance));
    const next = valueOf(run(plan, all(plan)));
    // A leaf that stands open swings to the left of the way its fence was drawn, which a mirror does not turn round.
    const hasHands = mirrors && Object.values(plan.structures).some((s) => s.kind === 'barrier');
    for (const id of plan.structureOrder) {
      const [was, is] = [plan.structures[id], next.structures[id]];
      if (!was || !is) throw new Error('a structure is gone');
      const shut = <T extends typeof was>(structure: T): T =>
        hasHands && 'openings' in structure
          ? {
              ...structure,
              openings: structure.openings.map((opening) =>
                opening.leaf === 'open' ? { ...opening, leaf: 'closed' } : opening,
              ),
            }
          : structure;
      // A crown is a ball of flat faces that lie the same way wherever it stands: of a tree its place is asked.
      const isTree = was.kind === 'tree' && is.kind === 'tree';
      const off = isTree ? distance([...is.at, 0], [...place(was.at), 0]) : 0;
      expect(off).toBeLessThan(1e-9);
      if (isTree) continue;
      const [wanted, made] = [bodyOf(shut(was), place), bodyOf(shut(is))];
      // The posts of a canopy stand square to one of the edges at their corner, which in the mirror is the other.
      const within = was.kind === 'canopy' && mirrors ? 0.05 : 1e-5;
      expect(made).toHaveLength(wanted.length);
      wanted.forEach((value, k) =>
        expect(Math.abs((made[k] ?? Infinity) - value), `${was.kind} ${k}`).toBeLessThan(
          within + 1e-8 * Math.abs(value),
        ),
      );
    }
    expect(troubleOf(next)).toEqual(troubleOf(plan));
    const [before, after] = [eyesOf(plan), eyesOf(next)];
    expect(Object.keys(after)).toEqual(Object.keys(before));
    for (const [id, [x, y, z]] of Object.entries(before)) {
      const [u, v] = place([x, y]);
      expect(distance(after[id], [u, v, z])).toBeLessThan(1e-6);
      const [was, is] = [plan.cameras[id], next.cameras[id]];
      if (!was || !is) throw new Error('a camera is gone');
      const [east, north] = way(headingOf(was.pan));
      expect(distance([...headingOf(is.pan), 0], [east, north, 0])).toBeLessThan(1e-9);
      expect(is.roll).toBeCloseTo(mirrors ? -was.roll : was.roll, 9);
    }
  });
});

const headingOf = (pan: number): Vec2 => [Math.sin((pan * Math.PI) / 180), Math.cos((pan * Math.PI) / 180)];

const distance = (a: Vec3 | undefined, b: Vec3): number =>
  a ? Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) : Infinity;

test.each(seeds.slice(0, 100))('mirrored twice in the same line, a plan is as it was (seed %i)', (seed) => {
  const plan = randomPlan(chanceFrom(seed));
  const twice = valueOf(mirrored.run(valueOf(mirrored.run(plan, all(plan))), all(plan)));
  const flat = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value), (_, part: unknown) =>
      typeof part === 'number' ? Math.round(part * 1e6) / 1e6 + 0 : part,
    );
  const withoutRidges = (of: Plan): unknown =>
    flat({
      ...of,
      structures: Object.values(of.structures).map((structure) =>
        structure.kind === 'building'
          ? { ...structure, roof: { ...structure.roof, ridge: null } }
          : structure,
      ),
      // Bearings come back within a whole turn.
      cameras: Object.values(of.cameras).map((camera) => ({
        ...camera,
        pan: Math.round(camera.pan * 1e6) % 360e6,
      })),
    });
  expect(solidHeading(twice)).toBeCloseTo(solidHeading(plan), 6);
  expect(withoutRidges(withoutHeading(twice))).toEqual(withoutRidges(withoutHeading(plan)));
});

const solidHeading = (plan: Plan): number => {
  const [structure] = Object.values(plan.structures);
  return structure?.kind === 'vehicle' ? Math.cos((structure.heading * Math.PI) / 180) : 0;
};

const withoutHeading = (plan: Plan): Plan => ({
  ...plan,
  structures: Object.fromEntries(
    Object.entries(plan.structures).map(([id, structure]) => [
      id,
      structure.kind === 'vehicle' ? { ...structure, heading: 0 } : structure,
    ]),
  ),
});

describe('moveThings', () => {
  test('no way at all is the very same plan', () => {
    const plan = wholePlan();
    expect(valueOf(moveThings(plan, all(plan), [0, 0]))).toBe(plan);
    expect(valueOf(turnThings(plan, all(plan), [0, 0], 360))).toBe(plan);
    // On its wall a camera stays.
    expect(valueOf(moveThings(plan, [{ kind: 'camera', id: 'C1' }], [1, 0]))).toBe(plan);
  });

  test('leaves what was not chosen the very objects that they were', () => {
    const plan = wholePlan();
    const next = valueOf(moveThings(plan, [{ kind: 'structure', id: 'hedge' }], [1, 2]));
    expect(next.structures['house']).toBe(plan.structures['house']);
    expect(next.cameras).toBe(plan.cameras);
    expect(next.structures['hedge']).toMatchObject({
      line: [
        [-1, -4],
        [11, -4],
      ],
    });
  });

  test('refuses what would be farther out than a site reaches', () => {
    const outcome = moveThings(wholePlan(), [{ kind: 'structure', id: 'hedge' }], [200_000, 0]);
    expect(outcome).toMatchObject({
      ok: false,
      faults: [{ code: 'coordinate.far', subject: 'Hedge' }, { code: 'coordinate.far' }],
    });
  });

  test('lamps, patches, pictures and the boundary turn with the rest', () => {
    const plan: Plan = {
      ...wholePlan(),
      boundary: [
        [0, 0],
        [4, 0],
        [4, 2],
      ],
    };
    const things: Movable[] = [
      { kind: 'lamp', id: 'porch-lamp' },
      { kind: 'patch', id: 'drive' },
      { kind: 'picture', id: 'deed' },
      { kind: 'picture', id: 'cafe' },
      { kind: 'boundary' },
    ];
    const next = valueOf(turnThings(plan, things, [0, 0], 90));
    expect(next.lamps['porch-lamp']?.at).toEqual([-0.1, -3]);
    expect(next.patches['drive']).toMatchObject({ rises: 90, outline: { 0: [-5, -9] } });
    expect(next.pictures['deed']?.use).toMatchObject({ at: [12, 10], turn: 94 });
    expect(next.pictures['cafe']?.use).toMatchObject({ at: [-6, -4, 1.6], heading: 80 });
    expect(next.boundary).toEqual([
      [0, 0],
      [0, -4],
      [2, -4],
    ]);
  });

  test('a mirrored picture keeps its middle where the mirror has it, and can still be read', () => {
    const plan = wholePlan();
    const next = valueOf(mirrorThings(plan, [{ kind: 'picture', id: 'deed' }], [0, 0], [0, 1]));
    // 30 m by 22.5 m, its up at 4°: the middle is 15 m to its right and 11.25 m down.
    const [s, c] = [Math.sin(Math.PI / 45), Math.cos(Math.PI / 45)];
    const middle = [-10 + 15 * c - 11.25 * s, 12 - 15 * s - 11.25 * c];
    const use = next.pictures['deed']?.use;
    if (use?.kind !== 'site') throw new Error('no site picture');
    expect(use.turn).toBe(356);
    expect(use.at[0] + 15 * c + 11.25 * s).toBeCloseTo(-(middle[0] ?? 0), 9);
    expect(use.at[1] + 15 * s - 11.25 * c).toBeCloseTo(middle[1] ?? 0, 9);
  });
});
