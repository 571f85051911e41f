import { describe, expect, it } from 'vitest';
import { clearPlace, type Rect } from '../../src/view3d/parts/clearPlace.ts';

const within = { width: 900, height: 850 };
const size = { width: 440, height: 30 };
const scale: Rect = { left: 12, top: 790, width: 640, height: 48 };
const north: Rect = { left: 740, top: 790, width: 150, height: 48 };
const tools: Rect = { left: 12, top: 56, width: 36, height: 70 };
const top: Rect = { left: 12, top: 12, width: 876, height: 30 };
const over = [scale, north, tools, top];

const apart = (place: { x: number; y: number }, { left, top: y, width, height }: Rect): boolean =>
  place.x >= left + width ||
  place.x + size.width <= left ||
  place.y >= y + height ||
  place.y + size.height <= y;

describe('clearPlace', () => {
  it('lies just above what stands at the bottom', () => {
    const place = clearPlace(size, within, over, null, null);
    expect(place.x).toBe(230);
    expect(place.y + size.height).toBeLessThanOrEqual(780);
    expect(place.y + size.height).toBeGreaterThan(770);
  });

  it('is at least 24 px from the pointer and covers nothing, wherever that is', () => {
    for (let x = 0; x <= 900; x += 45)
      for (let y = 0; y <= 850; y += 17) {
        const place = clearPlace(size, within, over, { x, y }, null);
        for (const rect of over) expect(apart(place, rect)).toBe(true);
        expect(apart(place, { left: x - 24, top: y - 24, width: 48, height: 48 })).toBe(true);
      }
  });

  it('stays where it was while that will do', () => {
    const before = { x: 300, y: 400 };
    expect(clearPlace(size, within, over, { x: 100, y: 100 }, before)).toEqual(before);
    expect(clearPlace(size, within, over, { x: 310, y: 380 }, before)).not.toEqual(before);
  });

  it('covers nothing that can be pressed where no place is clear of the pointer too', () => {
    // A phone: tools to the left, the touch bar below, and a finger in the middle of what is left.
    const phone = { width: 390, height: 330 };
    const wide = { width: 308, height: 92 };
    const pressed = [
      { left: 12, top: 12, width: 46, height: 260 },
      { left: 0, top: 282, width: 390, height: 48 },
    ];
    const place = clearPlace(wide, phone, pressed, { x: 200, y: 110 }, null);
    for (const { left, top: y, width, height } of pressed)
      expect(
        place.x >= left + width ||
          place.x + wide.width <= left ||
          place.y >= y + height ||
          place.y + wide.height <= y,
      ).toBe(true);
    expect(place.x + wide.width).toBeLessThanOrEqual(390);
  });

  it('goes above the pointer where that is where it would lie', () => {
    const wide = { width: 876, height: 30 };
    const place = clearPlace(wide, within, [scale, north, top], { x: 450, y: 740 }, null);
    expect(place.y + 30).toBeLessThanOrEqual(716);
  });
});
