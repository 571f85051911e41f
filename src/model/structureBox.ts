import type { Vec2 } from '../base/vector.ts';
import { solidsOf } from './solids.ts';
import type { Structure } from './structure.ts';

/** An axis-parallel rectangle over ground, m. */
export interface GroundBox {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/**
 * The box over ground of what a structure stands for, overhangs and open leaves included. A structure that cannot be
 * built has the box of the corners that were drawn; null without one finite corner.
 */
export function structureBox(structure: Structure): GroundBox | null {
  const points: Vec2[] = [];
  for (const { positions } of solidsOf(structure).solids) {
    for (let k = 0; k < positions.length; k += 3) points.push([positions[k] ?? 0, positions[k + 1] ?? 0]);
  }
  return boxOf(points.length > 0 ? points : drawn(structure));
}

function drawn(structure: Structure): readonly Vec2[] {
  if ('outline' in structure) return structure.outline;
  return structure.kind === 'barrier' ? structure.line : [structure.at];
}

function boxOf(points: readonly Vec2[]): GroundBox | null {
  let box: GroundBox | null = null;
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    box = box
      ? {
          left: Math.min(box.left, x),
          bottom: Math.min(box.bottom, y),
          right: Math.max(box.right, x),
          top: Math.max(box.top, y),
        }
      : { left: x, bottom: y, right: x, top: y };
  }
  return box;
}
