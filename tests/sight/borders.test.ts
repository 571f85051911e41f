import { expect, test } from 'vitest';
import { horizontalPlane } from '../../src/base/plane.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { cutPolygon, halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { shareOut } from '../../src/sight/owners.ts';
import { chain, ringArea } from '../../src/sight/rings.ts';
import { boundsOf, sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { randomCamera, randomScene } from '../property/scenes.ts';

const WINDOW = [
  [-15, -15],
  [15, -15],
  [15, 15],
  [-15, 15],
] as const;

/** The owners whose borders do not chain into rings of their area. */
function open(solids: readonly Solid[], camera: Camera): string[] {
  const { frame, footing, solids: shadows } = sightOf(camera, horizontalPlane(0), WINDOW, facetsOf(solids));
  if (frame === null) return [];
  const own = WINDOW.map(([a, b]) => [a - footing.foot[0], b - footing.foot[1]] as const);
  const bounds = boundsOf(cutPolygon(own, frame), frame, halfPlanesOf(own));
  const { areas, borders } = shareOut(shadows, shadows.solid, new Uint8Array(shadows.count), bounds);
  return [...areas].flatMap(([owner, area]) => {
    const pieces = borders.flatMap(({ from, to, left, right }) =>
      left === owner ? [{ from, to, beyond: 0 }] : right === owner ? [{ from: to, to: from, beyond: 0 }] : [],
    );
    const sum = chain(pieces).rings.reduce((total, ring) => total + ringArea(ring), 0);
    return Math.abs(sum - area) > 1e-5 + 1e-6 * area ? [`owner ${owner}: ${area}, rings ${sum}`] : [];
  });
}

test('borders of what hides first make rings of its area', () => {
  const chance = chanceFrom(91);
  for (let trial = 0; trial < trials(40, 3000); trial += 1) {
    const solids = randomScene(chance, chance.whole(2, 10));
    expect(open(solids, randomCamera(chance)), `seed 91, trial ${trial}`).toEqual([]);
  }
});

test('so they do where two faces cross in depth at the very corner of a third', () => {
  // Found by trial among 6,000 seeds: the way to that corner was halved into pieces too short to be chained.
  const chance = chanceFrom(4077);
  expect(open(randomScene(chance, 10), randomCamera(chance))).toEqual([]);
});
