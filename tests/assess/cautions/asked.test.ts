import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { FROM_THE_SIDE, KEPT, TOO_STEEP } from '../../../src/coverage/rule.ts';
import { face, infrared, nearly, plate, said, severities, type Site, siteOf } from './sites.ts';

/*
 * The camera of sites.ts gives 1280 px for a metre a metre away straight ahead: recognise (125) ends at 10.24 m, identify
 * (250) at 5.12 m. It stands at the origin, 1.6 m up, as high as a face. All figures below follow from that by hand.
 */

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** A face straight ahead that looks so far aside from the camera, which stands to the south of it. */
const aside = (angle: number, distance: number, band: string): Site => ({
  asked: [face([[0, distance]], { band, looks: { kind: 'bearing', bearing: 180 - angle } })],
});

describe('row 1, a face from the side', () => {
  test.each([
    [29.9, 5, 'identify', ''],
    [30.1, 5, 'identify', 'tell'],
    [44.9, 5, 'identify', 'tell'],
    [45.1, 5, 'identify', 'fails'],
    [45.1, 10, 'recognise', 'tell'],
    [59.9, 10, 'recognise', 'tell'],
    [60.1, 10, 'recognise', 'fails'],
  ])('%d° aside, %d m away, %s: %s', (angle, distance, band, expected) => {
    expect(severities(1, aside(angle, distance, band))).toBe(expected);
  });

  test('says the angle, and is nothing for who looks anywhere or is not served', () => {
    const [one] = said(1, aside(50, 5, 'identify'));
    expect(one?.figures).toMatchObject({ row: 1, angle: nearly(50, 9), limit: 45 });
    expect(severities(1, { asked: [face([[0, 5]], { band: 'identify' })] })).toBe('');
    expect(severities(1, aside(50, 6, 'identify'))).toBe('');
  });

  test('its threshold is a setting, and its limits are those of the plan', () => {
    const site = aside(44.9, 5, 'identify');
    expect(severities(1, { ...site, cautions: { 'side.tell': 45 } })).toBe('');
    const plan = siteOf(site);
    const limits = { ...plan.settings.faceLimits, identify: { above: 20, side: 44 } };
    expect(severities(1, { ...plan, settings: { ...plan.settings, faceLimits: limits } })).toBe('fails');
  });

  test('is tight where part of what is asked is seen well enough', () => {
    // At x = 2 the camera is seen 21.8° to the left of south; a face that looks 170° turns 31.8° away, at x = −2 11.8°.
    const line = face(
      [
        [-2, 5],
        [2, 5],
      ],
      { shape: 'line', band: 'identify', looks: { kind: 'bearing', bearing: 150 } },
    );
    const [one] = said(1, { asked: [line] });
    expect(one?.severity).toBe('tight');
    expect(one?.figures).toMatchObject({ angle: nearly(30 + (Math.atan(2 / 5) * 180) / Math.PI, 6) });
  });
});

/** A camera above a face 4 m away, straight ahead, by so many degrees, and turned to it. */
const above = (angle: number, band = 'identify'): Site => ({
  eye: [0, 0, 1.6 + 4 * tan(angle)],
  camera: { tilt: angle },
  asked: [face([[0, 4]], { band })],
});

describe('row 2, a face from above', () => {
  test.each([
    [14.9, 'identify', ''],
    [15.1, 'identify', 'tell'],
    [19.9, 'identify', 'tell'],
    [20.1, 'identify', 'fails'],
    [29.9, 'recognise', 'tell'],
    [30.1, 'recognise', 'fails'],
  ])('%d° from above, %s: %s', (angle, band, expected) => {
    expect(severities(2, above(angle, band))).toBe(expected);
  });

  test('says how high a lens may be there: 1.6 + d tan a, by hand (facts D26)', () => {
    const [one] = said(2, above(25));
    expect(one?.figures).toMatchObject({
      angle: nearly(25, 9),
      mostHeight: nearly(1.6 + 4 * tan(20), 9),
    });
  });

  test('rows 1 and 2 fail where the assessment lowers the band, and only there', () => {
    const lostAt = (site: Site, bearing: number | null) => {
      const plan = siteOf(site);
      const session = createSession();
      const looks = bearing === null ? {} : { looks: { kind: 'bearing', bearing } as const };
      const target = { kind: 'face', height: 1.6, ...looks } as const;
      const question = { target, alone: null, situation: null, causes: 'quick' } as const;
      const assessment = runSteps(session.steps(plan, question, 1));
      const at = Object.values(plan.requirements)[0]?.at[0] ?? [0, 0];
      return session.probe(assessment, [at[0], at[1], 1.6])[0]?.lost;
    };
    expect(lostAt(aside(44.9, 5, 'identify'), 180 - 44.9)).toBe(KEPT);
    expect(lostAt(aside(45.1, 5, 'identify'), 180 - 45.1)).toBe(FROM_THE_SIDE);
    expect(lostAt(above(19.9), null)).toBe(KEPT);
    expect(lostAt(above(20.1), null)).toBe(TOO_STEEP);
  });
});

describe('row 3, a plate', () => {
  // 79 mm × 1280 px/m ÷ d: 15 px at 6.7413 m.
  test.each([
    [6.73, 0, ''],
    [6.75, 0, 'fails'],
    [5, 29.9, ''],
    [5, 30.1, 'fails'],
  ])('%d m away, %d° aside: %s', (distance, angle, expected) => {
    const asked = [plate([0, distance], { looks: { kind: 'bearing', bearing: 180 + angle } })];
    expect(severities(3, { asked })).toBe(expected);
  });

  test('is seen from above too', () => {
    const from = (angle: number): Site => ({
      eye: [0, 0, 1.6 + 4 * tan(angle)],
      camera: { tilt: angle },
      asked: [plate([0, 4])],
    });
    // 1280 × cos² of the angle ÷ 4 px/m upright: far above 15 px.
    expect(severities(3, from(29.9))).toBe('');
    expect(severities(3, from(30.1))).toBe('fails');
    // Upright it is foreshortened twice: by the way there, 4 m ÷ cos a, and by cos a itself.
    const [one] = said(3, from(40));
    const pixels = (0.079 * 1280 * Math.cos((40 * Math.PI) / 180) ** 2) / 4;
    expect(one?.figures).toMatchObject({ pixels: nearly(pixels, 9) });
  });

  test('says the pixels of a character', () => {
    const [one] = said(3, { asked: [plate([0, 8])] });
    expect(one?.figures).toMatchObject({ pixels: nearly((0.079 * 1280) / 8, 9), angle: null });
  });
});

test('row 4, a plate and something else at night by one camera', () => {
  const both = [plate([0, 5]), face([[1, 5]])];
  expect(severities(4, { asked: both, camera: infrared })).toBe('tight');
  expect(severities(4, { asked: both })).toBe('');
  expect(severities(4, { asked: [plate([0, 5])], camera: infrared })).toBe('');
});

describe('row 5, smear', () => {
  // Walking east past the camera 5 m ahead, 2 m to either side: at the ends 1.4 × 5/√29 m/s across, the least.
  const walk = face(
    [
      [-2, 5],
      [2, 5],
    ],
    { shape: 'approach', band: 'identify' },
  );
  const across = (1.4 * 5) / Math.sqrt(29);
  const by = (day: number) => severities(5, { asked: [walk], camera: { exposure: { day, night: 1 } } });

  test('identify is told above 8 mm and fails above 20', () => {
    expect(by(7.99 / across)).toBe('');
    expect(by(8.01 / across)).toBe('tell');
    expect(by(19.99 / across)).toBe('tell');
    expect(by(20.01 / across)).toBe('fails');
  });

  test('recognise is told above 16 mm and fails above 40', () => {
    const one = (day: number) =>
      severities(5, { asked: [{ ...walk, band: 'recognise' }], camera: { exposure: { day, night: 1 } } });
    expect(one(15.99 / across)).toBe('');
    expect(one(16.01 / across)).toBe('tell');
    expect(one(40.01 / across)).toBe('fails');
  });

  test('who walks straight at the camera is not smeared across', () => {
    const straight = face(
      [
        [0, 8],
        [0, 3],
      ],
      { shape: 'approach' },
    );
    expect(severities(5, { asked: [straight], camera: { exposure: { day: 100, night: 100 } } })).toBe('');
  });

  test('a plate fails above 5 mm, driving at 2.8 m/s', () => {
    const one = (day: number) =>
      severities(5, { asked: [plate([0, 5])], camera: { exposure: { day, night: 1 } } });
    expect(one(4.99 / 2.8)).toBe('');
    expect(one(5.01 / 2.8)).toBe('fails');
  });

  test('at night an exposure that is not stated is 1/25 s', () => {
    const [one] = said(5, { asked: [walk], camera: infrared });
    expect(one?.figures).toMatchObject({
      when: 'night',
      taken: true,
      exposure: 40,
      millimetres: nearly(40 * across, 6),
    });
    expect(severities(5, { asked: [walk] })).toBe('');
  });
});

describe('row 6, pictures of an approach', () => {
  // Straight at the camera from 12 m to 2 m: recognised from 10.24 m on, 8.24 m: 5.886 s walking, 2.06 s running.
  const walk = face(
    [
      [0, 12],
      [0, 2],
    ],
    { shape: 'approach' },
  );
  const at = (imagesPerSecond: number): Site => {
    const { sheet } = Object.values(siteOf({}).cameras)[0] ?? {};
    if (sheet === undefined) throw new Error('a site has a camera');
    return { asked: [walk], camera: { sheet: { ...sheet, imagesPerSecond } } };
  };

  test('fewer than 5 walking are tight, fewer than 3 running are told', () => {
    expect(severities(6, at((4.99 * 1.4) / 8.24))).toBe('tight');
    expect(severities(6, at((5.01 * 1.4) / 8.24))).toBe('tell');
    expect(severities(6, at((2.99 * 4) / 8.24))).toBe('tell');
    expect(severities(6, at((3.01 * 4) / 8.24))).toBe('');
    expect(severities(6, { asked: [walk] })).toBe('');
  });

  test('counts seconds at the band only', () => {
    const [one] = said(6, at(0.5));
    expect(one?.figures).toMatchObject({ pictures: 2, seconds: nearly(8.24 / 1.4, 3) });
  });

  test('leaves the steps out on which the face is seen from too far above', () => {
    // 2 m above the face, 30° for recognise: nearer than 2 / tan 30° = 3.464 m over ground nothing counts.
    const high: Site = { ...at(0.5), eye: [0, 0, 3.6], camera: { ...at(0.5).camera, tilt: 20 } };
    const [one] = said(6, high);
    const seconds = one?.figures.row === 6 ? one.figures.seconds : 0;
    // Recognise ends where 1280 ÷ (y cos 20° + 2 sin 20°) is 125.
    const far = (10.24 - 2 * Math.sin(Math.PI / 9)) / Math.cos(Math.PI / 9);
    expect(seconds).toBeCloseTo((far - 2 / tan(30)) / 1.4, 3);
  });
});
