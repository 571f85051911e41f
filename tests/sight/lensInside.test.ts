import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Passage } from '../../src/model/passage.ts';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { lensInside, touchedSolids } from '../../src/sight/lensInside.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { boxSolid } from './boxSolid.ts';

/** A box turned about all three axes, with the way from its own frame to the site's. */
function tumbledBox(chance: Chance, id: string, passage: Passage) {
  const half = [chance.between(0.5, 3), chance.between(0.5, 3), chance.between(0.5, 3)] as const;
  const middle = [chance.between(-9, 9), chance.between(-9, 9), chance.between(-9, 9)] as const;
  const turns = [chance.between(0, 7), chance.between(0, 7), chance.between(0, 7)] as const;
  const toSite = ([x, y, z]: readonly number[]): Vec3 => {
    let point = [x ?? 0, y ?? 0, z ?? 0];
    turns.forEach((turn, axis) => {
      const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
      const [s, c] = [Math.sin(turn), Math.cos(turn)];
      const [p, q] = [point[i] ?? 0, point[j] ?? 0];
      point = point.map((n, at) => (at === i ? c * p - s * q : at === j ? s * p + c * q : n));
    });
    return [(point[0] ?? 0) + middle[0], (point[1] ?? 0) + middle[1], (point[2] ?? 0) + middle[2]];
  };
  const own = boxSolid(id, [0, 0, -half[2]], [2 * half[0], 2 * half[1], 2 * half[2]], 0, passage);
  const corners = Array.from({ length: 8 }, (_, at) =>
    toSite([...own.positions.subarray(at * 3, at * 3 + 3)]),
  );
  const solid: Solid = { ...own, positions: Float64Array.from(corners.flat()) };
  return { solid, half, toSite };
}

/** How far a place of a box's own frame is out of it, m; negative how deep in. */
const outside = (place: readonly number[], half: readonly number[]): number => {
  const over = place.map((n, axis) => Math.abs(n) - (half[axis] ?? 0));
  return Math.max(...over) <= 0 ? Math.max(...over) : Math.hypot(...over.map((n) => Math.max(0, n)));
};

/** A place anywhere around a box, or within two millimetres of one of its faces, edges or corners. */
function placeBy(chance: Chance, half: readonly number[]): number[] {
  const near = chance.next() < 0.6;
  return half.map((n) => {
    if (near && chance.next() < 0.5) return chance.pick([-1, 1]) * (n + chance.between(-0.002, 0.002));
    return n * chance.between(-1.3, 1.3);
  });
}

test('a lens is in a box where it is more than a millimetre deep, and touches it a millimetre off or nearer', () => {
  const chance = chanceFrom(91);
  const met = { in: 0, touching: 0, off: 0 };
  for (let trial = 0; trial < trials(600, 20_000); trial += 1) {
    const { solid, half, toSite } = tumbledBox(chance, 'box', 'solid');
    const far = boxSolid('far', [60, 60, 0], [1, 2, 3]);
    const facets = facetsOf([far, solid]);
    const place = placeBy(chance, half);
    const off = outside(place, half);
    if (Math.abs(Math.abs(off) - 0.001) < 1e-9) continue;
    const name = `seed 91, trial ${trial}, ${off} m`;
    expect(lensInside(toSite(place), facets), `${name}`).toBe(off < -0.001 ? 1 : null);
    const touched = touchedSolids(toSite(place), facets);
    expect(touched === null ? null : [...touched], `${name}`).toEqual(Math.abs(off) < 0.001 ? [0, 1] : null);
    met[off < -0.001 ? 'in' : Math.abs(off) < 0.001 ? 'touching' : 'off'] += 1;
  }
  expect(Math.min(met.in, met.touching, met.off)).toBeGreaterThan(60);
});

test('mesh or glass holds no lens, but a lens in it looks out through it', () => {
  const chance = chanceFrom(92);
  for (const passage of ['screen', 'clear'] as const)
    for (let trial = 0; trial < trials(100, 2000); trial += 1) {
      const { solid, half, toSite } = tumbledBox(chance, 'mesh', passage);
      const place = placeBy(chance, half);
      const off = outside(place, half);
      if (Math.abs(off - 0.001) < 1e-9) continue;
      const facets = facetsOf([solid]);
      expect(lensInside(toSite(place), facets)).toBe(null);
      const touched = touchedSolids(toSite(place), facets);
      expect(touched?.[0] ?? 0, `seed 92, trial ${trial}, ${off} m`).toBe(off < 0.001 ? 1 : 0);
    }
});

test('a lens in the notch of a house with a corner cut out is not in it', () => {
  // Two boxes of one mesh, corner to corner around a notch: what turns round one does not turn round the other.
  const [one, two] = [boxSolid('l', [0, 0, 0], [4, 4, 3]), boxSolid('l', [4, 4, 0], [4, 4, 3])];
  const solid: Solid = {
    ...one,
    positions: Float64Array.from([...one.positions, ...two.positions]),
    triangles: Uint32Array.from([...one.triangles, ...two.triangles.map((corner) => corner + 8)]),
  };
  const facets = facetsOf([solid]);
  expect([lensInside([4, 0, 1], facets), lensInside([0, 4, 1], facets)]).toEqual([null, null]);
  expect([lensInside([1, 1, 1], facets), lensInside([5, 4, 1], facets)]).toEqual([0, 0]);
});
