import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import { flatRoof, parapetRoof } from './flatRoof.ts';
import type { Footprint } from './footprint.ts';
import { wingedGable } from './gableRoof.ts';
import { hipOf, hipRoof } from './hipRoof.ts';
import { modelFault } from './modelFault.ts';
import { monopitchRoof } from './monopitchRoof.ts';
import { isRectangle } from './rectangle.ts';
import { rectangleGable } from './rectangleGable.ts';
import type { RoofShape } from './roofShape.ts';
import { straightened } from './straightRun.ts';
import type { Building } from './structure.ts';

const STEEPEST = 85;

/**
 * The roof of a building, on any outline, around courtyards too. With a size that makes no sense, or where no hip can be
 * made, the roof is flat and a note says why. An overhang below `LEAST_SIZE` is none.
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
  const shape = shapeOf(building, footprint, top, overhang);
  if ('faces' in shape) return { ...shape, notes: [...notes, ...shape.notes] };
  return { ...flatRoof(footprint, top, overhang), notes: [...notes, shape] };
}

/** The roof asked for; or why it has to be flat instead. */
function shapeOf(building: Building, footprint: Footprint, top: number, overhang: number): RoofShape | Fault {
  const { roof, name } = building;
  if (roof.kind === 'parapet') return parapetRoof(building, footprint);
  if (roof.kind === 'flat') return flatRoof(footprint, top, overhang);
  if (!(roof.pitch > 0 && roof.pitch <= STEEPEST)) {
    const about = { given: String(roof.pitch), allowed: `above 0 and at most ${STEEPEST}°` };
    return modelFault('roof.pitch', name, ['roof', 'pitch'], about);
  }
  if (roof.kind === 'monopitch') return monopitchRoof(footprint, top, roof, overhang);
  if (roof.kind === 'gable' && footprint.holes.length === 0) {
    const walls = straightened(footprint.outline);
    if (isRectangle(walls.ring)) return rectangleGable(footprint, walls, top, roof, overhang);
  }
  const hip = hipOf(building, footprint, top, overhang);
  if (!('skeleton' in hip)) return hip;
  return roof.kind === 'gable'
    ? wingedGable(building, footprint, hip, top, overhang)
    : hipRoof(footprint, hip, top, overhang);
}

/** The flat roof of a building whose own roof does not close, with a note. */
export function flatRoofInstead(building: Building, footprint: Footprint): RoofShape {
  const { overhang } = building.roof;
  const note = modelFault('roof.flat-instead', building.name, ['roof', 'kind']);
  const flat = flatRoof(footprint, building.base + building.height, overhang >= LEAST_SIZE ? overhang : 0);
  return { ...flat, notes: [note] };
}
