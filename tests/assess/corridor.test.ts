import { expect, test } from 'vitest';
import { sceneOf } from '../../src/assess/sceneOf.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { densityAt } from '../../src/optics/density.ts';
import { imageFromSite } from '../../src/optics/projection.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { wholePlan } from '../plan/wholePlan.ts';

/** The first camera of a plan, on its side or not, its recorded picture turned upright or not. */
function cameraOf(roll: number, use: 'recorded' | 'rotated'): Camera {
  const plan = wholePlan();
  const { C2 } = plan.cameras;
  if (!C2) throw new Error('no C2');
  const [mode] = C2.device.modes;
  if (!mode) throw new Error('no mode');
  const { width, height } = mode.frame;
  const frame = use === 'rotated' ? { width: height, height: width } : mode.frame;
  const device = { ...C2.device, modes: [{ ...mode, use, frame }] };
  const turned: Plan = { ...plan, cameras: { C2: { ...C2, roll, device } }, cameraOrder: ['C2'] };
  const [camera] = sceneOf(turned, null).cameras;
  if (!camera) throw new Error('not placed');
  return camera;
}

test.each([90, -90])(
  'the corridor format at %s° is the picture of the same camera on its side, turned back',
  (roll) => {
    const { width, height } = cameraOf(roll, 'recorded').frame;
    const [side, upright] = [cameraOf(roll, 'recorded'), cameraOf(roll, 'rotated')];
    expect(upright).toMatchObject({ roll: 0, frame: { width: height, height: width } });
    const chance = chanceFrom(20261125);
    let seen = 0;
    for (let k = 0; k < trials(300, 3000); k++) {
      const point = [chance.between(-6, 14), chance.between(-20, -6), chance.between(0, 4)] as const;
      const [one, other] = [imageFromSite(side, point), imageFromSite(upright, point)];
      expect(other === null).toBe(one === null);
      if (!one || !other) continue;
      seen += 1;
      // A camera on its right side has the sky at its picture's left edge, which is the top once it is turned back.
      const [u, v] = roll > 0 ? [height - one.v, one.u] : [one.v, width - one.u];
      expect(other.u).toBeCloseTo(u, 6);
      expect(other.v).toBeCloseTo(v, 6);
      expect(densityAt(upright, point)?.horizontal).toBeCloseTo(densityAt(side, point)?.horizontal ?? 0, 6);
    }
    expect(seen).toBeGreaterThan(100);
  },
);

test('a picture that is turned while the camera is not lies on its side', () => {
  expect(cameraOf(0, 'rotated').roll).toBe(-90);
});
