import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { groundOf, Obstacles } from '../../src/assess/ground.ts';
import { sceneOf } from '../../src/assess/sceneOf.ts';
import { areasOf } from '../../src/coverage/areas.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { tallyHiders } from '../../src/coverage/tallyHiders.ts';
import { editionOf } from '../../src/plan/editions.ts';
import { readPlan } from '../../src/plan/read.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { trials } from '../house/seeded.ts';

test('what hides how much, and what of the frame lies inside solids, agree with fine cells of the demo plan', () => {
  const read = readPlan(readFileSync('shared/plans/demo.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the demo plan does not open');
  const scene = sceneOf(read.value, null);
  const { facets } = new Obstacles(scene.solids);
  const cell = trials(0.04, 0.01);
  for (const height of [0, 1.6]) {
    const ground = groundOf(scene, height);
    const fine = groundOf(scene, height, cell);
    for (const camera of scene.cameras) {
      const rule = new BandRule(editionOf('iec-62676-4-2014').bands, [], camera.range);
      const found = sightOf(camera, ground.plane, ground.window, facets);
      const cells = cellsOf(camera, found, ground.grid, ground.bare, rule, new Scratch());
      const areas = areasOf(camera, cells, found, ground.within, rule, facets.solids, 'exact');
      const counted = cellsOf(camera, found, fine.grid, fine.bare, rule, new Scratch());
      const { hiders, screens, inside } = tallyHiders(counted, fine.within.mask, facets.solids.length);
      const compare = (exact: number, cells_: number, edges: number, what: string) =>
        // Walls along the rows err together, by up to half a cell: the bound that a count of cells prints.
        expect(Math.abs(exact - cells_ * cell * cell), `${camera.name}, ${height} m, ${what}`).toBeLessThan(
          0.005 + (edges * cell * cell) / 2,
        );
      expect(areas.insideFrame.how).toBe('exact');
      compare(areas.insideFrame.value, inside.cells[0] ?? 0, inside.edges[0] ?? 0, 'inside');
      facets.solids.forEach(({ name, passage }, solid) => {
        if (passage !== 'solid') return;
        const exact = areas.byHider.find((one) => one.solid === solid)?.area.value ?? 0;
        compare(exact, hiders.cells[solid] ?? 0, hiders.edges[solid] ?? 0, name);
      });
      compare(areas.byState.screened.value, screens.cells[0] ?? 0, screens.edges[0] ?? 0, 'screened');
    }
  }
});
