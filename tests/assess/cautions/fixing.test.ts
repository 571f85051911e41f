import { describe, expect, test } from 'vitest';
import { highestWithin } from '../../../src/assess/cautions/rows/withinReach.ts';
import type { Building, Service } from '../../../src/model/structure.ts';
import {
  barrier,
  block,
  house,
  nearly,
  onWall,
  said,
  severities,
  type Site,
  siteOf,
  window,
  wall,
} from './sites.ts';

/* Holes, fixings, cables and neighbours. The plate of sites.ts is 0.1 m square, in its middle the hole. */

const plate = { width: 0.1, height: 0.1, right: 0, up: 0 };

describe('row 29, within reach', () => {
  test('of the ground, less than 2.5 m below', () => {
    expect(severities(29, { eye: [0, 0, 2.49] })).toBe('tell');
    expect(severities(29, { eye: [0, 0, 2.51] })).toBe('');
    expect(severities(29, { eye: [0, 0, 2.51], cautions: { 'reach.height': 3 } })).toBe('tell');
  });

  test('of a top within 1 m sideways', () => {
    const bin = (x: number, top: number) => block([x, -1, x + 2, 1], [0, top]);
    const at = (x: number, top: number) => said(29, { eye: [0, 0, 3], structures: [bin(x, top)] });
    expect(at(0.99, 1)[0]?.figures).toMatchObject({ thing: 'block', height: nearly(2, 9) });
    expect(at(1.01, 1)).toHaveLength(0);
    expect(at(0.5, 0.49)).toHaveLength(0);
    expect(at(0.5, 0.51)).toHaveLength(1);
    // Nobody stands on the top of a fence, nor on a hedge.
    const thin = barrier(
      [
        [0.5, -3],
        [0.5, 3],
      ],
      { sort: 'fence', height: 1, thickness: 0.1 },
    );
    expect(severities(29, { eye: [0, 0, 3], structures: [thin] })).toBe('');
    expect(severities(29, { eye: [0, 0, 3], structures: [{ ...thin, thickness: 0.3 }] })).toBe('tell');
    expect(severities(29, { eye: [0, 0, 3], structures: [{ ...thin, thickness: 0.3, sort: 'hedge' }] })).toBe(
      '',
    );
  });

  test('the highest point of a slope within a distance', () => {
    // z = x ÷ 2: uphill from the origin it is 0.5 at 1 m; past a corner at x = 0.8 it is 0.4.
    const slope = (x: number) =>
      [
        [-3, -3, -1.5],
        [x, -3, x / 2],
        [x, 3, x / 2],
      ] as const;
    expect(
      highestWithin(
        [
          [-3, 3, -1.5],
          [-3, -3, -1.5],
          [5, 0, 2.5],
        ],
        [0, 0, 9],
        1,
      )?.[2],
    ).toBeCloseTo(0.5, 12);
    expect(highestWithin(slope(0.8), [0, 0, 9], 1)?.[2]).toBeCloseTo(0.4, 12);
    expect(highestWithin(slope(-1.5), [0, 0, 9], 1)).toBeNull();
  });
});

describe('row 30, holes near openings and edges', () => {
  // A window from 3 to 4.2 m along, its head 2.1 m up.
  const near = (along: number, height: number): string =>
    said(30, wall(along, height, { openings: [window()] }))
      .map(({ figures }) => (figures.row === 30 ? figures.what : ''))
      .join(' ');

  test('above it: the plate’s foot up to 0.30 m over its head, as far as 0.15 m beside it', () => {
    expect(near(3.6, 2.1 + 0.3 + 0.05 - 0.001)).toBe('lintel');
    expect(near(3.6, 2.1 + 0.3 + 0.05 + 0.001)).toBe('');
    expect(near(4.2 + 0.15 + 0.05 - 0.001, 2.3)).toBe('lintel');
    expect(near(4.2 + 0.15 + 0.05 + 0.001, 2.3)).toBe('');
  });

  test('beside it: the plate’s side up to 0.15 m from the jamb', () => {
    expect(near(4.2 + 0.15 + 0.05 - 0.001, 1.5)).toBe('jamb');
    expect(near(4.2 + 0.15 + 0.05 + 0.001, 1.5)).toBe('');
    expect(near(3 - 0.15 - 0.05 + 0.001, 1.5)).toBe('jamb');
    expect(near(3.6, 0.5)).toBe('');
  });

  test('0.10 m from an end or the top of the wall', () => {
    expect(near(0.149, 3)).toBe('edge');
    expect(near(0.151, 3)).toBe('');
    expect(near(9.851, 3)).toBe('edge');
    expect(near(7, 4.851)).toBe('edge');
    expect(near(7, 4.849)).toBe('');
  });

  test('counts the plate to its own side: 30 mm to the right, seen from outside', () => {
    const shifted = (along: number): Site => {
      const { mount, ...camera } = onWall(along, 1.5);
      if (mount?.kind !== 'flush') throw new Error('a flush mount');
      return {
        structures: [house({ openings: [window()] })],
        camera: { ...camera, mount: { ...mount, plate: { ...plate, right: 0.03 } } },
      };
    };
    // Seen from the south the window lies to the right of a hole west of it: the plate's right side is 0.08 m on.
    expect(severities(30, shifted(3 - 0.15 - 0.08 + 0.001))).toBe('stop');
    expect(severities(30, shifted(3 - 0.15 - 0.08 - 0.001))).toBe('');
  });

  test('a stop stays ticked until the hole moves', () => {
    const site = wall(3.6, 2.3, { openings: [window()] });
    const [one] = said(30, site);
    const looked = (along: number) => {
      const plan = siteOf(wall(along, 2.3, { openings: [window()] }));
      const [camera] = Object.values(plan.cameras);
      if (camera === undefined || one === undefined) throw new Error('a camera and a caution');
      const ticked = { ...camera, card: { ...camera.card, ticked: [one.id] } };
      return said(30, { ...plan, cameras: { C1: ticked } })[0]?.ticked;
    };
    expect(one).toMatchObject({ severity: 'stop', ticked: false });
    expect(looked(3.6)).toBe(true);
    expect(looked(3.7)).toBe(false);
  });
});

describe('row 31, the inner end of the hole', () => {
  const floors = [
    { name: 'Ground floor', level: 0.2, ceiling: 2.4 },
    { name: 'First floor', level: 2.9, ceiling: 2 },
  ];
  // Through 0.3 m the hole rises by 0.3 tan 5°.
  const rise = 0.3 * Math.tan(Math.PI / 36);
  const at = (height: number) => said(31, wall(5, height, { floors }))[0]?.figures;

  test('is told always, above its floor', () => {
    expect(at(2.5)).toMatchObject({
      floor: 'Ground floor',
      height: nearly(2.3 + rise, 9),
      inJoists: false,
    });
    expect(at(3.2)).toMatchObject({ floor: 'First floor', height: nearly(0.3 + rise, 9) });
    expect(at(1)).toMatchObject({ joists: { from: nearly(2.6, 9), to: 2.9 } });
    expect(severities(31, wall(5, 2))).toBe('stop');
  });

  test('among the joists from the ceiling to the next floor', () => {
    expect(at(2.6 - rise - 0.001)).toMatchObject({ inJoists: false });
    expect(at(2.6 - rise + 0.001)).toMatchObject({ inJoists: true });
    expect(at(2.9 - rise - 0.001)).toMatchObject({ inJoists: true });
    expect(at(2.9 - rise + 0.001)).toMatchObject({ inJoists: false, floor: 'First floor' });
  });

  test('is nothing of a garden wall', () => {
    const fence = barrier(
      [
        [0, 0],
        [10, 0],
      ],
      { id: 'house', sort: 'wall' },
    );
    expect(severities(31, { structures: [fence], camera: onWall(5, 2) })).toBe('');
  });
});

describe('row 32, where cables and pipes run', () => {
  const service = (kind: Service['kind'], along: number, height: number, inside: boolean): Service => ({
    id: 'service',
    name: 'Thing',
    kind,
    face: 0,
    along,
    height,
    inside,
    got: 'measured',
  });
  const rise = 0.3 * Math.tan(Math.PI / 36);
  const what = (along: number, height: number, more: Partial<Building>): string =>
    said(32, wall(along, height, more))
      .map(({ figures }) => (figures.row === 32 ? figures.what : ''))
      .join(' ');

  test('straight up, down and across from a point, 0.15 m to each side', () => {
    const socket = { services: [service('socket', 3, 0.45, true)] };
    expect(what(3.149, 3, socket)).toBe('line');
    expect(what(3.151, 3, socket)).toBe('');
    expect(what(7, 0.45 + 0.149 - rise, socket)).toBe('line');
    expect(what(7, 0.45 + 0.151 - rise, socket)).toBe('');
    const light = { services: [service('light', 3, 2.4, false)] };
    expect(what(7, 2.4 - 0.149, light)).toBe('line');
    expect(what(7, 2.4 - 0.151, light)).toBe('');
  });

  test('0.5 m from a meter', () => {
    const meter = { services: [service('meter', 3, 1, false)] };
    expect(what(3.3, 1.399, meter)).toBe('meter');
    expect(what(3.3, 1.401, meter)).toBe('');
    expect(what(3.1, 3, meter)).toBe('line');
  });

  test('0.15 m from the ceiling, or the corner of two walls inside', () => {
    const floors = { floors: [{ name: 'Ground floor', level: 0, ceiling: 2.4 }] };
    expect(what(5, 2.4 + 0.149 - rise, floors)).toBe('top');
    expect(what(5, 2.4 + 0.151 - rise, floors)).toBe('');
    expect(what(0.3 + 0.149, 3, {})).toBe('corner');
    expect(what(0.3 + 0.151, 3, {})).toBe('');
    expect(what(10 - 0.3 - 0.149, 3, {})).toBe('corner');
  });
});
