import type { Camera } from '../../src/optics/camera.ts';
import type { Chance } from '../house/seeded.ts';

/** A rectilinear camera 3 m up that looks north and level, but for what is given. */
export const cameraWith = (given: Partial<Camera> = {}): Camera => ({
  id: 'c',
  name: 'C1',
  eye: [0, 0, 3],
  pan: 0,
  tilt: 0,
  roll: 0,
  focalLength: 2.8,
  k: 1,
  sensor: { width: 5.6, height: 3.15 },
  frame: { width: 2560, height: 1440 },
  range: 60,
  ...given,
});

/** The five classical laws, and some between. */
export const LAWS = [1, 0.5, 0, -0.5, -1, 0.87, 0.3, 1e-4, -1e-4, -0.2, -0.75] as const;

/** A camera anywhere, turned anyhow, of any law; every third has pixels that are not square. */
export function anyCamera(chance: Chance): Camera {
  const width = chance.between(3, 13);
  const across = chance.whole(640, 4000);
  const square = chance.next() > 1 / 3;
  return cameraWith({
    eye: [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 8)],
    pan: chance.between(-360, 720),
    tilt: chance.between(-90, 90),
    roll: chance.pick([0, 90, chance.between(-180, 180)]),
    focalLength: chance.between(1.5, 12),
    k: chance.next() < 0.6 ? chance.pick(LAWS) : chance.between(-1, 1),
    sensor: { width, height: width * 0.6 },
    frame: { width: across, height: Math.round(across * (square ? 0.6 : chance.between(0.4, 0.9))) },
  });
}
