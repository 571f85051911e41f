import { describe, expect, test } from 'vitest';
import type { Building } from '../../../src/model/structure.ts';
import type { Mount } from '../../../src/optics/mount.ts';
import type { Patch, PlanCamera } from '../../../src/plan/plan.ts';
import {
  barrier,
  block,
  face,
  house,
  nearly,
  onWall,
  ringOf,
  said,
  severities,
  type Site,
  siteOf,
  square,
  window,
  wall,
} from './sites.ts';

/* Holes, fixings, cables and neighbours. The plate of sites.ts is 0.1 m square, in its middle the hole. */

const limits = { pan: null, tilt: null, roll: null };
const plate = { width: 0.1, height: 0.1, right: 0, up: 0 };

const eaves = (yearBuilt: number | null): Site => {
  const mount: Mount = {
    kind: 'soffit',
    host: 'house',
    face: 0,
    corner: 'start',
    distance: 5,
    inset: 0.3,
    drop: 0.1,
    plate,
    limits,
  };
  const roof = { kind: 'hip', pitch: 30, overhang: 0.6, ridge: null, parapet: 0 } as const;
  return { structures: [house({ roof, yearBuilt })], camera: { mount, pan: 180 } };
};

test('row 33, soffits of before 2000 or of no known year', () => {
  expect(severities(33, eaves(1999))).toBe('stop');
  expect(severities(33, eaves(2000))).toBe('');
  expect(severities(33, eaves(null))).toBe('stop');
  expect(severities(33, wall(5, 2))).toBe('');
});

describe('row 34, the ladder', () => {
  const why = (site: Site): string =>
    said(34, site)
      .map(({ severity, figures }) => `${severity} ${figures.row === 34 ? figures.why : ''}`)
      .join();

  test('above 2 m, a quarter of its height out; a stop above 5 m', () => {
    expect(why(wall(5, 1.99))).toBe('');
    const [one] = said(34, wall(5, 2.01));
    expect(one?.figures).toMatchObject({ out: nearly(2.01 / 4, 9), on: 'ground', why: null });
    expect(why(wall(5, 4.9))).toBe('tell null');
    const high = (height: number) => wall(5, height, { height: 6 });
    expect(why(high(4.99))).toBe('tell null');
    expect(why(high(5.01))).toBe('stop high');
  });

  test('on something that stands there, beyond the boundary, or on a slope', () => {
    // 4 m up its foot is 1 m before the wall.
    const step = (y: number) => ({ ...wall(5, 4), structures: [house(), block([4, y - 1, 6, y], [0, 0.3])] });
    expect(why(step(-0.99))).toBe('stop thing');
    expect(why(step(-1.01))).toBe('tell null');
    const within = (y: number) => ({ ...wall(5, 4), plan: { boundary: ringOf(-1, y, 11, 11) } });
    expect(why(within(-0.99))).toBe('stop neighbour');
    expect(why(within(-1.01))).toBe('tell null');
    const drive = (pitch: number): Site => {
      const patch: Patch = {
        id: 'p',
        name: 'P',
        outline: ringOf(0, -5, 10, 0),
        base: 0,
        pitch,
        rises: 0,
        got: 'measured',
      };
      return { ...wall(5, 4), plan: { patches: { p: patch }, patchOrder: ['p'] } };
    };
    expect(why(drive(3.1))).toBe('stop slope');
    expect(why(drive(2.9))).toBe('tell null');
  });
});

test('row 35, a narrow lens on a high post or a long arm', () => {
  // 8 mm of sensor: 30° across is 14.93 mm.
  const lens = (focalLength: number): Partial<PlanCamera> => ({
    device: { ...square, lens: { ...square.lens, shortest: focalLength, longest: focalLength, focalLength } },
  });
  const pole = (height: number, focalLength: number) =>
    severities(35, {
      camera: {
        ...lens(focalLength),
        mount: { kind: 'pole', at: [0, 0], height, reach: 0.2, facing: 0, diameter: 0.1, limits },
      },
    });
  expect(pole(3.01, 15)).toBe('tell');
  expect(pole(2.99, 15)).toBe('');
  expect(pole(3.01, 14.8)).toBe('');
  const arm = (reach: number) =>
    severities(35, {
      structures: [house()],
      camera: {
        ...lens(15),
        mount: {
          kind: 'arm',
          host: 'house',
          face: 0,
          corner: 'start',
          distance: 5,
          height: 2,
          reach,
          drop: 0,
          plate,
          limits,
        },
        pan: 180,
      },
    });
  expect(arm(0.51)).toBe('tell');
  expect(arm(0.49)).toBe('');
});

test('row 36, a flue below or beside the lens', () => {
  // The lens is 0.1 m before the wall, 5 m along.
  const flue = (along: number, height: number): Site =>
    wall(5, 2.5, {
      services: [
        {
          id: 'flue',
          name: 'Boiler flue',
          kind: 'flue',
          face: 0,
          along,
          height,
          inside: false,
          got: 'measured',
        },
      ],
    });
  const near = Math.sqrt(1 - 0.01);
  expect(severities(36, flue(5 + near - 0.001, 2.5))).toBe('tell');
  expect(severities(36, flue(5 + near + 0.001, 2.5))).toBe('');
  expect(severities(36, flue(5, 2.5 - near + 0.001))).toBe('tell');
  expect(severities(36, flue(5, 2.5 + 0.19))).toBe('tell');
  expect(severities(36, flue(5, 2.5 + 0.21))).toBe('');
});

test('row 37, the hole of the cable', () => {
  const shifted = (right: number) => {
    const { mount, ...camera } = onWall(5, 2);
    if (mount?.kind !== 'flush') throw new Error('a flush mount');
    return { structures: [house()], camera: { ...camera, mount: { ...mount, plate: { ...plate, right } } } };
  };
  expect(said(37, wall(5, 2))[0]?.figures).toMatchObject({
    rise: nearly(0.3 * Math.tan(Math.PI / 36), 12),
    bare: false,
  });
  expect(said(37, wall(5, 2, { wallThickness: null }))[0]?.figures).toMatchObject({ rise: null });
  // A plug of 20 mm needs 10 mm to each side of the hole: the plate of 0.1 m may lie 40 mm aside.
  expect(said(37, shifted(0.039))[0]?.figures).toMatchObject({ bare: false });
  expect(said(37, shifted(0.041))[0]?.figures).toMatchObject({ bare: true });
  expect(severities(37, eaves(null))).toBe('');
});

test('row 38, another building, a post, a fence', () => {
  const shed = (x: number): Building => house({ id: 'shed', name: 'Shed', outline: ringOf(x, 0, x + 3, 3) });
  const { mount } = onWall(1, 2);
  if (mount?.kind !== 'flush') throw new Error('a flush mount');
  const on = (x: number): Site => ({
    structures: [house(), shed(x)],
    camera: { mount: { ...mount, host: 'shed' }, pan: 180 },
  });
  expect(severities(38, on(10.29))).toBe('');
  expect(said(38, on(10.31))[0]?.figures).toMatchObject({ why: 'building', thing: 'Shed' });
  expect(severities(38, wall(5, 2))).toBe('');
  // A bin store against the house is part of it, one apart is not.
  const store = (x: number): Site => ({
    structures: [house(), block([x, 0, x + 2, 2], [0, 3], { id: 'store', name: 'Store' })],
    camera: { mount: { ...mount, host: 'store' }, pan: 180 },
  });
  expect(severities(38, store(10.1 - 1))).toBe('');
  expect(said(38, store(10.31))[0]?.figures).toMatchObject({ why: 'building', thing: 'Store' });
  const post: Site = {
    structures: [house()],
    camera: { mount: { kind: 'pole', at: [5, -7], height: 3, reach: 0.2, facing: 0, diameter: 0.1, limits } },
  };
  expect(said(38, post)[0]?.figures).toMatchObject({ why: 'pole', distance: nearly(7, 9) });
  const fence = barrier(
    [
      [0, -5],
      [10, -5],
    ],
    { id: 'fence', sort: 'wall' },
  );
  expect(
    said(38, { structures: [house(), fence], camera: { mount: { ...mount, host: 'fence' } } })[0]?.figures,
  ).toMatchObject({ why: 'gate' });
});

test('row 39, the power budget', () => {
  const { sheet } = Object.values(siteOf({}).cameras)[0] ?? {};
  if (sheet === undefined) throw new Error('a site has a camera');
  // Class 3 reserves 15.4 W (facts W1): with 20 % to spare a budget of 19.25 W is enough.
  const at = (budget: number): Site => ({
    camera: { sheet: { ...sheet, powerClass: 3 } },
    cautions: { 'power.budget': budget },
  });
  expect(severities(39, at(19.26))).toBe('');
  expect(said(39, at(19.24))[0]?.figures).toMatchObject({ reserved: 15.4, spare: nearly(3.84, 9) });
  expect(severities(39, at(0))).toBe('');
});

describe('row 40, beyond the boundary', () => {
  // Straight down from 3 m every place has 426.7 px/m, and the picture covers 6 × 3.375 m of ground.
  const down = (x: number, cautions: NonNullable<Site['cautions']> = {}): Site => ({
    eye: [0, 0, 3],
    camera: { tilt: 90 },
    plan: { boundary: ringOf(-9, -9, x, 9) },
    cautions,
  });

  test('tells the ground, exactly', () => {
    const [one] = said(40, down(2));
    expect(one?.figures).toMatchObject({ area: nearly(3.375, 6), openings: [] });
    expect(severities(40, down(2, { 'beyond.area': 3.376 }))).toBe('');
    expect(severities(40, down(3))).toBe('');
    expect(severities(40, { eye: [0, 0, 3], camera: { tilt: 90 } })).toBe('');
  });

  test('only where it is recognised, also aside of the axis', () => {
    /*
     * Level and 1.6 m up. A step square to the bearing β at (x, y) moves the image by 1280/y × 1/cos β across and by
     * 1280/y × 1.6 sin β ÷ y down: at least 125 px/m together. Added up in strips 1 mm deep from y = 11 m to the last.
     */
    const isKnown = (x: number, y: number) => {
      const far = Math.hypot(x, y);
      return (1280 / y) * Math.hypot(far / y, (1.6 * x) / far / y) >= 125;
    };
    let area = 0;
    for (let y = 11.0005; isKnown(y, y); y += 0.001) {
      let [out, within] = [0, y];
      for (let halving = 0; halving < 40; halving += 1) {
        const x = (out + within) / 2;
        if (isKnown(x, y)) within = x;
        else out = x;
      }
      area += 2 * (y - within) * 0.001;
    }
    const [one] = said(40, { plan: { boundary: ringOf(-40, -1, 40, 11) } });
    expect(area).toBeGreaterThan(10);
    expect(one?.figures).toMatchObject({ area: nearly(area, 3) });
    expect(severities(40, { plan: { boundary: ringOf(-40, -1, 40, 14.6) } })).toBe('');
  });

  test('tells windows of the neighbour', () => {
    // The window's middle is 5 cm before the wall.
    const site = (y: number): Site => ({
      eye: [3.6, 0, 1.5],
      structures: [house({ outline: ringOf(0, y, 10, y + 5), openings: [window()] })],
      plan: { boundary: ringOf(-40, -40, 40, 10.15) },
      asked: [face([[0, 1]])],
      cautions: { 'beyond.area': 1000 },
    });
    expect(said(40, site(10.28))[0]?.figures).toMatchObject({ openings: ['Window of house'] });
    expect(severities(40, site(10.3))).toBe('');
  });
});
