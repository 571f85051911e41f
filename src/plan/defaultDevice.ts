import type { DataSheet, Device } from '../optics/device.ts';

/**
 * What a new camera is: four megapixels on a 1/2.7 sensor (shared/tables/sensors.json) behind a fixed 2.8 mm lens whose
 * sheet prints 100°. An invented sheet of a common kind: 87.6° would be rectilinear, so that its law k is about 0.6.
 */
export const defaultDevice: Device = {
  sensor: { width: 5.37, height: 3.04 },
  modes: [
    {
      id: 'main',
      name: 'Main stream',
      use: 'recorded',
      frame: { width: 2688, height: 1520 },
      crop: { x: 0, y: 0, width: 1, height: 1 },
      cropKnown: true,
    },
  ],
  recorded: 'main',
  lens: {
    shortest: 2.8,
    longest: 2.8,
    focalLength: 2.8,
    statedHfov: { atShortest: 100, atLongest: 100 },
    statedVfov: null,
    statedIn: null,
    fNumber: 1.6,
  },
};

/** Of a camera of which no more is known than its picture and lens. */
export const unknownSheet: DataSheet = {
  name: null,
  minimumIllumination: null,
  imagesPerSecond: null,
  bitRate: null,
  powerClass: null,
  focusDistance: null,
};
