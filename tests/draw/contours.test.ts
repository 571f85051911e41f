import { describe, expect, test } from 'vitest';
import { contours, type Grain, type Sector } from '../../src/draw/contours.ts';
import { densityAt } from '../../src/optics/density.ts';
import type { Camera } from '../../src/optics/camera.ts';

const grain: Grain = { bearing: 4, ratio: 1.16, sagitta: 0.002 };
const camera = (more: Partial<Camera> = {}): Camera => ({
  id: 'C1',
  name: 'C1',
  eye: [2, 3, 3.2],
  pan: 40,
  tilt: 24,
  roll: 0,
  focalLength: 2.8,
  k: 1,
  sensor: { width: 5.37, height: 3.04 },
  frame: { width: 2688, height: 1520 },
  range: 60,
  ...more,
});
const sector: Sector = { foot: [2, 3], start: 0, span: 360, least: 0.03, greatest: 90 };
const all = (): boolean => true;
const fieldOf = (of: Camera) => (a: number, b: number) => densityAt(of, [a, b, 0])?.horizontal ?? null;

/**
 * px/m of a pinhole camera from its closed form: with D = f·X, ρ² = x² + y² and m = (−Δx, −Δy, ρ²)/ρ,
 * d² = f²(|X|² − (f·m)²)/D⁴, where m is the unit vector square to X and to the horizontal across it, times |X|.
 * Derived apart from the engine's Jacobian.
 */
function pinholeDensity(of: Camera, a: number, b: number): number {
  const [x, y, z] = [a - of.eye[0], b - of.eye[1], -of.eye[2]];
  const [p, t] = [(of.pan * Math.PI) / 180, (of.tilt * Math.PI) / 180];
  const f = [Math.cos(t) * Math.sin(p), Math.cos(t) * Math.cos(p), -Math.sin(t)] as const;
  const over = Math.hypot(x, y);
  const far2 = over * over + z * z;
  const ahead = f[0] * x + f[1] * y + f[2] * z;
  const square = (f[0] * x * -z + f[1] * y * -z + f[2] * over * over) / over;
  const pixels = (of.focalLength * of.frame.width) / of.sensor.width;
  return (pixels * Math.sqrt(far2 - square * square)) / (ahead * ahead);
}

describe('band lines', () => {
  test('every point of a pinhole camera’s lines has its threshold within 0.01 %, by the closed form', () => {
    const of = camera();
    const lines = contours({
      sector,
      density: fieldOf(of),
      seen: all,
      thresholds: [25, 62.5, 125, 250],
      grain,
    });
    expect(new Set(lines.map(({ band }) => band))).toEqual(new Set([0, 1, 2, 3]));
    for (const { band, points } of lines) {
      const wanted = [25, 62.5, 125, 250][band] ?? 0;
      for (let i = 0; i < points.length; i += 2) {
        const d = pinholeDensity(of, points[i] ?? 0, points[i + 1] ?? 0);
        expect(Math.abs(d / wanted - 1)).toBeLessThan(1e-4);
      }
    }
  });

  test.each([0.5, 0, -0.5])('a lens with k = %f is met as exactly', (k) => {
    const density = fieldOf(camera({ k }));
    const lines = contours({ sector, density, seen: all, thresholds: [62.5, 125], grain });
    expect(lines.length).toBeGreaterThan(1);
    for (const { band, points } of lines)
      for (let i = 0; i < points.length; i += 2)
        expect((density(points[i] ?? 0, points[i + 1] ?? 0) ?? 0) / (band === 0 ? 62.5 : 125)).toBeCloseTo(
          1,
          4,
        );
  });

  test('chords lie within the sagitta of the curve', () => {
    const density = (a: number, b: number) => 100 / Math.hypot(a - 2, b - 3);
    const [circle] = contours({ sector, density, seen: all, thresholds: [10], grain });
    if (!circle) throw new Error('no line');
    for (let i = 2; i < circle.points.length; i += 2) {
      const [a, b] = [
        ((circle.points[i] ?? 0) + (circle.points[i - 2] ?? 0)) / 2,
        ((circle.points[i + 1] ?? 0) + (circle.points[i - 1] ?? 0)) / 2,
      ];
      expect(Math.abs(Math.hypot(a - 2, b - 3) - 10)).toBeLessThan(0.002);
    }
  });

  test('a line that goes all the way round closes', () => {
    const density = (a: number, b: number) => 100 / Math.hypot(a - 2, b - 3);
    const lines = contours({ sector, density, seen: all, thresholds: [10], grain });
    expect(lines).toHaveLength(1);
    const { points } = lines[0] ?? { points: new Float64Array() };
    expect(
      Math.hypot((points[0] ?? 0) - (points.at(-2) ?? 9), (points[1] ?? 0) - (points.at(-1) ?? 9)),
    ).toBeLessThan(1e-6);
  });

  test('lines end where what is seen ends, to a millimetre', () => {
    const density = (a: number, b: number) => 100 / Math.hypot(a - 2, b - 3);
    const lines = contours({ sector, density, seen: (a, b) => b > 3.5 && a < 8, thresholds: [10], grain });
    expect(lines).toHaveLength(1);
    const { points } = lines[0] ?? { points: new Float64Array() };
    const ends = [
      [points[0] ?? 0, points[1] ?? 0],
      [points.at(-2) ?? 0, points.at(-1) ?? 0],
    ].sort((one, two) => (one[0] ?? 0) - (two[0] ?? 0));
    expect(ends[0]?.[1]).toBeCloseTo(3.5, 2);
    expect(ends[1]?.[0]).toBeCloseTo(8, 2);
    for (let i = 0; i < points.length; i += 2) {
      expect(points[i]).toBeLessThan(8.001);
      expect(points[i + 1]).toBeGreaterThan(3.499);
    }
  });

  test('places without an image make no line', () => {
    const lines = contours({ sector, density: () => null, seen: all, thresholds: [10], grain });
    expect(lines).toEqual([]);
  });
});
