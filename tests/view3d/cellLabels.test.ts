import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { STATES } from '../../src/coverage/state.ts';
import { askedOfCells, cellLabels, CLOSED_LABEL, DARK_LABEL } from '../../src/view3d/wash/cellLabels.ts';
import { demo } from '../editor/plans.ts';

const judged = (plan: Plan, situation: string | null) =>
  runSteps(
    createSession().steps(
      plan,
      { target: { kind: 'ground', height: 0 }, alone: null, situation, causes: 'quick' },
      1,
    ),
  );

/** The sample with weak infrared, so that the lamp lights what that does not. */
const weak = (plan: Plan): Plan => ({
  ...plan,
  cameras: Object.fromEntries(
    Object.entries(plan.cameras).map(([id, camera]) => [
      id,
      { ...camera, infrared: { range: 4, beam: 110 } },
    ]),
  ),
});

describe('cells are asked', () => {
  test('by day only where screens close up, at night for lamps, and for all where glass throws infrared back', () => {
    expect(askedOfCells(judged(demo(), null))).toBe('screens');
    expect(askedOfCells(judged(demo(), 'night'))).toBe('lamps');
    expect(askedOfCells(judged({ ...demo(), lamps: {}, lampOrder: [] }, 'night'))).toBe('screens');
    const { 'bin-store': bins } = demo().structures;
    if (bins?.kind !== 'block') throw new Error('the sample has a bin store');
    const glass: Plan = {
      ...demo(),
      structures: { ...demo().structures, 'bin-store': { ...bins, passage: 'clear' } },
    };
    expect(askedOfCells(judged(glass, 'night'))).toBe('all');
  });

  test('for lamps: those that are lit by one alone have their band, and no more than one cell of the rest', () => {
    const assessment = judged(weak(demo()), 'night');
    const { grid, band } = assessment.site;
    const { labels } = cellLabels(assessment, assessment.cameras, 'lamps');
    const eyes = assessment.cameras.map(({ camera }) => camera.eye);
    let [lamp, both] = [0, 0];
    labels.forEach((label, cell) => {
      if (label === 0 || label === CLOSED_LABEL) return;
      // Never more than all cameras and lights together give.
      expect(label).toBeLessThanOrEqual(band[cell] ?? 0);
      const x = grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
      const y = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
      const near = Math.min(...eyes.map(([ex, ey, ez]) => Math.hypot(x - ex, y - ey, ez)));
      if (near > 4) lamp += 1;
      else both += 1;
      // The lamp lights 6 m around it.
      expect(Math.hypot(x - 5.03, y + 0.15, 2.3)).toBeLessThan(6 + grid.cell);
    });
    expect(lamp).toBeGreaterThan(500);
    expect(both).toBeLessThan(lamp / 4);
  });

  test('for closed screens: hidden by one that has closed, and through it for no other camera', () => {
    const assessment = judged(demo(), null);
    const { labels } = cellLabels(assessment, assessment.cameras, 'screens');
    const { solids } = assessment.scene;
    const closed = (cell: number): boolean =>
      assessment.cameras.some(
        ({ cells }) =>
          STATES[cells.state[cell] ?? 0] === 'hidden' &&
          solids[cells.hider[cell] ?? -1]?.passage === 'screen',
      );
    const through = (cell: number): boolean =>
      assessment.cameras.some(({ cells }) => STATES[cells.state[cell] ?? 0] === 'screened');
    expect(labels.some((label) => label === CLOSED_LABEL)).toBe(true);
    labels.forEach((label, cell) => {
      if ((label === CLOSED_LABEL) !== (closed(cell) && !through(cell))) throw new Error(`cell ${cell}`);
    });
  });

  test('for all: what no light reaches is dark, what is covered has its band', () => {
    const assessment = judged(weak(demo()), 'night');
    const { labels } = cellLabels(assessment, assessment.cameras, 'all');
    const { band } = assessment.site;
    const differ = labels.filter((label, cell) => (band[cell] ?? 0) > 0 && label !== band[cell]);
    expect(differ).toHaveLength(0);
    expect(labels.filter((label) => label === DARK_LABEL).length).toBeGreaterThan(500);
  });
});
