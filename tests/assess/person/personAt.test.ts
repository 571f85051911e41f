import { expect, test } from 'vitest';
import { createPersonAt } from '../../../src/assess/person/personAt.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { demo } from '../../editor/plans.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';

const PARTS = [
  { part: 'face', height: 1.6 },
  { part: 'plate', height: 0.5 },
] as const;

test('says of a face what a probe of the Model says there, by day and at night', () => {
  const plan = demo();
  const night = plan.situationOrder.find((id) => plan.situations[id]?.night) ?? null;
  if (night === null) throw new Error('the sample has a night');
  const session = createSession();
  const at = (situation: string | null) =>
    runSteps(
      session.steps(
        plan,
        { target: { kind: 'face', height: 1.6 }, alone: null, situation, causes: 'quick' },
        1,
      ),
    );
  const [byDay, atNight] = [at(null), at(night)];
  const [seenByDay, seenAtNight] = [createPersonAt(), createPersonAt()];
  const chance = chanceFrom(8);
  const states = new Set<string>();
  for (let shot = 0; shot < trials(30, 3000); shot += 1) {
    const place = [chance.between(-12, 12), chance.between(-14, 8)] as const;
    const camera = chance.pick(plan.cameraOrder);
    const asked = {
      camera,
      at: place,
      looks: { kind: 'bearing', bearing: 0 },
      lens: null,
      parts: PARTS,
    } as const;
    const seen = seenByDay(byDay, plan, asked)?.parts[0];
    if (!seen) throw new Error('nothing seen');
    // The probe knows of no way that faces look: only what is seen, and from how far above, is the same.
    const [day] = session.probe(byDay, seen.point, camera);
    expect([seen.day.state, seen.day.density, seen.day.depression, seen.day.hider]).toEqual([
      day?.state,
      day?.density,
      day?.depression,
      day?.hider,
    ]);
    states.add(seen.day.state);
    const dark = seenAtNight(atNight, plan, asked)?.parts[0];
    const [probed] = session.probe(atNight, seen.point, camera);
    expect(dark?.night.state).toBe(probed?.state);
    states.add(dark?.night.state ?? '');
    // Whoever is lit is not too dark.
    expect(dark?.night.state === 'too dark' && dark.light !== null).toBe(false);
  }
  expect([...states]).toEqual(expect.arrayContaining(['covered', 'hidden', 'out of frame']));
});

test('a camera that is not there sees nobody', () => {
  const plan = demo();
  const assessment = runSteps(
    createSession().steps(
      plan,
      { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' },
      1,
    ),
  );
  const asked = {
    camera: 'none',
    at: [0, 0],
    looks: { kind: 'bearing', bearing: 0 },
    lens: null,
    parts: PARTS,
  } as const;
  expect(createPersonAt()(assessment, plan, asked)).toBeNull();
});
