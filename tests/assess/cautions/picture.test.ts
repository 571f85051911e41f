import { describe, expect, test } from 'vitest';
import type { Structure } from '../../../src/model/structure.ts';
import type { Lamp } from '../../../src/plan/plan.ts';
import {
  barrier,
  block,
  face,
  house,
  infrared,
  nearly,
  night,
  said,
  severities,
  type Site,
  siteOf,
  window,
} from './sites.ts';

/* The camera of sites.ts: 90° across, 1280 px for each metre a metre away, 2560 × 1440; at the origin, level, to the north. */

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const PICTURE = 2560 * 1440;

describe('row 17, sky', () => {
  // Tilted down by t the horizon is 1280 tan t above the middle: 15 % of 1440 px are above it at 21.49°, 30 % at 12.68°.
  test.each([
    [21.6, ''],
    [21.4, 'tell'],
    [12.8, 'tell'],
    [12.5, 'tight'],
  ])('tilted %d°: %s', (tilt, expected) => {
    expect(severities(17, { camera: { tilt } })).toBe(expected);
  });

  test('says its share to half a per cent, and what stands before it takes some away', () => {
    const share = (site: Site): number => {
      const [one] = said(17, site);
      return one?.figures.row === 17 ? one.figures.share : 0;
    };
    expect(Math.abs(share({ camera: { tilt: 10 } }) - (0.5 - (1280 * tan(10)) / 1440))).toBeLessThan(0.005);
    // A wall to the west covers the left half.
    const wall = block([-30, 2, 0, 3], [0, 30]);
    expect(Math.abs(share({ structures: [wall] }) - 0.25)).toBeLessThan(0.005);
  });
});

describe('row 18, a face before an opening to the open', () => {
  // From 1 m before the south wall, inside, an archway in the outer north face is 9 m away: (1280/9)² px for each m².
  const arch = (height: number) =>
    window({
      id: 'arch',
      name: 'Archway',
      kind: 'archway',
      face: 2,
      along: 3,
      width: 4,
      height,
      sill: 0,
      leaf: 'open',
    });
  const inside = (height: number): Site => ({
    eye: [5, 1, 1.6],
    structures: [house({ openings: [arch(height)] })],
    asked: [face([[5, 5]])],
  });

  test('fills more than 5 % of the picture', () => {
    const share = (4 * 2.3 * (1280 / 9) ** 2) / PICTURE;
    expect(share).toBeGreaterThan(0.05);
    expect(said(18, inside(2.3))[0]?.figures).toMatchObject({
      opening: 'Archway',
      share: nearly(share, 9),
    });
    expect(severities(18, inside(2.27))).toBe('');
  });

  test('only where light comes through: not by a closed door, by a glazed one', () => {
    const door = (leaf: 'closed' | 'glazed') => ({ ...arch(2.3), kind: 'door', leaf }) as const;
    const site = (leaf: 'closed' | 'glazed'): Site => ({
      ...inside(2.3),
      structures: [house({ openings: [door(leaf)] })],
    });
    expect(severities(18, site('closed'))).toBe('');
    expect(severities(18, site('glazed'))).toBe('tight');
  });

  test('is nothing from the open, and nothing before a wall', () => {
    const outside: Site = { ...inside(2.3), eye: [5, -3, 1.6], camera: { pan: 0 } };
    expect(severities(18, outside)).toBe('');
    expect(severities(18, { ...inside(2.3), asked: [face([[8, 5]])], cautions: {} })).toBe('');
  });
});

describe('row 19, lamps and headlamps', () => {
  const lamp = (y: number, x = 0): Lamp => ({
    id: 'lamp',
    name: 'Street lamp',
    at: [x, y],
    height: 1.6,
    light: { kind: 'range', range: 10 },
    got: 'measured',
  });
  const lit = (one: Lamp, structures: readonly Structure[] = []): Site => ({
    camera: infrared,
    structures,
    plan: { lamps: { lamp: one }, lampOrder: ['lamp'] },
  });

  test('a lamp in the picture, nearer than 30 m, that nothing hides', () => {
    expect(severities(19, lit(lamp(29.9)))).toBe('tell');
    expect(severities(19, lit(lamp(30.1)))).toBe('');
    expect(severities(19, lit(lamp(10, 9.9)))).toBe('tell');
    expect(severities(19, lit(lamp(10, 10.1)))).toBe('');
    expect(severities(19, { ...lit(lamp(20)), structures: [block([-1, 5, 1, 6], [0, 3])] })).toBe('');
    expect(severities(19, { ...lit(lamp(20)), structures: [block([-1, 5, 1, 6], [0, 1])] })).toBe('tell');
    expect(severities(19, { ...lit(lamp(20)), camera: {} })).toBe('');
  });

  test('a vehicle that stands with its front to the lens, within 20°', () => {
    const van = (heading: number): Structure => ({
      kind: 'vehicle',
      sort: 'van',
      id: 'van',
      name: 'Van',
      hidden: false,
      locked: false,
      at: [0, 12],
      heading,
      base: 0,
      length: 5.5,
      width: 2,
      height: 2.5,
      got: { at: 'measured', size: 'measured' },
    });
    expect(severities(19, { camera: infrared, structures: [van(180 + 19.9)] })).toBe('tell');
    expect(severities(19, { camera: infrared, structures: [van(180 + 20.1)] })).toBe('');
    expect(severities(19, { camera: infrared, structures: [van(0)] })).toBe('');
  });
});

describe('row 20, infrared', () => {
  const short = (distance: number, range: number, band = 'recognise'): string =>
    severities(20, { asked: [face([[0, distance]], { band })], camera: { infrared: { range, beam: 100 } } });

  test('is sure to half of its range for faces, to 0.7 of it else, and fails beyond it', () => {
    expect(short(9.9, 20)).toBe('');
    expect(short(10.1, 20)).toBe('tight');
    expect(short(10.1, 10.2)).toBe('tight');
    expect(short(10.1, 10)).toBe('fails');
    expect(short(13.9, 20, 'observe')).toBe('');
    expect(short(14.1, 20, 'observe')).toBe('tight');
  });

  test('fails beside the beam', () => {
    // 40° to the side, 5 m ahead, is 4.195 m.
    const beside = (x: number) =>
      severities(20, { asked: [face([[x, 5]])], camera: infrared, cautions: { 'infrared.beside': 1 } });
    expect(beside(4.18)).toBe('');
    expect(beside(4.21)).toBe('fails');
  });

  test('a lamp that lights the place makes it good', () => {
    const lamp: Lamp = {
      id: 'lamp',
      name: 'Lamp',
      at: [0, 11],
      height: 3,
      light: { kind: 'range', range: 5 },
      got: 'measured',
    };
    const site = (lampOrder: readonly string[]): Site => ({
      asked: [face([[0, 10.1]])],
      camera: { infrared: { range: 10, beam: 100 } },
      situations: [night],
      plan: { lamps: { lamp }, lampOrder },
    });
    expect(severities(20, site([]))).toBe('fails');
    expect(severities(20, site(['lamp']))).toBe('');
  });

  test('a picture wider than the beam', () => {
    // Beyond 45° of the axis, 1280 px: of a quarter of 1280 × 720 px what lies out of that circle, by the integral of √(R² − v²).
    const [r, v] = [1280, 720];
    const within = (v / 2) * Math.sqrt(r * r - v * v) + ((r * r) / 2) * Math.asin(v / r);
    const share = 1 - within / (r * v);
    const [one] = said(20, { camera: { infrared: { range: 30, beam: 90 } } });
    expect(share).toBeGreaterThan(0.05);
    expect(one?.figures.row === '20.beam' ? Math.abs(one.figures.share - share) : 1).toBeLessThan(0.005);
    expect(severities(20, { camera: { infrared: { range: 30, beam: 95 } } })).toBe('');
  });
});

test('row 21, only a camera that turns', () => {
  const asked = [face([[0, 10]])];
  const plan = siteOf({ asked, camera: { housing: 'panTiltZoom' } });
  expect(severities(21, plan)).toBe('tight');
  const [own] = Object.values(plan.cameras);
  if (own === undefined) throw new Error('a site has a camera');
  const second = (y: number) => {
    const fixed = {
      ...own,
      id: 'C2',
      name: 'C2',
      housing: 'turret',
      mount: { kind: 'loose', eye: [0, y, 1.6] },
    } as const;
    return { ...plan, cameras: { C1: own, C2: fixed }, cameraOrder: ['C1', 'C2'] };
  };
  // 1280 px/m ÷ 125 is 10.24 m.
  expect(severities(21, second(-0.2))).toBe('');
  expect(severities(21, second(-0.3))).toBe('tight');
  expect(severities(21, { asked, camera: { housing: 'turret' } })).toBe('');
});

test('row 22, glass within the infrared range', () => {
  const pane = block([-1, 5, 1, 5.02], [0, 3], { passage: 'clear' });
  const at = (range: number) =>
    severities(22, { structures: [pane], camera: { infrared: { range, beam: 80 } } });
  expect(at(5.05)).toBe('fails');
  expect(at(4.95)).toBe('');
  expect(severities(22, { structures: [pane] })).toBe('');
  // Behind a wall it throws nothing back.
  const wall = block([-1, 4, 1, 4.1], [0, 3], { id: 'wall' });
  expect(severities(22, { structures: [wall, pane], camera: { infrared: { range: 30, beam: 80 } } })).toBe(
    '',
  );
});

test('row 25, leaves', () => {
  const hedge = (y: number) =>
    barrier([
      [-20, y + 0.2],
      [20, y + 0.2],
    ]);
  const some = { 'leaves.share': 0.01 };
  expect(severities(25, { structures: [hedge(9.8)], cautions: some })).toBe('tell');
  expect(severities(25, { structures: [hedge(10.02)], cautions: some })).toBe('');
  // 8 m away and 3 m high from the ground, 1.6 m below the lens to 1.4 m above: 1280 × 3/8 of 1440 px, over the whole width.
  const all = { 'leaves.far': 100 };
  const [one] = said(25, { structures: [hedge(8)], cautions: all });
  const share = one?.figures.row === 25 ? one.figures.share : 0;
  expect(Math.abs(share - (1280 * 3) / 8 / 1440)).toBeLessThan(0.005);
  expect(
    severities(25, { structures: [hedge(8)], cautions: { ...all, 'leaves.share': share + 0.001 } }),
  ).toBe('');
  expect(
    severities(25, { structures: [hedge(8)], cautions: { ...all, 'leaves.share': share - 0.001 } }),
  ).toBe('tell');
  expect(
    severities(25, {
      structures: [
        barrier(
          [
            [-20, 8.2],
            [20, 8.2],
          ],
          { sort: 'wall' },
        ),
      ],
      cautions: all,
    }),
  ).toBe('');
});
