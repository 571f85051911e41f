import { describe, expect, test } from 'vitest';
import { frameCurve } from '../../src/draw/frameCurve.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { imageFromSite, siteRayFromImage } from '../../src/optics/projection.ts';

const camera = (k: number, tilt: number): Camera => ({
  id: 'C1',
  name: 'C1',
  eye: [0, 0, 3],
  pan: 30,
  tilt,
  roll: 10,
  focalLength: 2.8,
  k,
  sensor: { width: 5.37, height: 3.04 },
  frame: { width: 2688, height: 1520 },
  range: 30,
});

const land = (of: Camera) => (u: number, v: number) => {
  const ray = siteRayFromImage(of, { u, v });
  if (!ray || ray[2] > -0.01) return null;
  return [(-of.eye[2] * ray[0]) / ray[2], (-of.eye[2] * ray[1]) / ray[2]] as const;
};

describe('the frame’s edge on the ground', () => {
  test.each([1, 0.5, 0, -0.5])('its points have their image on the edge of the frame (k = %f)', (k) => {
    const of = camera(k, 35);
    const lines = frameCurve(2688, 1520, land(of), 0.004);
    expect(lines.length).toBeGreaterThan(2);
    for (const [a, b] of lines.flat()) {
      const at = imageFromSite(of, [a, b, 0]);
      if (!at) throw new Error('no image');
      const off = Math.min(Math.abs(at.u), Math.abs(at.u - 2688), Math.abs(at.v), Math.abs(at.v - 1520));
      expect(off).toBeLessThan(1e-6);
    }
  });

  test('chords lie within the sagitta: their middles are a hair from the edge in the picture', () => {
    const of = camera(0, 50);
    const lines = frameCurve(2688, 1520, land(of), 0.004);
    expect(lines.flat().length).toBeGreaterThan(40);
    for (const line of lines)
      line.slice(1).forEach(([a, b], i) => {
        const [x, y] = line[i] ?? [a, b];
        const at = imageFromSite(of, [(a + x) / 2, (b + y) / 2, 0]);
        const far = Math.hypot((a + x) / 2, (b + y) / 2, 3);
        if (!at) throw new Error('no image');
        const off = Math.min(Math.abs(at.u), Math.abs(at.u - 2688), Math.abs(at.v), Math.abs(at.v - 1520));
        // 4 mm at that distance, in pixels of this lens at its coarsest, with room for the curve between samples.
        expect(off).toBeLessThan(((0.004 * 1402) / far) * 2);
      });
  });

  test('a rectilinear lens needs no points between the ends of a side that lands', () => {
    const lines = frameCurve(2688, 1520, land(camera(1, 80)), 0.004);
    expect(lines).toHaveLength(4);
  });

  test('sides above the horizon are left out, others end near it', () => {
    const lines = frameCurve(2688, 1520, land(camera(1, 10)), 0.004);
    expect(lines).toHaveLength(3);
  });
});
