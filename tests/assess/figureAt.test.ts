import { describe, expect, test } from 'vitest';
import { figureAt } from '../../src/assess/figureAt.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Target } from '../../src/coverage/target.ts';
import { addStructures } from '../../src/plan/commands/addStructures.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { demo, yard } from '../editor/plans.ts';

/** A camera 3 m up looking south, and a wall 1.2 m high across its way, its far side 6.1 m off. */
const walled = (): Plan =>
  addStructures(yard(), {
    structures: [
      {
        ...wallOf(demo()),
        id: 'wall',
        name: 'Wall',
        line: [
          [-10, -6],
          [10, -6],
        ],
        closed: false,
        height: 1.2,
        thickness: 0.2,
        openings: [],
      },
    ],
    credits: [],
    origin: null,
  });

function wallOf(plan: Plan) {
  const wall = plan.structures['garden-wall'];
  if (wall?.kind !== 'barrier') throw new Error('the sample has a garden wall');
  return wall;
}

function seenAt(plan: Plan, point: Vec3, target: Target = { kind: 'ground', height: 0 }) {
  const session = createSession();
  const question = { target, alone: null, situation: null, causes: 'quick' } as const;
  const assessment = runSteps(session.steps(plan, question, 1));
  const figure = figureAt(session, assessment, point, session.probe(assessment, point)[0], plan.settings);
  return (
    figure &&
    Object.fromEntries(
      figure.parts.map(({ part, answer: { state } }) => [
        part,
        state === 'covered' || state === 'too coarse',
      ]),
    )
  );
}

describe('a person behind a low wall', () => {
  const plan = walled();
  const lens = 3;
  /** The height that a ray over the wall's edge has so far behind it, by similar triangles. */
  const over = (y: number): number => lens - ((lens - 1.2) * (y - 0.2)) / (6.1 - 0.2);

  test.each([6.3, 7, 8, 9, 12])('standing %d m off shows what rises above the ray over it', (far) => {
    const edge = over(far);
    const { stature, faceHeight } = plan.settings;
    expect(seenAt(plan, [0, -far, 0])).toEqual({
      feet: edge < 0.02,
      waist: edge < 0.6 * stature,
      face: edge < faceHeight,
    });
  });

  test('is told the same whatever height is asked for', () => {
    expect(seenAt(plan, [0, -7, 1.6], { kind: 'face', height: 1.6 })).toEqual(seenAt(plan, [0, -7, 0]));
  });

  test('stands nowhere within the wall, and nowhere behind the camera', () => {
    expect(seenAt(plan, [0, -6, 0.5])).toBeNull();
    expect(seenAt(plan, [0, 8, 0])).toBeNull();
  });
});

test('nobody stands on a wall', () => {
  const target: Target = { kind: 'surface', height: 0, surface: { of: 'wall', structure: 'house', face: 0 } };
  expect(seenAt(demo(), [3, -1e-5, 1.5], target)).toBeNull();
});
