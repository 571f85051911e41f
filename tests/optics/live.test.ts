import { expect, test } from 'vitest';
import type { Device, PictureMode } from '../../src/optics/device.ts';
import { liveBeside } from '../../src/optics/live.ts';
import { defaultDevice } from '../../src/plan/defaultDevice.ts';

const [main] = defaultDevice.modes;
if (!main) throw new Error('no mode');

const withLive = (live: Partial<PictureMode>): Device => ({
  ...defaultDevice,
  modes: [main, { ...main, id: 'live', use: 'live', ...live }],
});

test('the live picture has fewer pixels a metre, by its pixels a millimetre of sensor', () => {
  // 2688 across in the recorded one: 672 on the same width are a quarter, on half of it a half.
  expect(liveBeside(withLive({ frame: { width: 672, height: 380 } }))).toMatchObject({
    share: 0.25,
    even: true,
  });
  const crop = { x: 0.25, y: 0.25, width: 0.5, height: 0.5 };
  expect(liveBeside(withLive({ frame: { width: 672, height: 380 }, crop }))?.share).toBeCloseTo(0.5, 12);
});

test('a live picture of another shape is told by its lesser share', () => {
  expect(liveBeside(withLive({ frame: { width: 672, height: 760 } }))).toMatchObject({
    share: 0.25,
    even: false,
  });
});

test('a picture on its side is compared along the same sides of the sensor', () => {
  const turned = withLive({ frame: { width: 672, height: 380 } });
  const modes = turned.modes.map((mode) =>
    mode.id === 'main' ? { ...mode, use: 'rotated' as const, frame: { width: 1520, height: 2688 } } : mode,
  );
  expect(liveBeside({ ...turned, modes })).toMatchObject({ share: 0.25, even: true });
});

test('a device with one picture has none beside it', () => {
  expect(liveBeside(defaultDevice)).toBeNull();
});
