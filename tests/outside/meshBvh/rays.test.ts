import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { touchedSolids } from '../../../src/sight/lensInside.ts';
import { Segments } from '../../../src/sight/segment.ts';
import { treeOf } from '../../../src/sight/tree.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { randomYard } from '../../sight/boxSolid.ts';
import { boxTreeOf } from './boxTree.ts';

/** An end away from the tolerances at either end and from edges: what the library meets does not hang on a millimetre. */
const AGREED = 1e-6;

test('random rays through random yards meet what the library meets, where it meets it', () => {
  const chance = chanceFrom(95);
  const count = { hits: 0, free: 0, edges: 0 };
  for (let trial = 0; trial < trials(30, 600); trial += 1) {
    const solids = randomYard(chance.next, chance.whole(1, 40));
    const facets = facetsOf(solids);
    const segments = new Segments(facets, treeOf(facets));
    const library = boxTreeOf(solids);
    const point = (): Vec3 => [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 6)];
    for (let shot = 0; shot < 300; shot += 1) {
      const [from, to] = [point(), point()];
      const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
      const ours = segments.firstHit(from, to, 'solid');
      const theirs = library.first(from, to);
      // A ray within a micrometre of an edge, or of the millimetre at an end, may go either way.
      const nudged = library.first([from[0] + 1e-6, from[1] - 2e-6, from[2] + 1e-6], to, 0.001 - 1e-5);
      const settled =
        (theirs === null) === (nudged === null) &&
        Math.abs((theirs?.distance ?? 0) - (nudged?.distance ?? 0)) < 1e-3;
      // Of a box that the start touches ours counts the far sides too; few do, as the count of edges holds.
      if (!settled || touchedSolids(from, facets) !== null) {
        count.edges += 1;
        continue;
      }
      if (theirs === null) count.free += 1;
      else count.hits += 1;
      const told = `seed 95, trial ${trial}, from ${from.join(' ')} to ${to.join(' ')}`;
      expect(ours === null, `${told}`).toBe(theirs === null);
      expect(Math.abs((ours?.share ?? 0) * length - (theirs?.distance ?? 0)), `${told}`).toBeLessThan(AGREED);
    }
  }
  expect(count.edges).toBeLessThan((count.hits + count.free) / 100);
  expect(Math.min(count.hits, count.free)).toBeGreaterThan(1000);
});
