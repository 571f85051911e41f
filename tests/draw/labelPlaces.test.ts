import { describe, expect, test } from 'vitest';
import { overlap, placeLabels, type Plate } from '../../src/draw/labelPlaces.ts';
import { chanceFrom } from '../house/seeded.ts';

const plate = (x: number, y: number, angle = 0): Plate => ({ x, y, width: 60, height: 16, angle });

describe('labels', () => {
  test('turned boxes overlap exactly where a point of one lies in the other (seed 3)', () => {
    const chance = chanceFrom(3);
    const holds = ({ x, y, width, height, angle }: Plate, px: number, py: number): boolean => {
      const rad = (angle * Math.PI) / 180;
      const [dx, dy] = [px - x, py - y];
      return (
        Math.abs(dx * Math.cos(rad) + dy * Math.sin(rad)) < width / 2 &&
        Math.abs(-dx * Math.sin(rad) + dy * Math.cos(rad)) < height / 2
      );
    };
    let met = 0;
    for (let i = 0; i < 400; i += 1) {
      const one = plate(0, 0, chance.between(-90, 90));
      const two = plate(chance.between(-70, 70), chance.between(-70, 70), chance.between(-90, 90));
      let shared = false;
      for (let x = -70; x <= 70 && !shared; x += 1)
        for (let y = -70; y <= 70 && !shared; y += 1) shared = holds(one, x, y) && holds(two, x, y);
      if (shared) met += 1;
      // A common point is proof; without one the common part is at most a pixel wide.
      expect(overlap(one, two, shared ? 0 : -2.5)).toBe(shared);
    }
    expect(met).toBeGreaterThan(50);
  });

  test('the first wish takes its best place, the next one its second, the last is dropped', () => {
    const spots = [plate(0, 0), plate(0, 30)];
    const placed = placeLabels(
      ['first', 'second', 'third'].map((label) => ({ label, places: spots })),
      [],
    );
    expect(placed.map(({ label, place }) => [label, place.y])).toEqual([
      ['first', 0],
      ['second', 30],
    ]);
  });

  test('nothing is put over what is taken', () => {
    expect(placeLabels([{ label: 'a', places: [plate(10, 0)] }], [plate(0, 0, 45)])).toEqual([]);
  });
});
