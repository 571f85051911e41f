import { describe, expect, test } from 'vitest';
import type { Tree } from '../../../src/model/structure.ts';
import type { Patch, Situation } from '../../../src/plan/plan.ts';
import {
  barrier,
  block,
  face,
  house,
  nearly,
  night,
  ringOf,
  said,
  severities,
  type Site,
  window,
  square,
} from './sites.ts';

/* What stands between the camera and what is asked, may grow, was not tried, or not measured. The camera of sites.ts. */

describe('row 23, how much room a sight line has', () => {
  const beside = (clear: number, more: Partial<Site> = {}): Site => ({
    structures: [block([clear, 5, 3, 6], [0, 3])],
    asked: [face([[0, 10]])],
    ...more,
  });

  test('less than 0.15 m past an edge', () => {
    expect(severities(23, beside(0.151))).toBe('');
    expect(said(23, beside(0.149))[0]?.figures).toMatchObject({
      thing: 'block',
      clear: nearly(0.149, 9),
    });
    expect(severities(23, beside(0.151, { cautions: { 'clear.solid': 0.16 } }))).toBe('tight');
  });

  test('less than 0.30 m past leaves', () => {
    const hedge = (clear: number): Site => ({
      structures: [
        barrier([
          [clear + 0.2, 5],
          [clear + 0.2, 6],
        ]),
      ],
      asked: [face([[0, 10]])],
    });
    expect(severities(23, hedge(0.29))).toBe('tight');
    expect(severities(23, hedge(0.31))).toBe('');
  });

  test('over an edge too, and not where the line is blocked', () => {
    const wall = (height: number): Site => ({
      structures: [block([-2, 5, 2, 6], [0, height])],
      asked: [face([[0, 10]])],
    });
    expect(severities(23, wall(1.44))).toBe('');
    expect(severities(23, wall(1.46))).toBe('tight');
    expect(severities(23, wall(1.7))).toBe('');
  });
});

describe('row 24, growth', () => {
  /*
   * 3 m up, tilted 30°: at y ahead the picture is 2 (y cos 30° + 3 sin 30°) wide, so that from y₁ to y₂ it covers
   * cos 30° (y₂² − y₁²) + 3 (y₂ − y₁). A hedge across it, 1 m high and 0.2 m thick, hides from its far edge at 5.1 m to
   * 5.1 × 3 ÷ 2; in 3 years it is 1.9 m high and 0.65 m thick. It covers its own ground as well.
   */
  const covered = (from: number, to: number) =>
    Math.cos(Math.PI / 6) * (to * to - from * from) + 3 * (to - from);
  const area = covered(4.675, 4.9) + covered((5.1 * 3) / 2, (5.325 * 3) / 1.1);
  const site = (cautions: NonNullable<Site['cautions']>): Site => ({
    eye: [0, 0, 3],
    camera: { tilt: 30 },
    structures: [
      barrier(
        [
          [-30, 5],
          [30, 5],
        ],
        { height: 1, thickness: 0.2 },
      ),
    ],
    plan: { boundary: ringOf(-40, -1, 40, 60) },
    cautions,
  });

  test('tells the ground that it will hide, exactly', () => {
    const [one] = said(24, site({}));
    expect(one?.figures).toMatchObject({ years: 3, area: nearly(area, 6) });
    expect(severities(24, site({ 'growth.area': area + 0.001 }))).toBe('');
    expect(severities(24, site({ 'growth.area': area - 0.001 }))).toBe('tell');
  });

  test('by the rate and the years of the plan, and of no wall', () => {
    const [one] = said(24, site({ 'growth.years': 2, 'growth.hedge': 0.45 }));
    expect(one?.figures).toMatchObject({ years: 2, area: nearly(area, 6) });
    const wall = barrier(
      [
        [-30, 5],
        [30, 5],
      ],
      { sort: 'wall', height: 1, thickness: 0.2 },
    );
    expect(severities(24, { ...site({}), structures: [wall] })).toBe('');
  });

  test('a tree’s crown grows to every side by half of the rate', () => {
    // From 900 m above, its shadow is its outline, c r², to a few parts in a hundred: from 2 m to 2.75 m and to 3.5 m.
    const tree: Tree = {
      kind: 'tree',
      id: 'tree',
      name: 'Tree',
      hidden: false,
      locked: false,
      at: [0, 0],
      base: 0,
      height: 6,
      crownRadius: 2,
      clear: 2,
      trunkDiameter: 0.3,
      inLeaf: true,
      got: { at: 'measured', height: 'measured', crown: 'measured' },
    };
    const lens = { ...square.lens, shortest: 400, longest: 400, focalLength: 400 };
    const after = (years: number): number => {
      const [one] = said(24, {
        eye: [0, 0, 900],
        camera: { tilt: 90, device: { ...square, lens } },
        structures: [tree],
        plan: { boundary: ringOf(-8, -5, 8, 5) },
        cautions: { 'growth.years': years },
      });
      return one?.figures.row === 24 ? one.figures.area : 0;
    };
    const ratio = (2.75 ** 2 - 4) / (3.5 ** 2 - 4);
    expect(after(6)).toBeGreaterThan(20);
    expect(Math.abs(after(3) / after(6) / ratio - 1)).toBeLessThan(0.02);
  });
});

describe('row 26, what was not tried', () => {
  const garage = (width: number) =>
    window({ id: 'garage', name: 'Garage door', kind: 'door', width, height: 2.1, sill: 0 });
  const drive = (width: number, more: Partial<Site> = {}): Site => ({
    eye: [5, -12, 2],
    structures: [house({ openings: [garage(width)], wallThickness: null })],
    ...more,
  });
  const van = (y: number) =>
    ({
      kind: 'vehicle',
      sort: 'van',
      id: 'van',
      name: 'Van',
      hidden: false,
      locked: false,
      at: [4, y],
      heading: 0,
      base: 0,
      length: 5.5,
      width: 2,
      height: 2.5,
      got: { at: 'measured', size: 'measured' },
    }) as const;

  test('nothing is parked before a door as wide as a vehicle', () => {
    expect(severities(26, drive(2.09))).toBe('');
    expect(severities(26, drive(2.11))).toBe('tight');
    const with_ = (y: number) => ({
      ...drive(2.11),
      structures: [...(drive(2.11).structures ?? []), van(y)],
    });
    expect(severities(26, with_(-2.8))).toBe('');
    expect(severities(26, with_(-6))).toBe('tight');
  });

  test('nor on a drive, where the camera sees it', () => {
    const patch: Patch = {
      id: 'drive',
      name: 'Drive',
      outline: ringOf(-2, 4, 2, 9),
      base: 0,
      pitch: 2,
      rises: 0,
      got: 'measured',
    };
    const plan = { patches: { drive: patch }, patchOrder: ['drive'] };
    expect(severities(26, { plan })).toBe('tight');
    expect(severities(26, { plan, camera: { pan: 180 } })).toBe('');
  });

  test('a door of a hollow house was tried in one position only', () => {
    const door = window({ id: 'door', name: 'Door', kind: 'door', width: 0.9, height: 2, sill: 0 });
    const opened: Situation = {
      ...night,
      id: 'open',
      name: 'Door open',
      night: false,
      leaves: { door: 'open' },
    };
    const site: Site = { eye: [4, -6, 2], structures: [house({ openings: [door] })] };
    expect(said(26, site)[0]?.figures).toMatchObject({ what: 'leaf', thing: 'Door' });
    expect(severities(26, { ...site, situations: [opened] })).toBe('');
    expect(severities(26, { ...site, camera: { pan: 180 } })).toBe('');
  });
});

test('row 27, mesh that closes up', () => {
  // Square on, 45° at the picture's sides is far above 30°. Turned by 20° one side is seen at 25°.
  const fence = (turn: number) =>
    barrier(
      [
        [-20 * Math.cos((turn * Math.PI) / 180), 8 - 20 * Math.sin((turn * Math.PI) / 180)],
        [20 * Math.cos((turn * Math.PI) / 180), 8 + 20 * Math.sin((turn * Math.PI) / 180)],
      ],
      { sort: 'fence', passage: 'screen', thickness: 0.05 },
    );
  expect(severities(27, { structures: [fence(0)] })).toBe('');
  expect(severities(27, { structures: [fence(20)] })).toBe('tight');
  expect(severities(27, { structures: [{ ...fence(20), passage: 'solid' }] })).toBe('');
  const [one] = said(27, { structures: [fence(20)] });
  const share = one?.figures.row === 27 ? one.figures.share : 0;
  expect(severities(27, { structures: [fence(20)], cautions: { 'closing.share': share } })).toBe('');
});

describe('row 28, sizes on which it turns', () => {
  const over = (height: number, got: 'measured' | 'mapped' | 'guessed'): Site => ({
    structures: [
      block([-2, 5, 2, 6], [0, height], { got: { outline: 'measured', base: 'measured', height: got } }),
    ],
    asked: [face([[0, 10]])],
  });

  test.each([
    // A level line 1.6 m up: mapped heights are ± 1 m, guessed ones ± 20 %.
    [0.59, 'mapped', ''],
    [0.61, 'mapped', 'tight'],
    [1.33, 'guessed', ''],
    [1.34, 'guessed', 'tight'],
    [1.5, 'measured', ''],
    // Blocked, and free where it is lower.
    [2.59, 'mapped', 'tight'],
    [2.61, 'mapped', ''],
    [1.99, 'guessed', 'tight'],
    [2.01, 'guessed', ''],
  ] as const)('%d m high, %s: %s', (height, got, expected) => {
    expect(severities(28, over(height, got))).toBe(expected);
  });

  test('where it stands, mapped to 0.5 m', () => {
    const beside = (x: number): Site => ({
      structures: [
        block([x, 5, 3, 6], [0, 3], { got: { outline: 'mapped', base: 'measured', height: 'measured' } }),
      ],
      asked: [face([[0, 10]])],
    });
    expect(severities(28, beside(0.51))).toBe('');
    expect(said(28, beside(0.49))[0]?.figures).toMatchObject({ size: 'place', tolerance: 0.5 });
  });

  test('not where something else hides it all the same', () => {
    const site = over(2.4, 'mapped');
    const wall = block([-2, 7, 2, 8], [0, 3], { id: 'wall' });
    expect(severities(28, site)).toBe('tight');
    expect(severities(28, { ...site, structures: [...(site.structures ?? []), wall] })).toBe('');
  });
});
