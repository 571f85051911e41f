import { expect, test } from 'vitest';
import { hidingFaces, seenStretches } from '../../../src/assess/picture/hidingFaces.ts';
import { createSession } from '../../../src/assess/session.ts';
import { subtract, type Vec3 } from '../../../src/base/vector.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { lensInside } from '../../../src/sight/lensInside.ts';
import { demo } from '../../editor/plans.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { isSettled, nearestBlocker } from '../../oracle/bruteCaster.ts';
import { rawTriangles } from '../../oracle/rawTriangles.ts';
import { randomSite } from '../randomSite.ts';

test('what is seen of an edge is what rays over all triangles see', () => {
  const seed = 5520;
  const chance = chanceFrom(seed);
  const told = { seen: 0, hidden: 0 };
  const wrong: string[] = [];
  for (let site = 0; site < trials(8, 1500); site += 1) {
    const plan = site % 5 === 0 ? demo() : randomSite(chance, 12, 1);
    const question = {
      target: { kind: 'ground', height: 0 },
      alone: null,
      situation: null,
      causes: 'quick',
    } as const;
    const scene = createSession().ahead(plan, question);
    const [camera] = scene.cameras;
    if (camera === undefined) continue;
    const facets = facetsOf(scene.solids);
    if (lensInside(camera.eye, facets) !== null) continue;
    const hiding = hidingFaces(facets, camera.eye);
    const triangles = rawTriangles(scene.solids, ({ passage }) => passage === 'solid');
    for (let edge = 0; edge < 8; edge += 1) {
      const any = (): Vec3 => [chance.between(-14, 14), chance.between(-11, 11), chance.between(0.02, 6)];
      const [from, to] = [any(), any()];
      const seen = seenStretches(hiding, subtract(from, camera.eye), subtract(to, camera.eye));
      for (let shot = 0; shot < 12; shot += 1) {
        const t = chance.next();
        const at = from.map((n, axis) => n + ((to[axis] ?? 0) - n) * t);
        if (!isSettled(triangles, camera.eye, at, 0.004)) continue;
        const isFree = nearestBlocker(triangles, camera.eye, at) === null;
        let isSeen = false;
        for (let k = 0; k < seen.length; k += 2) isSeen ||= t >= (seen[k] ?? 0) && t <= (seen[k + 1] ?? 0);
        told[isFree ? 'seen' : 'hidden'] += 1;
        if (isFree !== isSeen) wrong.push(`seed ${seed}, site ${site}, edge ${edge}, ${t}`);
      }
    }
  }
  expect(wrong).toEqual([]);
  expect(Math.min(told.seen, told.hidden)).toBeGreaterThan(trials(80, 15_000));
});
