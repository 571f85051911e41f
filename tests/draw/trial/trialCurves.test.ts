import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { createShowTrial, settingAt } from '../../../src/draw/trial/shownTrial.ts';
import { trialCurves } from '../../../src/draw/trial/trialCurves.ts';
import { demo } from '../../editor/plans.ts';

const plan = demo();
const [first = '', second = ''] = plan.cameraOrder;
const assessment = runSteps(
  createSession().steps(
    plan,
    { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' },
    1,
  ),
);
const settings = createShowTrial()(assessment, plan, [
  { id: first, letter: 'A' },
  { id: second, letter: 'B' },
  { id: 'nobody', letter: 'C' },
]);

test('settings that the assessment lacks are left out, and what is told of a distance is that of its camera', () => {
  expect(settings.map(({ letter }) => letter)).toEqual(['A', 'B']);
  const [one] = settings;
  if (one === undefined) throw new Error('the first camera is there');
  const near = one.coverage.reach.nearBlindDistance ?? 0;
  expect(settingAt(one, near - 0.01, plan).state).not.toBe('covered');
  expect(settingAt(one, near + 0.01, plan).state).toBe('covered');
});

test('the drawing holds a band line at each limit, a curve in its own dash, its letter, and turns places into distances', () => {
  const { bands } = assessment.edition;
  const drawing = trialCurves(settings, assessment.edition, 600, 220);
  const texts = drawing.marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
  for (const text of [
    ...bands.map(({ name }) => name),
    ...bands.map(({ density }) => String(density)),
    'A',
    'B',
  ])
    expect(texts).toContain(text);
  const dashes = new Set(
    drawing.marks.flatMap((mark) => (mark.kind === 'stroke' && mark.clipped ? [mark.dash] : [])),
  );
  expect(dashes).toEqual(new Set([null, '8 4']));
  expect(drawing.distance(drawing.x(3.25))).toBeCloseTo(3.25, 9);
  expect(drawing.distance(-50)).toBe(0);
  // Equal ratios are equal steps: that is what the scale is for.
  expect(drawing.y(25) - drawing.y(50)).toBeCloseTo(drawing.y(125) - drawing.y(250), 9);
  const reach = Math.max(...settings.map(({ coverage }) => coverage.reach.byBand[0] ?? 0));
  expect(drawing.far).toBeGreaterThan(reach);
  // All that is seen lies within the axes.
  const firm = drawing.marks.flatMap((mark) =>
    mark.kind === 'stroke' && mark.clipped && mark.opacity === 1 ? [mark.d] : [],
  );
  const places = firm.flatMap((d) =>
    [...d.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map((found) => found.slice(1).map(Number)),
  );
  expect(places.length).toBeGreaterThan(20);
  for (const [x = 0, y = 0] of places) {
    expect(x).toBeLessThanOrEqual(drawing.plot.right + 0.01);
    expect(y).toBeGreaterThanOrEqual(drawing.plot.top - 0.01);
    expect(y).toBeLessThanOrEqual(drawing.plot.bottom + 0.01);
  }
});
