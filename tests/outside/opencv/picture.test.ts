import { beforeAll, describe, expect, test } from 'vitest';
import { lensPicture } from '../../../src/assess/picture/lensPicture.ts';
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import { axesOf } from '../../../src/optics/projection.ts';
import { offLine } from '../../assess/picture/offLine.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';
import { openCv, type Projections } from './openCv.ts';

let library: Projections;
beforeAll(async () => {
  library = await openCv();
});

const LENSES = [
  ['rectilinear', 1],
  ['equidistant', 0],
] as const;

describe.each(LENSES)('straight edges seen by a %s lens', (name, k) => {
  test('are drawn within 0.1 px of where OpenCV puts their places', () => {
    const chance = chanceFrom(4520);
    let asked = 0;
    for (let trial = 0; trial < trials(40, 2000); trial += 1) {
      const camera = cameraWith({
        k,
        eye: [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 6)],
        pan: chance.between(0, 360),
        tilt: chance.between(-60, 90),
        // Not turned: what is drawn stands as it is recorded.
        roll: chance.between(-40, 40),
        focalLength: chance.between(1.6, 9),
      });
      const { right, down, forward } = axesOf(camera);
      const any = (): Vec3 => {
        const [off, round, far] = [
          chance.between(0.02, 1.25),
          chance.between(0, 6.283),
          chance.between(1, 40),
        ];
        const [r, d, f] = [Math.sin(off) * Math.cos(round), Math.sin(off) * Math.sin(round), Math.cos(off)];
        const on = (axis: 0 | 1 | 2) =>
          camera.eye[axis] + far * (r * right[axis] + d * down[axis] + f * forward[axis]);
        return [on(0), on(1), on(2)];
      };
      const [from, to] = [any(), any()];
      const parts = lensPicture(camera).segment(from, to);
      const places = Array.from({ length: 30 }, (_, step): Vec3 => {
        const t = (step + 0.5) / 30;
        const on = (axis: 0 | 1 | 2) => from[axis] + (to[axis] - from[axis]) * t;
        return [on(0), on(1), on(2)];
      });
      library[name](camera, places).forEach(([u, v], at) => {
        const place: Vec2 = [u, v];
        if (u < 0 || v < 0 || u > camera.frame.width || v > camera.frame.height) return;
        asked += 1;
        expect(offLine(parts, place), `seed 4520, trial ${trial}, place ${at}`).toBeLessThan(0.1);
      });
      // And nothing is drawn that is not on the line: its corners lie near what OpenCV makes of places close together.
      const dense = Array.from({ length: 2001 }, (_, step): Vec3 => {
        const t = step / 2000;
        const on = (axis: 0 | 1 | 2) => from[axis] + (to[axis] - from[axis]) * t;
        return [on(0), on(1), on(2)];
      });
      const whole = [Float64Array.from(library[name](camera, dense).flat())];
      for (const part of parts)
        for (let at = 0; at + 1 < part.length; at += 2)
          expect(offLine(whole, [part[at] ?? 0, part[at + 1] ?? 0])).toBeLessThan(0.1);
    }
    expect(asked).toBeGreaterThan(trials(300, 15_000));
  });
});
