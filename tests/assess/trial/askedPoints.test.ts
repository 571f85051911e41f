import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { createSectioner } from '../../../src/assess/section/sectioner.ts';
import { createJudgePoints } from '../../../src/assess/trial/askedPoints.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../../editor/plans.ts';

const plan = demo();
const [first = ''] = plan.cameraOrder;
const assessment = runSteps(
  createSession().steps(
    plan,
    { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' },
    1,
  ),
);
const camera = assessment.scene.cameras.find(({ id }) => id === first);
if (camera === undefined) throw new Error('the sample has a camera');
const [ex, ey] = camera.eye;
const rad = (camera.pan * Math.PI) / 180;

type Requirement = Plan['requirements'][string];

function asking(distance: number, more: Partial<Requirement>): Requirement {
  const at = [ex + distance * Math.sin(rad), ey + distance * Math.cos(rad)] as const;
  return {
    id: `at${distance.toFixed(0)}${more.target ?? ''}${more.looks?.kind ?? ''}`,
    name: 'A place',
    shape: 'point',
    at: [at],
    targetHeight: 0,
    target: 'ground',
    band: 'recognise',
    looks: null,
    ...more,
  };
}

const judged = (requirements: readonly Requirement[]) =>
  createJudgePoints()(
    assessment,
    {
      ...plan,
      requirements: Object.fromEntries(requirements.map((one) => [one.id, one])),
      requirementOrder: requirements.map(({ id }) => id),
    },
    first,
  );

test.each([0, 1.2])(
  'points along the axis, %f m up, reach the bands that the Section tells there',
  (height) => {
    const section = createSectioner()(assessment, {
      camera: first,
      host: null,
      person: 4,
      settings: plan.settings,
      height,
    });
    const line = section?.lines.find(({ target }) => target.height === height);
    const distances = [0.5, 1, 1.5, 2, 3, 4, 6, 8, 10, 12, 13, 15, 20];
    const told = distances.map((t) => line?.stretches.find(({ from, to }) => from <= t && t < to));
    const points = judged(
      distances.map((t) =>
        asking(t, { id: `at${t}`.replace('.', '-'), target: 'height', targetHeight: height }),
      ),
    );
    expect(points.map(({ band, state }) => [band, state])).toEqual(
      told.map((one) => [one?.band, one?.state]),
    );
    expect(new Set(points.map(({ band }) => band)).size).toBeGreaterThan(2);
    expect(points[0]?.asked).toBe(3);
  },
);

test('a face that looks away falls below its band; a line, or a band that the edition lacks, is not judged', () => {
  const face = { target: 'face', targetHeight: 1.6 } as const;
  const [towards, away] = [(camera.pan + 180) % 360, camera.pan];
  const points = judged([
    asking(5, { ...face, id: 'towards', looks: { kind: 'bearing', bearing: towards } }),
    asking(5, { ...face, id: 'away', looks: { kind: 'bearing', bearing: away } }),
    asking(5, { id: 'line', shape: 'line' }),
    asking(5, { id: 'strange', band: 'admire' }),
  ]);
  expect(points.map(({ id }) => id)).toEqual(['towards', 'away']);
  expect(points[0]?.band).toBeGreaterThan(2);
  expect(points[1]?.band).toBeLessThan(points[0]?.band ?? 0);
});
