import { describe, expect, test } from 'vitest';
import type { Photometry } from '../../src/optics/light.ts';
import { candelaAt, luxAt } from '../../src/optics/photometry.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

/** Candela that differ from row to row and from angle to angle, so that a wrong place shows. */
const lamp = (horizontals: readonly number[]): Photometry => ({
  verticals: [0, 20, 50, 90],
  horizontals,
  candela: horizontals.map((_, row) => [100, 90 - row, 60 + 3 * row, 10 + 7 * row]),
});

describe('candela', () => {
  test('are those given at the angles given', () => {
    const photometry = lamp([0, 30, 90]);
    photometry.horizontals.forEach((horizontal, row) =>
      photometry.verticals.forEach((vertical, at) =>
        expect(candelaAt(photometry, vertical, horizontal)).toBeCloseTo(
          photometry.candela[row]?.[at] ?? NaN,
          12,
        ),
      ),
    );
  });

  test('are linear between angles, both ways', () => {
    const photometry = lamp([0, 90, 180]);
    // A third of the way down from 20° to 50°, a half from C0 to C90.
    const row = (at: number) => 90 - at + (60 + 3 * at - (90 - at)) / 3;
    expect(candelaAt(photometry, 30, 45)).toBeCloseTo((row(0) + row(1)) / 2, 12);
  });

  test('end with the last vertical angle', () => {
    const photometry = lamp([0]);
    expect(candelaAt(photometry, 90, 0)).toBe(10);
    expect(candelaAt(photometry, 90.001, 0)).toBe(0);
    const upwards = { verticals: [90, 180], horizontals: [0], candela: [[5, 50]] };
    expect(candelaAt(upwards, 89.999, 0)).toBe(0);
    expect(candelaAt(upwards, 180, 0)).toBe(50);
  });

  test('of one horizontal angle are the same all round', () => {
    for (const horizontal of [0, 77, 180, 359, -40, 800])
      expect(candelaAt(lamp([0]), 50, horizontal)).toBe(60);
  });

  test('of a quarter are mirrored in both planes', () => {
    const photometry = lamp([0, 40, 90]);
    for (const horizontal of [0, 15, 40, 66, 90])
      for (const same of [180 - horizontal, 180 + horizontal, 360 - horizontal, -horizontal])
        expect(candelaAt(photometry, 35, same)).toBeCloseTo(candelaAt(photometry, 35, horizontal), 10);
    expect(candelaAt(photometry, 35, 10)).not.toBeCloseTo(candelaAt(photometry, 35, 80), 1);
  });

  test('of a half are mirrored in the plane of C0', () => {
    const photometry = lamp([0, 60, 120, 180]);
    for (const horizontal of [0, 35, 90, 150, 180])
      expect(candelaAt(photometry, 35, 360 - horizontal)).toBeCloseTo(
        candelaAt(photometry, 35, horizontal),
        10,
      );
    expect(candelaAt(photometry, 35, 150)).not.toBeCloseTo(candelaAt(photometry, 35, 30), 1);
  });

  test('a degree past the plane of a mirror are those a degree before it', () => {
    const steep = (horizontals: readonly number[]) => (horizontal: number) =>
      candelaAt(
        {
          verticals: [0, 90],
          horizontals,
          candela: [
            [1, 1],
            [9, 9],
            [2, 2],
          ],
        },
        40,
        horizontal,
      );
    const half = steep([0, 179, 180]);
    expect([half(179.5), half(180.5)]).toEqual([expect.closeTo(5.5, 10), expect.closeTo(5.5, 10)]);
    expect([half(181), half(359.999)]).toEqual([expect.closeTo(9, 10), expect.closeTo(1, 3)]);
    const quarter = steep([0, 89, 90]);
    for (const same of [89.5, 90.5, 269.5, 270.5]) expect(quarter(same), `${same}`).toBeCloseTo(5.5, 10);
    for (const same of [89, 91, 269, 271]) expect(quarter(same), `${same}`).toBeCloseTo(9, 10);
  });

  test('of the other half are mirrored in the plane of C90', () => {
    const photometry = lamp([90, 180, 270]);
    for (const horizontal of [90, 120, 180, 250, 270])
      expect(candelaAt(photometry, 35, 180 - horizontal)).toBeCloseTo(
        candelaAt(photometry, 35, horizontal),
        10,
      );
    expect(candelaAt(photometry, 35, 100)).not.toBeCloseTo(candelaAt(photometry, 35, 260), 1);
    // A degree past either end is a degree before it.
    const steep = {
      verticals: [0, 90],
      horizontals: [90, 91, 269, 270],
      candela: [
        [1, 1],
        [9, 9],
        [5, 5],
        [2, 2],
      ],
    };
    for (const [past, same] of [
      [89.5, 5],
      [89, 9],
      [270.5, 3.5],
      [271, 5],
      [0, 7],
      [90.5, 5],
      [91, 9],
      [269, 5],
    ] as const)
      expect(candelaAt(steep, 40, past), `${past}`).toBeCloseTo(same, 10);
  });

  test('are mirrored only where they end at such planes', () => {
    // All round in four angles, without the first once more: between the last and the first it goes once round.
    const round = lamp([0, 90, 180, 270]);
    const at = (horizontal: number) => candelaAt(round, 90, horizontal);
    expect([at(0), at(90), at(180), at(270)]).toEqual([10, 17, 24, 31]);
    expect(at(45)).toBeCloseTo((10 + 17) / 2, 10);
    expect(at(225)).toBeCloseTo((24 + 31) / 2, 10);
    expect(at(300)).toBeCloseTo((2 * 31 + 10) / 3, 10);
    expect(at(-30)).toBeCloseTo((31 + 2 * 10) / 3, 10);
  });

  test('go once round where the first angle is not 0', () => {
    const turned = lamp([30, 150, 270]);
    const at = (horizontal: number) => candelaAt(turned, 90, horizontal);
    // 120° from 270 to 390: a quarter, half and three quarters of the way from 24 cd to 10 cd.
    expect(at(300)).toBeCloseTo(20.5, 10);
    expect(at(330)).toBeCloseTo(17, 10);
    expect(at(0)).toBeCloseTo(13.5, 10);
    expect(at(360)).toBeCloseTo(13.5, 10);
    expect(at(29.999)).toBeCloseTo(10, 2);
    // 90 alone is no half: the ends are 90 and 200.
    expect(candelaAt(lamp([90, 200]), 90, 80)).toBeCloseTo(17 + (240 / 250) * (10 - 17), 10);
  });

  test('stand at their own angles among many, and in line between', () => {
    const many = Array.from({ length: 37 }, (_, at) => at * 5);
    const photometry = {
      verticals: many,
      horizontals: [0],
      candela: [many.map((angle) => (angle % 10) * 4)],
    };
    for (const angle of many) expect(candelaAt(photometry, angle, 0), `${angle}`).toBe((angle % 10) * 4);
    // A degree before each: four fifths of the way, up or down.
    for (const angle of many.slice(1))
      expect(candelaAt(photometry, angle - 1, 0), `${angle - 1}`).toBeCloseTo(angle % 10 === 0 ? 4 : 16, 10);
  });

  test('of all angles are taken as they are', () => {
    const photometry = lamp([0, 90, 180, 270, 360]);
    expect(candelaAt(photometry, 90, 270)).toBe(31);
    expect(candelaAt(photometry, 90, -90)).toBeCloseTo(31, 12);
    expect(candelaAt(photometry, 90, 315)).toBeCloseTo((31 + 38) / 2, 12);
  });

  test('never leave what the four nearest angles give', () => {
    const chance = chanceFrom(71);
    const photometry = lamp([0, 45, 90, 135, 180]);
    const all = photometry.candela.flat();
    for (let trial = 0; trial < trials(200, 20_000); trial += 1) {
      const value = candelaAt(photometry, chance.between(0, 90), chance.between(-720, 720));
      expect(value).toBeGreaterThanOrEqual(Math.min(...all));
      expect(value).toBeLessThanOrEqual(Math.max(...all));
    }
  });
});

test('light falls with the square of the way, and flat on a surface unless told otherwise', () => {
  expect(luxAt(lamp([0]), 0, 0, 2)).toBe(25);
  expect(luxAt(lamp([0]), 0, 0, 5, 60)).toBeCloseTo(2, 12);
});

test('light on the back of a surface counts as none', () => {
  expect(luxAt(lamp([0]), 0, 0, 2, 120)).toBe(0);
  expect(luxAt(lamp([0]), 0, 0, 2, 90)).toBe(0);
});
