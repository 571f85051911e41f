import { describe, expect, it } from 'vitest';
import type { PointAnswer } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { readPlan } from '../../src/plan/read.ts';
import { hereWords } from '../../src/view3d/parts/hereWords.ts';
import demo from '../../shared/plans/demo.plan.json?raw';

const read = readPlan(demo);
if (!read.ok) throw new Error('the demo plan opens');
const plan = read.value;
const question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'quick',
} as const;
const assessment = runSteps(createSession().steps(plan, question, 1));
const [first, second] = assessment.scene.cameras;
const van = assessment.scene.solids.findIndex(({ structure }) => plan.structures[structure]?.name === 'Van');
const names = (id: string): string | undefined => plan.structures[id]?.name;

const answer = (camera: number, change: Partial<PointAnswer>): PointAnswer => ({
  camera: assessment.scene.cameras[camera]?.id ?? '',
  state: 'covered',
  band: 0,
  density: null,
  depression: 20,
  hider: null,
  before: null,
  lost: 0,
  ...change,
});

describe('hereWords', () => {
  it('says who covers a spot and what keeps the others from it', () => {
    const text = hereWords(
      assessment,
      [
        answer(0, { band: 2, density: 118.6 }),
        answer(1, { state: 'hidden', hider: van, before: 4.12 }),
        answer(2, { state: 'out of frame' }),
      ],
      names,
    );
    expect(text).toBe(
      `${first?.name}: ${assessment.edition.bands[1]?.name.toLowerCase()}, 119 pixels per metre; ` +
        `${second?.name}: hidden by Van, 4.1 metres before it; C3: out of frame.`,
    );
  });

  it('begins with the bad news where nobody covers the spot', () => {
    const text = hereWords(assessment, [answer(0, { state: 'too coarse', density: 12 })], names);
    expect(text).toBe('No camera covers this spot; C1: too few pixels, 12 pixels per metre.');
  });

  it('says once what is so for all', () => {
    const out = [0, 1].map((camera) => answer(camera, { state: 'out of frame' }));
    expect(hereWords(assessment, out, names)).toBe('Out of every camera’s frame.');
    const inside = [0, 1].map((camera) => answer(camera, { state: 'inside', hider: van }));
    expect(hereWords(assessment, inside, names)).toBe('This spot is inside Van.');
    expect(hereWords(assessment, [], names)).toBe('No camera is counted here.');
  });
});
