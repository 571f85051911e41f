import type { Scene } from '../assess/scene.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Solid } from '../model/solid.ts';
import { BOARD_EDGE } from './ground/board.ts';
import type { Box } from './orbit.ts';

/** The box of some solids; null where there is none. */
export function solidsBox(solids: readonly Solid[]): Box | null {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const { positions } of solids) {
    for (let at = 0; at + 2 < positions.length; at += 3) {
      for (const axis of [0, 1, 2] as const) {
        const value = positions[at + axis] ?? 0;
        low[axis] = Math.min(low[axis], value);
        high[axis] = Math.max(high[axis], value);
      }
    }
  }
  return low[0] <= high[0] ? { low, high } : null;
}

const kept = new WeakMap<readonly Solid[], Box | null>();

/** The box of baseboard, solids and cameras. */
export function siteBox({ board, solids, ground, cameras }: Scene): Box {
  let box = kept.get(solids);
  if (box === undefined) {
    box = solidsBox(solids);
    kept.set(solids, box);
  }
  const top = cameras.reduce((most, { eye }) => Math.max(most, eye[2]), ground + 1);
  const low: Vec3 = [board.left, board.bottom, Math.min(ground, box?.low[2] ?? ground) - BOARD_EDGE];
  return { low, high: [board.right, board.top, Math.max(top, box?.high[2] ?? top)] };
}
