import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { partWords } from '../../../src/draw/person/personWords.ts';
import { personLooked } from '../../../src/draw/person/personPictures.ts';
import { createShowPerson, lookOf, personNamed, type Moving } from '../../../src/draw/person/shownPerson.ts';
import { setExposure } from '../../../src/plan/commands/setExposure.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../../editor/plans.ts';

const assessed = (plan: Plan): Assessment =>
  runSteps(
    createSession().steps(
      plan,
      { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' },
      1,
    ),
  );

const shared = assessed(demo());
const showPerson = createShowPerson();

interface Shown {
  readonly at?: readonly [number, number];
  readonly bearing?: number;
  readonly cap?: boolean;
  readonly moving?: Moving;
  readonly focalLength?: number | null;
}

/** What is said of somebody 4 m ahead of C1, which hangs 2.9 m up and looks at 236°. */
function said(plan: Plan, { at, bearing, cap = false, moving = 'still', focalLength = null }: Shown = {}) {
  const camera = plan.cameras['C1'];
  const lens = shared.scene.cameras.find(({ id }) => id === 'C1');
  if (!camera || !lens) throw new Error('no C1');
  const [s, c] = [Math.sin((lens.pan * Math.PI) / 180), Math.cos((lens.pan * Math.PI) / 180)];
  const spot = at ?? ([lens.eye[0] + 4 * s, lens.eye[1] + 4 * c] as const);
  const looks =
    bearing === undefined
      ? ({ kind: 'place', at: [lens.eye[0], lens.eye[1]] } as const)
      : ({ kind: 'bearing', bearing } as const);
  const seen = showPerson(shared, plan, {
    camera: 'C1',
    at: spot,
    looks,
    lens: focalLength === null ? null : { focalLength, k: lens.k },
  });
  if (seen === null) throw new Error('nothing seen');
  const look = lookOf(plan, camera, { looks, cap, moving });
  const named = personNamed(shared, plan);
  const [face, plate, parcel] = personLooked(seen, look).map((part) =>
    partWords(part, seen.camera, named, look.exposure, cap),
  );
  if (!face || !plate || !parcel) throw new Error('a part is missing');
  return { face, plate, parcel, seen, look };
}

describe('words for those who do not see the picture', () => {
  test('say pixels across the face, px/m, from above and from the side', () => {
    const { face, seen } = said(demo());
    const density = seen.parts[0]?.density?.horizontal ?? 0;
    expect(face.pixels).toBe(`${(0.16 * density).toFixed(0)} px across the face, ${density.toFixed(0)} px/m`);
    // By hand: atan((2.9 − 1.6) / 4) = 18.0°.
    expect(face.alt.day).toContain('Face by day: ');
    expect(face.alt.day).toContain('Seen from 18° above, straight on.');
    // C1 looks at 236°; back along it is 56°, so that a face to 100° is seen 44° from the side.
    const bearing = (shared.scene.cameras.find(({ id }) => id === 'C1')?.pan ?? 0) - 180 + 44;
    expect(said(demo(), { bearing }).face.more[0]).toContain('44° from the side');
  });

  test('say the smear in mm: speed across the sight line × exposure', () => {
    const plan = setExposure(demo(), 'C1', { day: 4, night: 25 });
    const { face, parcel } = said(plan, { moving: 'walks' });
    // 1.4 m/s: 5.6 mm and 35 mm by hand.
    expect(face.more.join(' ')).toMatch(/Smears over 5\.6 mm \([\d.]+ px\) by day, 35 mm/);
    expect(parcel.more.join(' ')).not.toContain('mm');
    expect(said(plan).face.more.join(' ')).not.toContain('mm');
  });

  test('an exposure that is not stated counts as 1/25 s at night', () => {
    const plan = setExposure(demo(), 'C1', null);
    expect(said(plan).look.exposure).toEqual({ day: 10, night: 40 });
    expect(said(plan, { moving: 'walks' }).face.more.join(' ')).toContain('56 mm');
  });

  test('say that the cap hides the eyes where it does', () => {
    // 2 m from below the lens: 33° above.
    const lens = shared.scene.cameras.find(({ id }) => id === 'C1');
    if (!lens) throw new Error('no C1');
    const [s, c] = [Math.sin((lens.pan * Math.PI) / 180), Math.cos((lens.pan * Math.PI) / 180)];
    const near = [lens.eye[0] + 2 * s, lens.eye[1] + 2 * c] as const;
    const words = 'The peak of the cap hides the eyes from here';
    expect(said(demo(), { at: near, cap: true }).face.more).toContain(words);
    expect(said(demo(), { at: near }).face.more).not.toContain(words);
    expect(said(demo(), { cap: true }).face.more).not.toContain(words);
  });

  test('name what hides', () => {
    const { face } = said(demo(), { at: [4, 4] });
    expect(face.unseen.day).not.toBeNull();
    expect(face.alt.day).toContain(face.unseen.day ?? '?');
  });
});

describe('plates', () => {
  test('need 15 px a character, 30° and 5 mm (common practice), each said with its own figure', () => {
    const plan = setExposure(demo(), 'C1', { day: 1, night: 40 });
    expect(said(plan).plate.alt.day).toContain('31° from above is over 30°');
    expect(said(plan, { focalLength: 1.5 }).plate.alt.day).toContain('plates need 15 px a character');
    // A car at 2.8 m/s and 1/25 s: 112 mm.
    expect(said(plan, { moving: 'walks' }).plate.alt.night).toContain('a smear of 112 mm is over 5 mm');
    expect(said(plan, { moving: 'walks' }).plate.alt.day).not.toContain('smear');
  });

  test('burn out at night unless the exposure is short', () => {
    const at = (night: number) => said(setExposure(demo(), 'C1', { day: 1, night })).plate.alt.night;
    expect(at(40)).toContain('burns out in the camera’s infrared at 1/25 s');
    expect(at(0.5)).not.toContain('burns out');
  });
});

test('a longer lens has px/m in proportion, and what leaves its frame is said to', () => {
  const [wide, long] = [said(demo()), said(demo(), { focalLength: 28 })];
  const density = (one: typeof wide) => one.seen.parts[0]?.density?.horizontal ?? 0;
  expect(density(long) / density(wide)).toBeCloseTo(10, 9);
  expect(said(demo(), { focalLength: 28 }).face.unseen.day).toBe('out of frame');
});
