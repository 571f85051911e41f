import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { groundOf, Obstacles } from '../../src/assess/ground.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { siteOf } from '../../src/coverage/site.ts';
import { readPlan } from '../../src/plan/read.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { trials } from '../house/seeded.ts';

test('the best of several cameras, exactly, agrees with fine cells within their bound and far below it', () => {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the demo plan does not open');
  for (const target of [
    { kind: 'ground', height: 0 },
    { kind: 'face', height: 1.6 },
  ] as const) {
    const { site, scene, cameras, edition, faceCaps } = runSteps(
      createSession().steps(read.value, { target, alone: null, situation: null, causes: 'exact' }, 1),
    );
    expect(site.byBand.every(({ how }) => how === 'exact')).toBe(true);
    const fine = groundOf(scene, target.height, trials(0.04, 0.01));
    const { facets } = new Obstacles(scene.solids);
    const cells = cameras.map(({ camera }) => {
      const rule = new BandRule(edition.bands, faceCaps, camera.range);
      const found = sightOf(camera, fine.plane, fine.window, facets);
      return cellsOf(camera, found, fine.grid, fine.bare, rule, new Scratch());
    });
    const counted = siteOf(
      fine.grid,
      cells,
      cells.map((_, at) => at),
      fine.counted,
      fine.open,
      edition.bands.length,
    );
    [...site.byBand, site.unseen].forEach((area, at) => {
      const reference = [...counted.byBand, counted.unseen][at];
      if (reference === undefined) throw new Error('as many areas as bands');
      expect(Math.abs(area.value - reference.value), `${target.kind}, ${at}`).toBeLessThan(
        0.01 + reference.bound / 2,
      );
      expect(area.bound).toBeLessThan(0.05);
    });
    const total = [...site.byBand, site.unseen].reduce((sum, { value }) => sum + value, 0);
    expect(total).toBeCloseTo(site.open.value, 6);
  }
});
