import type { Vec2 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import type { Window } from '../../../src/sight/sight.ts';
import { sightOf } from '../../../src/sight/sightOf.ts';
import { cameraWith } from '../../optics/sampleCamera.ts';

const LENS = 2;
/** How far the target plane lies below the lens: all walls are taller than both. */
const DROP = 0.5;
/** The picture is this many times as high as half its width, so that its lower edge nears the foot. */
const STEEP = 4000;

/**
 * What one lens sees all round of a plane just below it: four level cameras with an HFOV of just 90°, side by side.
 * @param pan of the first
 */
export function seenAllRound(eye: Vec2, solids: readonly Solid[], window: Window, pan = 0): number {
  const facets = facetsOf(solids);
  const seen = [0, 90, 180, 270].map((turn) => {
    const camera = cameraWith({
      eye: [eye[0], eye[1], LENS],
      pan: pan + turn,
      focalLength: 2.8,
      sensor: { width: 5.6, height: 5.6 * STEEP },
      frame: { width: 2000, height: 2000 * STEEP },
    });
    return sightOf(camera, horizontalPlane(LENS - DROP), window, facets).sight.seen.area;
  });
  // Each picture ends at its lower edge, DROP / STEEP before the foot: a triangle of height d and base 2d is not in it.
  const cut = 4 * (DROP / STEEP) ** 2;
  return seen.reduce((sum, area) => sum + area, cut);
}

/** Height of the walls, m. */
export const TALL = 6;
