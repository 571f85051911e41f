import type { FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, type Area } from './area.ts';
import type { ConditionSets, SignedSet } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { lostIn } from './cellCode.ts';
import { FROM_THE_SIDE, KEPT, TOO_STEEP } from './rule.ts';
import { signedAreas, type Piece } from './seenPieces.ts';
import { areaOf } from './tally.ts';
import { relabelled, tallyRuns } from './tallyRuns.ts';

const NOTHING: CameraAreas['lost'] = { tooSteep: NO_AREA, fromTheSide: NO_AREA };

/** Where faces fall below the band of their density, along the limits' own curves. */
export function lostAreas(pieces: readonly Piece[], found: FoundSight): CameraAreas['lost'] {
  // What falls, of that what is in light.
  const lit = ({ inLight }: ConditionSets, sets: readonly SignedSet[]): readonly SignedSet[] =>
    sets.flatMap(({ sign, set }) =>
      inLight(set).map((one): SignedSet => ({ sign: one.sign === sign ? 1 : -1, set: one.set })),
    );
  const [all, side] = signedAreas(pieces, found, (conditions) => [
    lit(conditions, conditions.lowered),
    lit(conditions, conditions.loweredFromSide),
  ]).map((area): Area => ({ ...area, how: 'exact' }));
  const fromTheSide = less(side ?? NO_AREA, NO_AREA);
  return { tooSteep: less(all ?? NO_AREA, fromTheSide), fromTheSide };
}

/** The same from cells. @param mask 1 where areas are counted */
export function lostCells({ faces, grid, runs }: Cells, mask: Uint8Array): CameraAreas['lost'] {
  if (!faces) return NOTHING;
  const fallen = relabelled({ grid, runs }, (code) => (lostIn(code) === KEPT ? -1 : lostIn(code)), mask);
  const counts = tallyRuns({ grid, runs: fallen }, 3);
  return { tooSteep: areaOf(counts, TOO_STEEP, grid), fromTheSide: areaOf(counts, FROM_THE_SIDE, grid) };
}
