import { expect, test } from 'vitest';
import type { Assessment, Question } from '../../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { createSectioner } from '../../../src/assess/section/sectioner.ts';
import { atDistance, densityCurve, farthestCovered } from '../../../src/assess/trial/alongAxis.ts';
import { changeOf } from '../../../src/assess/trial/change.ts';
import { changeOfCells } from '../../../src/assess/trial/cellChange.ts';
import { trialAsked } from '../../../src/assess/trial/trialAsked.ts';
import { aimCamera } from '../../../src/plan/commands/aimCamera.ts';
import { setLens } from '../../../src/plan/commands/setLens.ts';
import type { Plan, PlanCamera } from '../../../src/plan/plan.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { plainDensity, plainImage } from '../../oracle/plainCamera.ts';
import { demo } from '../../editor/plans.ts';
import { randomSite } from '../randomSite.ts';

const question = (height: number, situation: string | null = null): Question => ({
  target: height === 0 ? { kind: 'ground', height } : { kind: 'face', height },
  alone: null,
  situation,
  causes: 'quick',
});

const assessed = (plan: Plan, asked: Question = question(0)): Assessment =>
  runSteps(createSession().steps(plan, asked, 1));

/** The plan with a second setting of its first camera beside it. */
function withOther(plan: Plan, change: (plan: Plan, id: string) => Plan): Plan {
  const id = plan.cameraOrder[0] ?? '';
  const camera: PlanCamera | undefined = plan.cameras[id];
  if (camera === undefined) throw new Error('a plan with a camera');
  return change(
    {
      ...plan,
      cameras: { ...plan.cameras, other: { ...camera, id: 'other' } },
      cameraOrder: [...plan.cameraOrder, 'other'],
    },
    'other',
  );
}

function sectionIn(assessment: Assessment, plan: Plan, camera: string) {
  const made = createSectioner()(assessment, { camera, host: null, person: 4, settings: plan.settings });
  if (made === null) throw new Error(`no section of ${camera}`);
  return made;
}

/** The demo plan with one camera: others would only take time. */
function alone(): Plan {
  const plan = demo();
  const [id = ''] = plan.cameraOrder;
  return { ...plan, cameras: { [id]: plan.cameras[id] ?? fail() }, cameraOrder: [id] };
}

const other = (plan: Plan): Plan =>
  withOther(plan, (made, id) => aimCamera(setLens(made, id, { focalLength: 6 }), id, { tilt: 24 }));

test('width, density, pixels and the angle from above are those of a pinhole written anew', () => {
  const plan = other(alone());
  const assessment = assessed(plan);
  for (const id of [plan.cameraOrder[0] ?? '', 'other']) {
    const section = sectionIn(assessment, plan, id);
    const { camera } = section;
    for (const distance of [2, 3.5, 6, 11]) {
      const at = atDistance(section, distance, 1.6);
      const bearing = (camera.pan * Math.PI) / 180;
      const place = (height: number, aside = 0) => [
        camera.eye[0] + distance * Math.sin(bearing) + aside * Math.cos(bearing),
        camera.eye[1] + distance * Math.cos(bearing) - aside * Math.sin(bearing),
        section.datum + height,
      ];
      expect(at.density).toBeCloseTo(plainDensity(camera, place(0)), 4);
      expect(at.face.across).toBeCloseTo(0.16 * plainDensity(camera, place(1.6)), 4);
      const rise = camera.eye[2] - section.datum - 1.6;
      expect(at.face.above).toBeCloseTo((Math.atan(rise / distance) * 180) / Math.PI, 9);
      const [, v = -1] = plainImage(camera, place(0)) ?? [];
      const isIn = v >= 0 && v <= camera.frame.height;
      expect(at.width !== null).toBe(isIn);
      if (at.width === null) continue;
      // Half the width lies to each side, since a level camera's frame is even: its ends fall on the picture's edges.
      for (const side of [-0.5, 0.5]) {
        const [u = Number.NaN] = plainImage(camera, place(0, side * at.width)) ?? [];
        expect(Math.abs(u - (side < 0 ? 0 : camera.frame.width))).toBeLessThan(1e-3);
      }
    }
  }
});

test('what is nearest, how far each band reaches, and the curve agree with coverage and Section on random sites', () => {
  const chance = chanceFrom(521);
  for (let trial = 0; trial < trials(2, 100); trial += 1) {
    const plan = other(randomSite(chance, 4, 1));
    const assessment = assessed(plan, question(chance.pick([0, 1.6])));
    for (const { camera, reach } of assessment.cameras) {
      const section = sectionIn(assessment, plan, camera.id);
      const far = 60;
      const parts = densityCurve(section, far).filter(({ state }) => state === 'covered');
      const near = reach.nearBlindDistance;
      const first = near === null || near >= far ? null : Math.max(near, 0.05);
      expect(apart(parts[0]?.points[0]?.[0] ?? null, first)).toBeLessThan(1e-5);
      expect(apart(farthestCovered(section), reach.byBand[0] ?? null)).toBeLessThan(1e-5);
      for (const { band, points } of parts)
        for (const [t, density] of points) {
          expect(density).toBeGreaterThan((assessment.edition.bands[band - 1]?.density ?? 0) * (1 - 1e-6));
          expect(t).toBeLessThan((reach.byBand[band - 1] ?? 0) + 1e-5);
        }
    }
  }
});

test('cells tell an exchange as outlines do, about; at night they alone tell it', () => {
  const plan = other(alone());
  const [id = ''] = plan.cameraOrder;
  const assessment = assessed(plan, question(1.6));
  const asked = trialAsked(assessment, id, 'other');
  const [one, two] = [id, 'other'].map((name) => assessment.cameras.find(({ camera }) => camera.id === name));
  if (asked === null || !one || !two) throw new Error('both are there by day');
  const exact = changeOf(asked);
  const about = changeOfCells(assessment, one.cells, two.cells);
  expect(exact.finer.value).toBeGreaterThan(1);
  expect(Math.abs(about.finer.value - exact.finer.value)).toBeLessThan(about.finer.bound);
  expect(Math.abs(about.coarser.value - exact.coarser.value)).toBeLessThan(about.coarser.bound);
  exact.byBand.forEach(({ gained, lost }, band) => {
    const counted = about.byBand[band];
    expect(gained.how).toBe('exact');
    expect(counted?.gained.how).toBe('cells');
    expect(Math.abs((counted?.gained.value ?? 0) - gained.value)).toBeLessThan(counted?.gained.bound ?? 0);
    expect(Math.abs((counted?.lost.value ?? 0) - lost.value)).toBeLessThan(counted?.lost.bound ?? 0);
  });
  const night = { ...plan, situations: { dark: { ...NIGHT } }, situationOrder: ['dark'] };
  expect(trialAsked(assessed(night, question(0, 'dark')), id, 'other')).toBeNull();
  expect(trialAsked(assessment, id, 'nobody')).toBeNull();
});

const NIGHT = { id: 'dark', name: 'Night', night: true, away: [], leaves: {}, treesInLeaf: null };

test('a lens inside a wall sees nothing: all that the other covers is lost; one of 180° has a view without end', () => {
  const plan = alone();
  const [id = ''] = plan.cameraOrder;
  const { scene } = assessed(plan);
  const eye = scene.cameras[0]?.eye ?? [0, 0, 3];
  const house = scene.solids.find(({ passage }) => passage === 'solid');
  if (house === undefined) throw new Error('the demo plan has a solid');
  const within = ([0, 1, 2] as const).map((axis) => {
    const all = house.positions.filter((_, at) => at % 3 === axis);
    return (Math.min(...all) + Math.max(...all)) / 2;
  });
  const buried = withOther(plan, (made, at) => ({
    ...made,
    cameras: {
      ...made.cameras,
      [at]: {
        ...(made.cameras[at] ?? fail()),
        mount: { kind: 'loose', eye: [within[0] ?? 0, within[1] ?? 0, within[2] ?? 0] },
      },
    },
  }));
  const assessment = assessed(buried);
  const asked = trialAsked(assessment, id, 'other');
  const standing = assessment.cameras.find(({ camera }) => camera.id === id);
  if (asked === null || standing === undefined) throw new Error('both are there');
  expect(assessment.cameras.find(({ camera }) => camera.id === 'other')?.sight.lensInside).not.toBeNull();
  const { byBand, finer, coarser } = changeOf(asked);
  const covered = standing.areas.byBand.reduce((sum, { value }) => sum + value, 0);
  expect(byBand[0]?.lost.value).toBeCloseTo(covered, 2);
  expect(byBand[0]?.gained.value).toBe(0);
  expect([finer.value, coarser.value]).toEqual([0, expect.closeTo(covered, 2)]);
  const wide = withOther(plan, (made, at) => ({
    ...made,
    cameras: {
      ...made.cameras,
      [at]: {
        ...(made.cameras[at] ?? fail()),
        mount: { kind: 'loose', eye: [eye[0], eye[1], 2.5] },
        tilt: 0,
        device: {
          ...(made.cameras[at] ?? fail()).device,
          lens: {
            ...(made.cameras[at] ?? fail()).device.lens,
            shortest: 1.6,
            longest: 1.6,
            focalLength: 1.6,
            statedHfov: { atShortest: 190, atLongest: 190 },
          },
        },
      },
    },
  }));
  const wideAssessment = assessed(wide);
  expect(atDistance(sectionIn(wideAssessment, wide, 'other'), 6, 1.6).width).toBe(Infinity);
  const wideAsked = trialAsked(wideAssessment, id, 'other');
  if (wideAsked === null) throw new Error('both are there');
  for (const { gained, lost } of changeOf(wideAsked).byBand)
    for (const { value } of [gained, lost]) expect(Number.isFinite(value)).toBe(true);
});

/** How far two distances are apart; none is apart from any. */
const apart = (one: number | null, two: number | null): number =>
  one === null || two === null ? (one === two ? 0 : Infinity) : Math.abs(one - two);

function fail(): never {
  throw new Error('no such camera');
}
