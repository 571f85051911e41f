import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Footprint } from './footprint.ts';
import { modelFault } from './modelFault.ts';
import { offsetRings } from './offset.ts';
import { cornerAt } from './ring.ts';
import type { RoofShape } from './roofShape.ts';
import type { Building, Ring } from './structure.ts';
import { levelTop } from './wall.ts';

/** Thickness of the deck of a flat roof that overhangs, and of a parapet's upstand, m. */
const DECK = 0.2;
const UPSTAND = 0.2;

const upright = (a: Vec2, b: Vec2, foot: number, top: number): Vec3[] => [
  [a[0], a[1], foot],
  [b[0], b[1], foot],
  [b[0], b[1], top],
  [a[0], a[1], top],
];

/** Walls that all end at one height. */
export const levelWalls = (footprint: Footprint, z: number): Pick<RoofShape, 'topOf' | 'holeTopOf'> => {
  const over = (ring: Ring, edge: number) => levelTop(cornerAt(ring, edge), cornerAt(ring, edge + 1), z);
  return {
    topOf: (edge) => over(footprint.outline, edge),
    holeTopOf: (hole, edge) => over(footprint.holes[hole] ?? [], edge),
  };
};

/** A flat roof at the top of its walls; one that overhangs is a deck above them. */
export function flatRoof(footprint: Footprint, top: number, overhang: number): RoofShape {
  const deck = overhang > 0 ? offsetRings([footprint.outline, ...footprint.holes], overhang) : [];
  const edges = deck.flatMap((ring) =>
    ring.map((a, k) => [upright(a, cornerAt(ring, k + 1), top, top + DECK)]),
  );
  return {
    kind: 'flat',
    ...levelWalls(footprint, top),
    faces: edges,
    caps:
      overhang > 0
        ? [
            { z: top, outside: 'down' },
            { z: top + DECK, outside: 'up' },
          ]
        : [{ z: top, outside: 'up' }],
    soffitDepth: () => overhang,
    notes: [],
  };
}

/** A flat roof within upstands of its walls, around courtyards too. */
export function parapetRoof(building: Building, footprint: Footprint): RoofShape {
  const { parapet } = building.roof;
  const roofZ = building.base + building.height;
  if (!(parapet >= LEAST_SIZE && Number.isFinite(parapet))) {
    const about = { given: String(parapet), allowed: `at least ${LEAST_SIZE} m` };
    const fault = modelFault('roof.parapet', building.name, ['roof', 'parapet'], about);
    return { ...flatRoof(footprint, roofZ, 0), notes: [fault] };
  }
  const top = roofZ + parapet;
  const inner = offsetRings([footprint.outline, ...footprint.holes], -UPSTAND);
  const narrow = modelFault('roof.parapet-narrow', building.name, ['roof', 'kind'], {
    allowed: `a building wider than ${2 * UPSTAND} m`,
  });
  return {
    kind: 'parapet',
    ...levelWalls(footprint, top),
    // The upstand's inner side faces the roof, so its edges run the other way round.
    faces: inner.flatMap((ring) => ring.map((a, k) => [upright(cornerAt(ring, k + 1), a, roofZ, top)])),
    caps: [
      { z: top, outside: 'up' },
      { z: roofZ, outside: 'up' },
    ],
    soffitDepth: () => 0,
    notes: inner.length > 0 ? [] : [narrow],
  };
}
