import { expect, test } from 'vitest';
import { createSectioner } from '../../src/assess/section/sectioner.ts';
import { sectionPlane, siteFromSection } from '../../src/assess/section/sectionPlane.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { demo, yard } from '../editor/plans.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { randomSite } from './randomSite.ts';

/** Nearer than this to an end of a stretch, m, a ray with its millimetre at the target need not say the same. */
const GRAZE = 0.02;

/** The sample's mesh fence running away from the yard's camera, 22° off its axis: seen so it closes up. */
function beside(): Plan {
  const fence = demo().structures['mesh-fence'];
  if (fence?.kind !== 'barrier') throw new Error('the sample has a mesh fence');
  const line = [
    [-1, -4],
    [1, -9],
  ] as const;
  const moved = { ...fence, line, closed: false, openings: [] };
  return { ...yard(), structures: { [fence.id]: moved }, structureOrder: [fence.id] };
}

test('with mesh that closes up, places have the state that the point judge gives them', () => {
  const seed = 4177;
  const chance = chanceFrom(seed);
  const wrong: string[] = [];
  let closed = 0;
  for (let site = 0; site < trials(24, 400); site += 1) {
    const made = site % 3 === 0 ? demo() : site % 3 === 1 ? beside() : randomSite(chance, 14, 1);
    const [first = ''] = made.cameraOrder;
    const plan = aimCamera(made, first, {
      pan: site % 3 === 1 ? chance.between(172, 188) : chance.between(0, 360),
    });
    const session = createSession();
    const question = {
      target: { kind: 'ground', height: 0 },
      alone: null,
      situation: null,
      causes: 'quick',
    } as const;
    const assessment = runSteps(session.steps(plan, question, 1));
    const { settings } = plan;
    const section = createSectioner()(assessment, { camera: first, host: null, person: 4, settings });
    if (section === null) continue;
    const plane = sectionPlane(section.camera, section.datum);
    const screens = new Set(section.cuts.filter(({ sheets }) => sheets.length > 0).map(({ solid }) => solid));
    for (let shot = 0; shot < 60; shot += 1) {
      const t = chance.between(section.from, section.to);
      const stretch = section.lines[0]?.stretches.find(({ from, to }) => t > from + GRAZE && t < to - GRAZE);
      if (stretch === undefined || stretch.state === 'inside') continue;
      const [told] = session.probe(assessment, siteFromSection(plane, [t, 0]), first);
      if (stretch.state === 'hidden' && screens.has(stretch.hider ?? -1)) closed += 1;
      if (told?.state !== stretch.state || told.band !== stretch.band || told.hider !== stretch.hider)
        wrong.push(
          `seed ${seed}, site ${site}, at ${t.toFixed(3)} m: ${stretch.state}, judged ${told?.state}`,
        );
    }
  }
  expect(wrong).toEqual([]);
  expect(closed).toBeGreaterThan(5);
});
