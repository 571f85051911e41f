import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { createSectioner } from '../../src/assess/section/sectioner.ts';
import type { Section, SectionLine, Stretch } from '../../src/assess/section/section.ts';
import type { Assessment } from '../../src/assess/assessment.ts';
import type { Target } from '../../src/coverage/target.ts';
import { ringArea } from '../../src/sight/rings.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { defaultDevice } from '../../src/plan/defaultDevice.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { demo, yard } from '../editor/plans.ts';
import { randomSite } from './randomSite.ts';

const GROUND: Target = { kind: 'ground', height: 0 };

const assessed = (plan: Plan, target: Target = GROUND): Assessment =>
  runSteps(createSession().steps(plan, { target, alone: null, situation: null, causes: 'quick' }, 1));

function sectionIn(assessment: Assessment, plan: Plan, camera: string, person = 4, height?: number): Section {
  const made = createSectioner()(assessment, { camera, host: null, person, settings: plan.settings, height });
  if (made === null) throw new Error(`no section of ${camera}`);
  return made;
}

/** One camera over bare ground, its lens at a height, with a vertical angle of view: rectilinear, 2133 px of focal length. */
function bare(height: number, tilt: number, vertical: number, roll = 0): Plan {
  const plan = yard();
  const [camera] = Object.values(plan.cameras);
  if (!camera) throw new Error('a yard has a camera');
  const focalLength = 4;
  const sensor = { width: 6, height: 2 * focalLength * Math.tan((vertical * Math.PI) / 360) };
  const lens = {
    ...defaultDevice.lens,
    shortest: focalLength,
    longest: focalLength,
    focalLength,
    statedHfov: null,
  };
  const modes = defaultDevice.modes.map((mode) => ({ ...mode, frame: { width: 3200, height: 1800 } }));
  const changed = {
    ...camera,
    mount: { kind: 'loose', eye: [0, 0, height] } as const,
    pan: 67,
    tilt,
    roll,
    range: 1000,
    device: { ...defaultDevice, sensor, lens, modes },
  };
  return { ...plan, cameras: { [camera.id]: changed } };
}

const framed = ({ stretches }: SectionLine): readonly Stretch[] =>
  stretches.filter(({ state }) => state !== 'out of frame');

describe('what is in the frame along a level line', () => {
  // facts O17: near (H − z)/tan(tilt + V/2), far (H − z)/tan(tilt − V/2), worked by hand there.
  test.each([
    [3, 30, 45, 0, 2.302, 22.7873],
    [3, 30, 45, 1.6, 1.0743, 10.6341],
    [2.6, 20, 33.4, 1.6, 1.3416, 17.3432],
    [3, 25, 33.4, 0, 3.3671, 20.5643],
    [3.5, 15, 27.53, 0, 6.3757, 162.3516],
  ])('H %d, tilt %d, V %d, at %d m: %d to %d m', (height, tilt, vertical, z, near, far) => {
    const plan = bare(height, tilt, vertical);
    const made = sectionIn(assessed(plan, { kind: 'height', height: z }), plan, plan.cameraOrder[0] ?? '');
    const [line] = made.lines;
    if (!line) throw new Error('the target has a line');
    const seen = framed(line);
    expect(seen[0]?.from).toBeCloseTo(near, 3);
    expect(seen.at(-1)?.to).toBeCloseTo(far, 3);
  });

  test('has no far end where the top of the frame does not come down (facts O17: H 4, tilt 20, V 40.36)', () => {
    const plan = bare(4, 20, 40.36);
    const made = sectionIn(assessed(plan), plan, plan.cameraOrder[0] ?? '');
    const seen = made.lines[0] ? framed(made.lines[0]) : [];
    expect(seen[0]?.from).toBeCloseTo(4.7367, 3);
    expect(seen.at(-1)?.to).toBe(made.to);
    expect(made.to).toBe(1000);
  });

  test('goes on behind a lens that looks past straight down', () => {
    // By hand: tilt 80, V 40: the bottom of the frame at 100° is 3 tan 10° behind the lens.
    const plan = bare(3, 80, 40);
    const made = sectionIn(assessed(plan), plan, plan.cameraOrder[0] ?? '');
    const seen = made.lines[0] ? framed(made.lines[0]) : [];
    expect(seen[0]?.from).toBeCloseTo(-3 * Math.tan(Math.PI / 18), 9);
    expect(seen.at(-1)?.to).toBeCloseTo(3 * Math.tan(Math.PI / 6), 9);
  });

  test('reaches across the picture where the camera lies on its side', () => {
    // At 90° of roll the sides of the frame are above and below: 6 mm of sensor before 4 mm, atan(3/4).
    const { frame } = sectionIn(assessed(bare(3, 30, 45, 90)), bare(3, 30, 45, 90), 'C1');
    const half = (Math.atan(3 / 4) * 180) / Math.PI;
    expect(frame.top).toBeCloseTo(30 - half, 9);
    expect(frame.bottom).toBeCloseTo(30 + half, 9);
  });
});

test('a standing person has the scale of a tilted photograph', () => {
  // facts O15: f 2133.333 px, H 3.2 m, tilt 35°: 382.384, 666.667, 1162.298 px/m at depressions 35, 62.5, 90°.
  const plan = bare(3.2, 35, 45);
  const low = { ...plan, settings: { ...plan.settings, faceHeight: 0 } };
  const assessment = assessed(plan);
  for (const [depression, density] of [
    [35, 382.384],
    [62.5, 666.667],
    [90, 1162.298],
  ] as const) {
    const distance = depression === 90 ? 0 : 3.2 / Math.tan((depression * Math.PI) / 180);
    const { person } = sectionIn(assessment, low, 'C1', distance);
    expect(person.density).toBeCloseTo(density, 2);
    expect(person.above).toBeCloseTo(depression, 9);
    expect(person.across).toBeCloseTo(density * 0.16, 2);
  }
});

/** The yard's camera at its origin, and a block 4 m wide, 3 m deep and 2.5 m high, 5 m south of it. */
function before(pan: number, base = 0, height = 2.5, depth = 3): Plan {
  const plan = aimCamera(bare(3, 20, 45), 'C1', { pan });
  const got = 'measured' as const;
  const outline = [
    [-2, -5 - depth],
    [2, -5 - depth],
    [2, -5],
    [-2, -5],
  ] as const;
  const block = {
    id: 'block',
    name: 'Block',
    hidden: false,
    locked: false,
    kind: 'block',
    outline,
    base,
    height,
    passage: 'solid',
    got: { outline: got, base: got, height: got },
  } as const;
  return { ...plan, structures: { block }, structureOrder: ['block'] };
}

describe('the cut of a block', () => {
  // By hand: straight across it is 5 to 8 m off; 20° aside it is met at 5 / cos 20° and left by its side at 2 / sin 20°.
  test.each([
    [180, 5, 8],
    [200, 5.320889, 5.847609],
  ])('along %d° lies between %d and %d m', (pan, near, far) => {
    const plan = before(pan);
    const { cuts } = sectionIn(assessed(plan), plan, 'C1');
    expect(cuts).toHaveLength(1);
    const [ring = new Float64Array()] = cuts[0]?.rings ?? [];
    expect(cuts[0]?.closed).toBe(true);
    const along = [...ring].filter((_, at) => at % 2 === 0);
    expect(Math.min(...along)).toBeCloseTo(near, 5);
    expect(Math.max(...along)).toBeCloseTo(far, 5);
    expect(ringArea(ring)).toBeCloseTo((far - near) * 2.5, 4);
  });

  test('hides the ground as similar triangles have it, and ends where the lens looks over it', () => {
    // The ray over the far top edge, 8 m off and 0.5 m below the lens, comes down 48 m off; over the near one 30 m off.
    const plan = before(180);
    const section = sectionIn(assessed(plan), plan, 'C1');
    const hidden = section.lines[0]?.stretches.find(({ state }) => state === 'hidden');
    expect(hidden?.from).toBeCloseTo(8, 9);
    expect(hidden?.to).toBeCloseTo(48, 9);
    const [part] = section.hidden;
    expect(section.hidden).toHaveLength(1);
    expect(part?.solid).toBe(hidden?.hider);
    // The ray to the foot of the near wall is the steepest, the one over the far top edge the flattest.
    const rays = (part?.outline ?? []).map(([t, h]) => (Math.atan2(3 - h, t) * 180) / Math.PI);
    expect(Math.max(...rays)).toBeCloseTo((Math.atan2(3, 5) * 180) / Math.PI, 6);
    expect(Math.min(...rays)).toBeCloseTo((Math.atan2(0.5, 8) * 180) / Math.PI, 6);
  });
});

test('a thin rail in the air throws its narrow shadow', () => {
  // By hand: a rail from 1 to 1.02 m, 10 mm thick, 5 m off a lens 3 m up: 5 · 3 / 2 to 5.01 · 3 / 1.98 m.
  const plan = before(180, 1, 0.02, 0.01);
  const { lines } = sectionIn(assessed(plan), plan, 'C1');
  const hidden = lines[0]?.stretches.filter(({ state }) => state === 'hidden') ?? [];
  expect(hidden).toHaveLength(1);
  expect(hidden[0]?.from).toBeCloseTo(7.5, 6);
  expect(hidden[0]?.to).toBeCloseTo(15.03 / 1.98, 6);
});

test('every cut of the sample closes, whichever way it is cut', () => {
  const plan = demo();
  const [first = ''] = plan.cameraOrder;
  for (let pan = 0; pan < 360; pan += 33.75) {
    const turned = aimCamera(plan, first, { pan });
    for (const { closed, rings, name } of sectionIn(assessed(turned), turned, first).cuts) {
      const area = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
      expect({ name, pan, closed, isPositive: area > 0 }).toEqual({
        name,
        pan,
        closed: true,
        isPositive: true,
      });
    }
  }
});

/** To ten micrometres. */
const micrometres = (far: number | null): string | null => (far === null ? null : far.toFixed(5));

describe('stretches end where the Model ends', () => {
  test.each([GROUND, { kind: 'face', height: 1.6 }] as const)(
    'at $kind: nearest and farthest of every band',
    (target) => {
      const chance = chanceFrom(517);
      for (let site = 0; site < trials(8, 60); site += 1) {
        const plan = site === 0 ? demo() : randomSite(chance, 12, 3);
        const assessment = assessed(plan, target);
        for (const { camera, reach } of assessment.cameras) {
          const made = sectionIn(assessment, plan, camera.id);
          const line = made.lines[0]?.stretches ?? [];
          const ahead = line.filter(({ state, to }) => state === 'covered' && to > 0);
          const named = `seed 517, site ${site}, ${camera.id}`;
          const farthest = reach.byBand.map(
            (_, band) => ahead.findLast((one) => one.band > band)?.to ?? null,
          );
          const told = [...farthest, made.lines[0]?.nearest ?? null].map(micrometres);
          const within = reach.byBand.map((far) => far && Math.min(far, made.to));
          expect({ named, told }).toEqual({
            named,
            told: [...within, reach.nearBlindDistance].map(micrometres),
          });
        }
      }
    },
  );
});
