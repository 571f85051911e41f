import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Footprint } from './footprint.ts';
import { modelFault } from './modelFault.ts';
import { offsetRings } from './offset.ts';
import { gableRoof, hipRoof, monopitchRoof } from './pitchedRoof.ts';
import { isRectangle } from './rectangle.ts';
import { cornerAt } from './ring.ts';
import type { RoofShape } from './roofShape.ts';
import type { Building } from './structure.ts';
import { levelTop } from './wall.ts';

/** Thickness of the deck of a flat roof that overhangs, and of a parapet's upstand, m. */
const DECK = 0.2;
const UPSTAND = 0.2;
const STEEPEST = 85;

/**
 * The roof of a building. Mono-pitch, gable and hip stand on rectangles; on any other outline, or with a size that
 * makes no sense, the roof is flat and a note says why. An overhang below `LEAST_SIZE` is none.
 */
export function roofOf(building: Building, footprint: Footprint): RoofShape {
  const { roof, name } = building;
  const top = building.base + building.height;
  const notes: Fault[] = [];
  if (!(roof.overhang >= 0 && Number.isFinite(roof.overhang))) {
    const about = { given: String(roof.overhang), allowed: '0 m or more' };
    notes.push(modelFault('roof.overhang', name, ['roof', 'overhang'], about));
  }
  const overhang = roof.overhang >= LEAST_SIZE && Number.isFinite(roof.overhang) ? roof.overhang : 0;
  const withNotes = (shape: RoofShape): RoofShape => ({ ...shape, notes: [...notes, ...shape.notes] });

  if (roof.kind === 'parapet') return withNotes(parapetRoof(building, footprint));
  if (roof.kind !== 'flat') {
    const reason = flatInstead(building, footprint);
    if (!reason) {
      const make = { gable: gableRoof, hip: hipRoof, monopitch: monopitchRoof }[roof.kind];
      return withNotes(make(footprint.outline, top, roof, overhang));
    }
    notes.push(reason);
  }
  return withNotes(flatRoof(footprint, top, overhang));
}

function flatInstead(building: Building, footprint: Footprint): Fault | null {
  const { roof, name } = building;
  if (!(roof.pitch > 0 && roof.pitch <= STEEPEST)) {
    const about = { given: String(roof.pitch), allowed: `above 0 and at most ${STEEPEST}°` };
    return modelFault('roof.pitch', name, ['roof', 'pitch'], about);
  }
  if (footprint.holes.length > 0 || !isRectangle(footprint.outline)) {
    const allowed = 'a rectangular outline without holes';
    return modelFault('roof.flat-instead', name, ['roof', 'kind'], { given: roof.kind, allowed });
  }
  return null;
}

const upright = (a: Vec2, b: Vec2, foot: number, top: number): Vec3[] => [
  [a[0], a[1], foot],
  [b[0], b[1], foot],
  [b[0], b[1], top],
  [a[0], a[1], top],
];

function flatRoof(footprint: Footprint, top: number, overhang: number): RoofShape {
  const deck = overhang > 0 ? offsetRings([footprint.outline, ...footprint.holes], overhang) : [];
  const edges = deck.flatMap((ring) =>
    ring.map((a, k) => upright(a, cornerAt(ring, k + 1), top, top + DECK)),
  );
  return {
    kind: 'flat',
    topOf: level(footprint, top),
    wallTop: top,
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

function parapetRoof(building: Building, footprint: Footprint): RoofShape {
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
    topOf: level(footprint, top),
    wallTop: top,
    // The upstand's inner side faces the roof, so its edges run the other way round.
    faces: inner.flatMap((ring) => ring.map((a, k) => upright(cornerAt(ring, k + 1), a, roofZ, top))),
    caps: [
      { z: top, outside: 'up' },
      { z: roofZ, outside: 'up' },
    ],
    soffitDepth: () => 0,
    notes: inner.length > 0 ? [] : [narrow],
  };
}

const level =
  (footprint: Footprint, z: number) =>
  (edge: number): readonly Vec3[] =>
    levelTop(cornerAt(footprint.outline, edge), cornerAt(footprint.outline, edge + 1), z);
