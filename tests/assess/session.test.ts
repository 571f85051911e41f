import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Assessment, Question } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { STATES } from '../../src/coverage/state.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { chanceFrom } from '../house/seeded.ts';
import { differences } from './closeTo.ts';

const GROUND: Question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'exact',
};
const FACE: Question = {
  target: { kind: 'face', height: 1.6 },
  alone: null,
  situation: null,
  causes: 'exact',
};

function demoPlan(): Plan {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the demo plan does not open');
  return read.value;
}

const turned = (plan: Plan, id: string, by: { pan?: number; tilt?: number; hidden?: boolean }): Plan => {
  const camera = plan.cameras[id];
  if (camera === undefined) throw new Error(`no ${id}`);
  return { ...plan, cameras: { ...plan.cameras, [id]: { ...camera, ...by } } };
};

const fresh = (plan: Plan, question: Question): Assessment =>
  runSteps(createSession().steps(plan, question, 1));
const firstCamera = (plan: Plan): string => plan.cameraOrder[0] ?? '';

test('a session that remembers answers what a new one answers', () => {
  const session = createSession();
  const chance = chanceFrom(31);
  let plan = demoPlan();
  for (let step = 0; step < 6; step += 1) {
    const question = chance.next() < 0.5 ? GROUND : FACE;
    plan = turned(plan, chance.pick(plan.cameraOrder), {
      pan: chance.between(0, 360),
      tilt: chance.between(5, 60),
    });
    const known = runSteps(session.steps(plan, question, step));
    const anew = fresh(plan, question);
    for (const field of ['band', 'best', 'count'] as const)
      expect(Buffer.compare(known.site[field], anew.site[field]), `${field}`).toBe(0);
    expect(known.site.byBand).toEqual(anew.site.byBand);
    expect(known.cameras.map(({ areas, reach }) => ({ areas, reach }))).toEqual(
      anew.cameras.map(({ areas, reach }) => ({ areas, reach })),
    );
  }
});

test('turning one camera works that camera out and keeps the others as they are', () => {
  const session = createSession();
  const plan = demoPlan();
  const before = runSteps(session.steps(plan, GROUND, 1));
  const doing = [...steps(session.steps(turned(plan, firstCamera(plan), { tilt: 33 }), GROUND, 2))];
  const after = runSteps(session.steps(turned(plan, firstCamera(plan), { tilt: 33 }), GROUND, 3));
  expect(doing.filter((words) => words.startsWith('Working out'))).toHaveLength(1);
  expect(after.cameras[1]).toBe(before.cameras[1]);
  expect(after.scene.solids).toBe(before.scene.solids);
  expect(after.cameras[0]).not.toBe(before.cameras[0]);
});

function* steps(job: Generator<{ doing: string }, unknown, void>): Generator<string> {
  for (let next = job.next(); next.done !== true; next = job.next()) yield next.value.doing;
}

test('what is known costs nothing, one camera little, another height more', () => {
  const session = createSession();
  const plan = demoPlan();
  expect(session.estimate(plan, GROUND)).toBeGreaterThan(5);
  runSteps(session.steps(plan, GROUND, 1));
  expect(session.estimate(plan, GROUND)).toBe(0);
  const one = session.estimate(turned(plan, firstCamera(plan), { tilt: 33 }), GROUND);
  expect(one).toBeGreaterThan(0);
  expect(session.estimate(plan, FACE)).toBeGreaterThan(one);
});

test('a session that takes over what another found works nothing out again', () => {
  const plan = demoPlan();
  const wanted = { whole: plan.cameraOrder, causes: [] };
  const far = createSession();
  const session = createSession();
  expect(session.wanted(plan, GROUND, 1000)).toBeNull();
  const quick = { ...GROUND, causes: 'quick' } as const;
  session.adopt(plan, quick, [structuredClone(runSteps(far.cover(plan, quick, wanted, true)))]);
  expect(session.wanted(plan, quick, 1000)).toEqual({ whole: [], causes: [] });
  expect(session.wanted(plan, GROUND, 1000)).toEqual({ whole: [], causes: plan.cameraOrder });
  const causes = { whole: [], causes: plan.cameraOrder };
  session.adopt(plan, GROUND, [structuredClone(runSteps(far.cover(plan, GROUND, causes, false)))]);
  const doing = [...steps(session.steps(plan, GROUND, 2))];
  expect(doing.filter((words) => words.startsWith('Working out'))).toEqual([]);
  expect(differences(runSteps(session.steps(plan, GROUND, 1)), fresh(plan, GROUND))).toEqual([]);
});

test('alone counts one camera; a hidden camera is not counted', () => {
  const plan = demoPlan();
  const [one, two] = plan.cameraOrder;
  if (one === undefined || two === undefined) throw new Error('the demo plan has cameras');
  const alone = fresh(plan, { ...GROUND, alone: one });
  const own = alone.cameras[0]?.cells.band;
  expect([...alone.site.band]).toEqual([...(own ?? [])]);
  const without = plan.cameraOrder.reduce(
    (left, id) => (id === one ? left : turned(left, id, { hidden: true })),
    plan,
  );
  expect([...fresh(without, GROUND).site.band]).toEqual([...(own ?? [])]);
});

test('the states of a camera make up the ground that counts', () => {
  for (const question of [GROUND, FACE])
    for (const { areas } of fresh(demoPlan(), question).cameras) {
      const { byState, byBand } = areas;
      const total = Object.values(byState).reduce((sum, { value }) => sum + value, 0);
      expect(total).toBeCloseTo(22 * 18, 6);
      expect(byBand.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(byState.covered.value, 9);
      expect(areas.seen.value).toBeCloseTo(byState.covered.value + byState['too coarse'].value, 9);
      const hiders = areas.byHider.reduce((sum, { area }) => sum + area.value, 0);
      expect(hiders).toBeCloseTo(byState.hidden.value, 6);
    }
});

test('a point asked alone has the state and density of its cell', () => {
  const session = createSession();
  const assessment = runSteps(session.steps(demoPlan(), FACE, 1));
  const { grid } = assessment.site;
  const chance = chanceFrom(8);
  let asked = 0;
  for (let shot = 0; shot < 300; shot += 1) {
    const [column, row] = [chance.whole(0, grid.columns - 1), chance.whole(0, grid.rows - 1)];
    const cell = row * grid.columns + column;
    const point = [
      grid.left + (column + 0.5) * grid.cell,
      grid.bottom + (row + 0.5) * grid.cell,
      1.6,
    ] as const;
    for (const answer of session.probe(assessment, point)) {
      const cells = assessment.cameras.find(({ camera }) => camera.id === answer.camera)?.cells;
      expect(STATES[cells?.state[cell] ?? 0], `${point.join(' ')}`).toBe(answer.state);
      if (answer.state !== 'covered') continue;
      asked += 1;
      expect(cells?.band[cell]).toBe(answer.band);
      expect((cells?.density[cell] ?? 0) / (answer.density ?? 1)).toBeCloseTo(1, 5);
    }
  }
  expect(asked).toBeGreaterThan(50);
});
