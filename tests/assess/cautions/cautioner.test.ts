import { describe, expect, test } from 'vitest';
import { createCautioner } from '../../../src/assess/cautions/cautioner.ts';
import { SEVERITIES, type CautionReport } from '../../../src/assess/cautions/caution.ts';
import { ROWS } from '../../../src/assess/cautions/registry.ts';
import { THRESHOLDS, thresholdOf } from '../../../src/assess/cautions/thresholds.ts';
import { runSteps } from '../../../src/assess/session.ts';
import { setThreshold, tickCaution } from '../../../src/plan/commands/setCautions.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { demo } from '../../editor/plans.ts';
import { block, infrared, night, severities, siteOf } from './sites.ts';

const reportOf = (plan: Plan, camera: string): CautionReport => {
  const report = runSteps(createCautioner().steps(plan, camera));
  if (report === null) throw new Error(`no cautions about ${camera}`);
  return report;
};

describe('the cautions about a camera of the demo plan', () => {
  const plan = demo();
  const report = reportOf(plan, 'C1');

  test('come worst first, of one severity the one farthest past its limit', () => {
    const ranks = report.cautions.map(({ severity }) => SEVERITIES.indexOf(severity));
    expect(ranks).toEqual(ranks.toSorted((one, two) => one - two));
    report.cautions.slice(1).forEach((one, k) => {
      const before = report.cautions[k];
      const isSame = before?.severity === one.severity;
      expect(isSame ? before.weight : Infinity).toBeGreaterThanOrEqual(one.weight);
    });
    expect(report.cautions.length).toBeGreaterThan(5);
  });

  test('have ids of their own that the plan file can keep, and known limits', () => {
    const ids = report.cautions.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const ticked = ids.reduce((sum, id) => tickCaution(sum, 'C1', id, true), plan);
    const read = readPlan(planText(ticked));
    expect(read.ok && read.value.cameras['C1']?.card.ticked).toEqual(ids);
    for (const { thresholds } of report.cautions)
      for (const id of thresholds) expect(THRESHOLDS[id].row).toBeGreaterThan(0);
  });

  test('say what is not given', () => {
    expect(report.lacks).toContain('requirements');
    expect(report.lacks).not.toContain('boundary');
  });

  test('are the same when asked again, and asked anew of another plan', () => {
    const cautioner = createCautioner();
    const first = runSteps(cautioner.steps(plan, 'C1'));
    expect(runSteps(cautioner.steps(plan, 'C1'))).toBe(first);
    const [stop] = report.cautions;
    const other = tickCaution(plan, 'C1', stop?.id ?? '', true);
    expect(runSteps(cautioner.steps(other, 'C1'))?.cautions[0]?.ticked).toBe(true);
    expect(runSteps(cautioner.steps(plan, 'nobody'))).toBeNull();
  });
});

test('every row of the table is there', () => {
  expect(Object.keys(ROWS).map(Number)).toEqual(Array.from({ length: 40 }, (_, row) => row + 1));
});

describe('conditions', () => {
  const cube = block([-0.05, 0.2, 0.05, 0.3], [1.55, 0.1]);

  test('a caution of the night is told of the night only', () => {
    const day = { ...night, id: 'day', name: 'Van away', night: false, away: ['block'] };
    const site = { structures: [cube], camera: infrared, situations: [night, day] };
    const { cautions } = reportOf(siteOf(site), 'C1');
    expect(cautions.find(({ row }) => row === 12)?.situations).toEqual(['night']);
    // Where no conditions are at night, a camera with infrared is looked at in the dark as drawn.
    expect(severities(12, { structures: [cube], camera: infrared, situations: [day] })).toBe('tight');
  });

  test('a caution that holds in all of them names none', () => {
    const site = { camera: { tilt: 12, ...infrared }, structures: [cube], situations: [night] };
    expect(reportOf(siteOf(site), 'C1').cautions.find(({ row }) => row === 17)?.situations).toEqual([]);
  });

  test('what is away in some is looked for in the others', () => {
    const away = { ...night, id: 'away', name: 'Away', away: ['block'] };
    const both = { structures: [cube], camera: infrared, situations: [away] };
    expect(severities(12, both)).toBe('');
    expect(severities(12, { ...both, situations: [away, night] })).toBe('tight');
  });
});

test('a threshold is the plan’s own, or the default; the default again takes it out', () => {
  const plan = siteOf({});
  const set = setThreshold(plan, 'sky.tell', 0.2);
  expect(thresholdOf(set.settings, 'sky.tell')).toBe(0.2);
  expect(thresholdOf(plan.settings, 'sky.tell')).toBe(0.15);
  expect(setThreshold(set, 'sky.tell', 0.2)).toBe(set);
  expect(setThreshold(set, 'sky.tell', null).settings.cautions).toEqual({});
  expect(() => setThreshold(plan, 'sky.tell', Number.NaN)).toThrow(RangeError);
  const read = readPlan(planText(set));
  expect(read.ok && read.value.settings.cautions).toEqual({ 'sky.tell': 0.2 });
});

test('every default lies within its own limits', () => {
  for (const { value, least, most } of Object.values(THRESHOLDS)) {
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
  }
});
