import type { Solid } from '../../model/solid.ts';
import { GROUND } from '../ground/terrainFaces.ts';
import { solidsBox } from '../modelBox.ts';
import type { Box } from '../orbit.ts';
import type { Sheet } from '../sheet.ts';

/** What is shown just now. */
interface Standing {
  readonly plan: string;
  readonly solids: readonly Solid[];
  /** Nothing is being drawn. */
  readonly resting: boolean;
}

/** How it is looked at. */
interface Looking {
  readonly sheet: Sheet;
  readonly width: number;
  readonly height: number;
}

/** Notices when things come at once onto a board that was empty: a shape to begin with, what was pasted. */
export class Arrival {
  private empty: string | null = null;

  /** Whether they did, and lie in part outside the window. Who draws the first outline keeps the view. */
  outOfView({ plan, solids, resting }: Standing, looking: Looking): boolean {
    const wasEmpty = this.empty === plan;
    const isEmpty = !solids.some(({ id }) => id !== GROUND);
    this.empty = isEmpty ? plan : null;
    if (isEmpty || !wasEmpty || !resting) return false;
    const box = solidsBox(solids.filter(({ id }) => id !== GROUND));
    return box !== null && !isWithin(box, looking);
  }
}

/** Whether every corner of a box is in the window. */
function isWithin({ low, high }: Box, { sheet, width, height }: Looking): boolean {
  return [0, 1, 2, 3, 4, 5, 6, 7].every((corner) => {
    const spot = sheet.spotFromSite([
      (corner & 1) === 0 ? low[0] : high[0],
      (corner & 2) === 0 ? low[1] : high[1],
      (corner & 4) === 0 ? low[2] : high[2],
    ]);
    return spot !== null && spot.x >= 0 && spot.x <= width && spot.y >= 0 && spot.y <= height;
  });
}
