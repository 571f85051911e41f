import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Footprint } from './footprint.ts';
import { modelFault } from './modelFault.ts';
import { offsetRings } from './offset.ts';
import { cornerAt } from './ring.ts';
import { crossOf, difference, dotOf, heading } from './segment.ts';
import type { Building, Ring } from './structure.ts';

/** Thickness of the ceiling below the soffit's height, m. */
const CEILING = 0.2;
const ON_LINE = 1e-6;

/** The rooms of a hollow building: open to the ground, walls of its thickness, a level ceiling. */
export interface Rooms {
  /** Inner faces of the walls: rooms counter-clockwise, what stands within them clockwise. */
  readonly rings: readonly Ring[];
  readonly ceiling: number;
  readonly thickness: number;
}

/** An inner wall face: edge `edge` of ring `ring`, and where it begins and ends along the outer edge that it backs. */
export interface InnerFace {
  readonly ring: number;
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** The rooms of a building with a wall thickness; a note when there is no space for any, and it stays a block. */
export function roomsOf(
  building: Building,
  footprint: Footprint,
): { readonly rooms: Rooms | null; readonly notes: readonly Fault[] } {
  const { wallThickness, name } = building;
  if (wallThickness === null) return { rooms: null, notes: [] };
  const blockInstead = (given: number, allowed: string, key: string): Fault =>
    modelFault('building.block-instead', name, [key], { given: String(given), allowed });
  if (!(wallThickness >= LEAST_SIZE && Number.isFinite(wallThickness))) {
    const fault = blockInstead(wallThickness, `at least ${LEAST_SIZE} m`, 'wallThickness');
    return { rooms: null, notes: [fault] };
  }
  if (building.height < CEILING + LEAST_SIZE) {
    return { rooms: null, notes: [blockInstead(building.height, `above ${CEILING} m`, 'height')] };
  }
  const rings = offsetRings([footprint.outline, ...footprint.holes], -wallThickness);
  if (rings.length === 0) {
    const fault = blockInstead(wallThickness, 'walls that leave room between them', 'wallThickness');
    return { rooms: null, notes: [fault] };
  }
  return {
    rooms: { rings, ceiling: building.base + building.height - CEILING, thickness: wallThickness },
    notes: [],
  };
}

/** The inner face behind `from`–`to` of the outer edge a–b; null when the wall there is not plain (near a corner). */
export function innerFace(rooms: Rooms, a: Vec2, b: Vec2, from: number, to: number): InnerFace | null {
  const along = heading(a, b);
  for (const [ring, corners] of rooms.rings.entries()) {
    for (let edge = 0; edge < corners.length; edge++) {
      const start = difference(cornerAt(corners, edge), a);
      const end = difference(cornerAt(corners, edge + 1), a);
      const isBehind =
        Math.abs(crossOf(along, start) - rooms.thickness) < ON_LINE &&
        Math.abs(crossOf(along, end) - rooms.thickness) < ON_LINE;
      const [s0, s1] = [dotOf(start, along), dotOf(end, along)];
      if (isBehind && s0 + LEAST_SIZE <= from && to <= s1 - LEAST_SIZE)
        return { ring, edge, from: s0, to: s1 };
    }
  }
  return null;
}
