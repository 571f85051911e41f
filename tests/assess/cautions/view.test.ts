import { describe, expect, test } from 'vitest';
import {
  barrier,
  block,
  face,
  house,
  infrared,
  nearly,
  night,
  onWall,
  said,
  severities,
  type Site,
} from './sites.ts';

/* The camera of sites.ts: 90° across, 1280 px for each metre a metre away, 2560 × 1440; at the origin, level, to the north. */

describe('row 12, near things throw infrared back', () => {
  /** A cube in the middle of the picture, its face so far away and so wide. */
  const cube = (near: number, side: number) =>
    block([-side / 2, near, side / 2, near + 0.2], [1.6 - side / 2, side]);

  test.each([
    [0.29, 0.05, 'tight'],
    // 0.31 m away: 1 % of the picture is a side of 46.5 mm, 5 % one of 104 mm.
    [0.31, 0.045, ''],
    [0.31, 0.049, 'tell'],
    [0.31, 0.1, 'tell'],
    [0.31, 0.108, 'tight'],
    // 0.99 m away: 5 % is a side of 332 mm.
    [0.99, 0.36, 'tight'],
    [1.01, 0.36, ''],
  ])('%d m away, %d m wide: %s', (near, side, expected) => {
    expect(severities(12, { structures: [cube(near, side)], camera: infrared })).toBe(expected);
  });

  test('says how many times the light, by the law of the inverse square, and nothing by day', () => {
    const structures = [cube(0.25, 0.05)];
    const [one] = said(12, { structures, camera: infrared, asked: [face([[3, 9]])] });
    // What is asked is √90 m away.
    expect(one?.figures).toMatchObject({
      near: nearly(0.25, 9),
      times: nearly(90 / 0.0625, 6),
    });
    expect(severities(12, { structures })).toBe('');
    expect(severities(12, { structures, camera: infrared, situations: [night] })).toBe('tight');
  });

  test('sees what is in the beam beside the picture', () => {
    // 60° to the right, beyond the picture's 45°.
    const structures = [block([0.2, 0.1, 0.25, 0.16], [1.5, 0.2])];
    expect(severities(12, { structures, camera: { infrared: { range: 30, beam: 140 } } })).toBe('tight');
    expect(severities(12, { structures, camera: infrared })).toBe('');
  });

  test('a face nearer than 1.5 m', () => {
    const at = (y: number) => severities(12, { asked: [face([[0, y]])], camera: infrared });
    expect(at(1.49)).toBe('tell');
    expect(at(1.51)).toBe('');
  });
});

describe('row 13, its own wall', () => {
  /**
   * Straight out of the south wall the picture ends 45° to each side. Turned by a, its right side is δ = 45 − a off the wall;
   * its corners are nearest: sin = √2 sin δ ÷ |(1, 1, 0.5625)|, which is 5° at δ = 5.382°.
   */
  const turned = (a: number, along = 5, beam: number | null = null): Site => ({
    structures: [house()],
    camera: { ...onWall(along, 3), pan: 180 + a, infrared: beam === null ? null : { range: 30, beam } },
  });

  test('nearer than 5° to the picture’s corner', () => {
    expect(severities(13, turned(45 - 5.44))).toBe('');
    expect(severities(13, turned(45 - 5.32))).toBe('tell');
    expect(severities(13, turned(45 - 5.32, 5, 60))).toBe('tight');
    const [past] = said(13, turned(60));
    // Past the wall it is the middle of that side that lies farthest beyond: 45 − 60°.
    expect(past?.figures).toMatchObject({ what: 'picture', angle: nearly(-15, 9) });
  });

  test('says nothing where the wall ends beside the lens', () => {
    // Looking south, the right of the picture is the west, where the wall begins 0.4 m away.
    expect(severities(13, turned(45 - 3, 0.4))).toBe('');
    expect(severities(13, turned(45 - 3, 0.6))).toBe('tell');
  });

  test('nearer than 5° to the edge of the beam', () => {
    // Turned 10°, the axis is 80° off the wall.
    expect(severities(13, turned(10, 5, 149))).toBe('');
    expect(severities(13, turned(10, 5, 151))).toBe('tight');
  });

  test('the underside of its own eaves', () => {
    const eaves = house({ roof: { kind: 'hip', pitch: 30, overhang: 0.5, ridge: null, parapet: 0 } });
    const at = (height: number): Site => ({ structures: [eaves], camera: onWall(5, height) });
    // The picture ends 29.36° above level, 0.4 m out to the eaves' edge: 0.225 m higher.
    expect(severities(13, at(5 - 0.24))).toBe('');
    expect(said(13, at(5 - 0.2))[0]?.figures).toMatchObject({ what: 'soffit' });
  });
});

describe('rows 14 and 15, what is above', () => {
  test('a dome needs something within 45° above it', () => {
    // Its lower edge 2 m above the lens, so far to the east.
    const cover = (from: number) => block([from, -1, from + 1, 1], [3.6, 0.05]);
    const dome = { housing: 'dome' } as const;
    expect(severities(14, { camera: dome })).toBe('tell');
    expect(severities(14, { camera: dome, structures: [cover(1.95)] })).toBe('');
    expect(severities(14, { camera: dome, structures: [cover(2.06)] })).toBe('tell');
    expect(severities(14, { camera: { ...dome, ...infrared }, structures: [cover(-0.5)] })).toBe('tight');
    // A wall 2 m beside it, 1.9 m above it, is none.
    const wall = block([2, -1, 3, 1], [0, 3.5]);
    expect(severities(14, { camera: dome, structures: [wall] })).toBe('tell');
    expect(severities(14, { camera: { housing: 'bullet' } })).toBe('');
  });

  test('infrared under cover, or near leaves', () => {
    const cover = (up: number) => block([-1, -1, 1, 1], [1.6 + up, 0.1]);
    expect(severities(15, { structures: [cover(0.99)], camera: infrared })).toBe('tell');
    expect(severities(15, { structures: [cover(1.01)], camera: infrared })).toBe('');
    expect(severities(15, { structures: [cover(0.99)] })).toBe('');
    const hedge = (y: number) =>
      barrier([
        [-2, y + 0.2],
        [2, y + 0.2],
      ]);
    expect(severities(15, { structures: [hedge(1.99)], camera: infrared })).toBe('tell');
    expect(severities(15, { structures: [hedge(2.01)], camera: infrared })).toBe('');
  });
});

describe('row 16, the sun over a year', () => {
  const origin = { latitude: 50, longitude: 0, trueNorth: 0 };
  const looking = (pan: number, more: Partial<Site> = {}): Site => ({
    camera: { pan },
    plan: { origin },
    ...more,
  });

  test('stands before a camera that looks south or west, not before one that looks north and down', () => {
    expect(severities(16, looking(180))).toBe('tight');
    expect(severities(16, looking(270))).toBe('tight');
    expect(severities(16, { camera: { pan: 0, tilt: 40 }, plan: { origin } })).toBe('');
    expect(severities(16, { camera: { pan: 180 } })).toBe('');
  });

  test('hides behind what stands in the way', () => {
    // South of the camera the sun stands at most 90 − 50 + 23.4 = 63.4° high; behind 10 m of wall, 2 m away, 77°.
    const wall = block([-200, -3, 200, -2], [0, 10]);
    expect(severities(16, looking(180, { structures: [wall] }))).toBe('');
  });

  test('its minutes are a setting', () => {
    const [one] = said(16, looking(270));
    const minutes = one?.figures.row === 16 ? one.figures.minutes : 0;
    expect(minutes).toBeGreaterThan(60);
    expect(severities(16, looking(270, { cautions: { 'sun.minutes': minutes } }))).toBe('');
    expect(severities(16, looking(270, { cautions: { 'sun.minutes': minutes - 1 } }))).toBe('tight');
  });

  test('turns with true north', () => {
    // Where +y points west (270° from true north), pan 180 looks east: mornings only.
    const [one] = said(16, { camera: { pan: 180 }, plan: { origin: { ...origin, trueNorth: 270 } } });
    expect(one?.figures.row === 16 ? one.figures.to : 24).toBeLessThan(13);
    expect(one?.figures.row === 16 ? one.figures.from : 0).toBeLessThan(6);
  });
});
