import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { STATES } from '../../src/coverage/state.ts';
import type { Ground } from '../../src/model/ground.ts';
import { terrainOf } from '../../src/model/terrain.ts';
import { readPlan } from '../../src/plan/read.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
if (!read.ok) throw new Error('the demo plan does not open');
const site = read.value;

const spots = (heights: readonly number[]): Ground => ({
  kind: 'spots',
  spots: (
    [
      [-30, -30],
      [40, -30],
      [40, 40],
      [-30, 40],
      [6, -6],
      [4, -6],
      [8, -6],
      [6, -5],
      [6, -7.5],
    ] as const
  ).map((at, index) => ({ at, height: heights[index] ?? 0, got: 'measured' })),
});

const asked = (ground: Ground, height: number, situation: string | null = null) => {
  const session = createSession();
  const target = { kind: 'height', height } as const;
  const plan = { ...site, ground };
  const question = { target, alone: null, situation, causes: 'exact' } as const;
  return { session, assessment: runSteps(session.steps(plan, question, 1)) };
};

test('spots of one height are flat ground: the same states, and areas within their ±', () => {
  const flat = asked({ kind: 'flat', height: 0 }, 1.6).assessment;
  const even = asked(spots([]), 1.6).assessment;
  flat.cameras.forEach(({ cells, areas }, at) => {
    const same = even.cameras[at];
    if (!same) throw new Error('a camera is missing');
    const differ = cells.state.reduce((n, state, cell) => n + (state === same.cells.state[cell] ? 0 : 1), 0);
    // Targets that an edge of the frame or a shadow runs through may fall to either side by rounding.
    expect(differ).toBeLessThan(5);
    for (const state of STATES) {
      const [one, two] = [areas.byState[state], same.areas.byState[state]];
      expect(Math.abs(one.value - two.value), `${state}`).toBeLessThan(one.bound + two.bound + 1e-6);
    }
  });
});

test('on a slope with a hump, by day and at night, cells are what rays make of them', () => {
  const ground = spots([-1, 0.5, 1.5, 0, 1.6, 0, 0.1, 0, 0.2]);
  const chance = chanceFrom(5);
  for (const situation of [null, 'night']) {
    const { session, assessment } = asked(ground, 0.5, situation);
    const terrain = terrainOf(ground, assessment.scene.board)?.terrain;
    const groundIndex = assessment.scene.solids.findIndex(({ id }) => id === 'ground');
    const behindGround = assessment.cameras.map(({ cells }) =>
      [...cells.hider.keys()].filter((cell) => cells.hider[cell] === groundIndex),
    );
    expect(behindGround.flat().length).toBeGreaterThan(50);
    for (let shot = 0; shot < trials(400, 8000); shot += 1) {
      const camera = chance.whole(0, assessment.cameras.length - 1);
      const one = assessment.cameras[camera];
      if (!one || !terrain) throw new Error('nothing to ask');
      const { grid, state } = one.cells;
      const behind = behindGround[camera] ?? [];
      const cell =
        shot % 2 === 0 && behind.length > 0 ? chance.pick(behind) : chance.whole(0, state.length - 1);
      const x = grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
      const y = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
      const by = ([dx, dy]: readonly [number, number]) =>
        session
          .probe(assessment, [x + dx, y + dy, terrain.heightAt(x + dx, y + dy) + 0.5])
          .find((answer) => answer.camera === one.camera.id);
      const around = [
        [0, 0],
        [0.003, 0],
        [-0.003, 0],
        [0, 0.003],
        [0, -0.003],
      ] as const;
      const judged = around.map((at) => by(at)?.state);
      if (new Set(judged).size > 1) continue;
      const word = STATES[state[cell] ?? 0];
      expect(word, `seed 5, ${one.camera.name} at ${x} ${y}`).toBe(judged[0]);
    }
  }
});

test('light changes what is covered, not what is seen', () => {
  const ground = spots([-1, 0.5, 1.5, 0, 1.6, 0, 0.1, 0, 0.2]);
  // So little infrared that much of what is seen is dark.
  const cameras = Object.fromEntries(
    Object.entries(site.cameras).map(([id, one]) => [id, { ...one, infrared: { range: 4, beam: 90 } }]),
  );
  const [day, night] = [null, 'night'].map((situation) => {
    const target = { kind: 'ground', height: 0 } as const;
    const question = { target, alone: null, situation, causes: 'exact' } as const;
    return runSteps(createSession().steps({ ...site, cameras, ground }, question, 1)).cameras;
  });
  const dark = night?.map(({ areas }) => areas.byState['too dark'].value) ?? [];
  expect(Math.max(...dark)).toBeGreaterThan(20);
  night?.forEach(({ areas }, at) => {
    expect(areas.seen.value).toBeCloseTo(day?.[at]?.areas.seen.value ?? Number.NaN, 6);
  });
});
