import type { Camera } from '../../src/optics/camera.ts';

/** A rectilinear camera of 2.8 mm over a 1/2.7-class 16:9 sensor, 3.2 m up, looking north and down. */
export const wideCamera: Camera = {
  id: 'c',
  name: 'C1',
  eye: [0, -9, 3.2],
  pan: 0,
  tilt: 25,
  roll: 0,
  focalLength: 2.8,
  k: 1,
  sensor: { width: 5.37, height: 3.04 },
  frame: { width: 2688, height: 1520 },
  range: 60,
};
