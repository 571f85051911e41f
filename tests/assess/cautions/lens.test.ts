import { describe, expect, test } from 'vitest';
import { depthOfField } from '../../../src/assess/cautions/rows/lens.ts';
import type { PictureMode } from '../../../src/optics/device.ts';
import { face, nearly, ringOf, said, severities, type Site, siteOf, square } from './sites.ts';

/*
 * The camera of sites.ts gives 1280 px for a metre a metre away straight ahead: recognise (125) ends at 10.24 m, identify
 * (250) at 5.12 m. It stands at the origin, 1.6 m up, as high as a face. All figures below follow from that by hand.
 */

describe('row 7, focus', () => {
  test('depth of field is that of facts O19: 50 mm, f/8, 0.03 mm, 5 m', () => {
    const { near, far } = depthOfField(50, 8, 0.03, 5);
    expect(near).toBeCloseTo(3.3894, 4);
    expect(far).toBeCloseTo(9.5274, 4);
    // Focused on the hyperfocal distance, 50²/(8 × 0.03) + 50 = 10466.7 mm, and beyond it all is sharp to infinity.
    expect(depthOfField(50, 8, 0.03, 10.467).far).toBeNull();
  });

  test.each([
    [3.38, 'tight'],
    [3.4, ''],
    [9.52, ''],
    [9.54, 'tight'],
  ])('%d m away: %s', (distance, expected) => {
    // 36 mm over 1200 px: a pitch of 0.03 mm.
    const [mode] = square.modes;
    if (mode === undefined) throw new Error('a device has a mode');
    const device = {
      ...square,
      sensor: { width: 36, height: 20.25 },
      modes: [{ ...mode, frame: { width: 1200, height: 675 } }],
      lens: { ...square.lens, shortest: 50, longest: 50, focalLength: 50, fNumber: 8 },
    };
    const { sheet } = Object.values(siteOf({}).cameras)[0] ?? {};
    if (sheet === undefined) throw new Error('a site has a camera');
    const asked = [face([[0, distance]])];
    expect(severities(7, { asked, camera: { device, sheet: { ...sheet, focusDistance: 5 } } })).toBe(
      expected,
    );
    expect(severities(7, { asked, camera: { device } })).toBe('');
  });
});

test.each([
  [2.8, 'shortest'],
  [3.25, 'shortest'],
  [3.27, null],
  [11.53, null],
  [11.55, 'longest'],
])('row 8, a lens of 2.8 to 12 mm set to %d: %s', (focalLength, end) => {
  // 5 % of 9.2 mm is 0.46 mm.
  const lens = { ...square.lens, shortest: 2.8, longest: 12, focalLength };
  const [one] = said(8, { camera: { device: { ...square, lens } } });
  expect(one?.figures.row === 8 ? one.figures.end : null).toBe(end);
});

describe('rows 9 and 10, pictures', () => {
  const [main] = square.modes;
  if (main === undefined) throw new Error('a device has a mode');
  const stated = { ...square.lens, statedHfov: { atShortest: 90, atLongest: 90 } };
  const with_ = (...modes: readonly PictureMode[]) => ({ ...square, lens: stated, modes });

  test.each([
    [1440, ''],
    // 1440 ÷ 1.0099 and 1.0101.
    [1425.9, ''],
    [1425.6, 'shape'],
  ])('row 9, %d px high on a sensor of 16 to 9: %s', (height, why) => {
    const [one] = said(9, { camera: { device: with_({ ...main, frame: { width: 2560, height } }) } });
    expect(one?.figures.row === 9 ? one.figures.why : '').toBe(why);
  });

  test('row 9, steadied, turned, of an unknown crop, or stated for another', () => {
    const whyOf = (mode: PictureMode, statedIn: string | null = null) => {
      const device = { ...with_(mode, { ...main, id: 'other' }), lens: { ...stated, statedIn } };
      const [one] = said(9, { camera: { device } });
      return one?.figures.row === 9 ? one.figures.why : null;
    };
    expect(whyOf({ ...main, use: 'stabilised', cropKnown: false })).toBe('stabilised');
    expect(whyOf({ ...main, use: 'rotated', cropKnown: false })).toBe('rotated');
    expect(whyOf({ ...main, cropKnown: false })).toBe('crop');
    expect(whyOf({ ...main, cropKnown: false }, 'other')).toBe('other');
    expect(whyOf(main, 'other')).toBeNull();
    expect(whyOf(main)).toBeNull();
  });

  test('row 10, watched live in a lesser picture', () => {
    // 5 m away 256 px/m are recorded: of 2560 px across 1250 are left with 125 px/m.
    const live = (width: number) =>
      ({ ...main, id: 'sub', name: 'Sub', use: 'live', frame: { width, height: 700 } }) as const;
    const at = (width: number) =>
      severities(10, { asked: [face([[0, 5]])], camera: { device: with_(main, live(width)) } });
    expect(at(1251)).toBe('');
    expect(at(1249)).toBe('tell');
  });

  test('row 10, a lesser picture is recorded although the camera has a better one', () => {
    const sub = (width: number) => ({
      ...main,
      id: 'sub',
      name: 'Sub',
      frame: { width, height: (width * 9) / 16 },
    });
    const at = (width: number) => {
      const device = { ...with_(main, sub(width)), recorded: 'sub' };
      return severities(10, { asked: [face([[0, 5]])], camera: { device } });
    };
    expect(at(1251)).toBe('');
    expect(at(1249)).toBe('fails');
  });
});

describe('row 11, what is asked is tall and narrow in the picture', () => {
  // 3 m up and level, ground from 6 to 20 m ahead lies 640 to 192 px below the middle: 448 px; 2w wide it has 2w × 1280/6 px.
  const strip = (w: number): Site => ({
    eye: [0, 0, 3],
    asked: [face(ringOf(-w, 6, w, 20), { shape: 'area', target: 'ground', targetHeight: 0, band: 'detect' })],
  });

  test('above 1.3 times as tall as wide', () => {
    expect(severities(11, strip(0.802))).toBe('tell');
    expect(severities(11, strip(0.812))).toBe('');
    const turned = strip(0.802);
    expect(severities(11, { ...turned, camera: { roll: 90 } })).toBe('');
  });

  test('says how much more of the picture would lie on it', () => {
    const [one] = said(11, strip(0.8));
    // Box of 341.33 × 448 px. Upright its share of a frame that just holds it is (341.33/448) ÷ (16/9), turned × (16/9).
    const shape = 341.3333333 / 448;
    expect(one?.figures).toMatchObject({
      ratio: nearly(448 / 341.3333333, 6),
      more: nearly(9 / 16 / shape - (shape * 9) / 16, 6),
    });
  });
});
