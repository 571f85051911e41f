import type { Lit } from './conditions.ts';

/** What lights the cells of a grid for one camera. */
export interface NightHere {
  /** One a cell: 1 where lamps light it enough; null where there are none. */
  readonly lamps: Uint8Array | null;
  /** The camera's own. */
  readonly infrared: Lit | null;
}

/** Whether lamps or the camera's own infrared light a target in the frame, given from the lens. */
export function isLit(
  { lamps, infrared }: NightHere,
  glass: Int32Array | null,
  index: number,
  dx: number,
  dy: number,
  dz: number,
): boolean {
  if (lamps?.[index] === 1) return true;
  return infrared !== null && (glass?.[index] ?? -1) < 0 && infrared(dx, dy, dz) >= 0;
}
