import type { FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, type Area } from './area.ts';
import type { ConditionSets, SignedSet } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { FROM_THE_SIDE, TOO_STEEP } from './rule.ts';
import { signedAreas, type Piece } from './seenPieces.ts';
import { areaOf, tallyMarked } from './tally.ts';

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

/** The same from cells. */
export function lostCells(cells: Cells, mask: Uint8Array): CameraAreas['lost'] {
  const { lost, grid } = cells;
  if (lost === null) return NOTHING;
  const counts = tallyMarked(cells, lost, mask, 3);
  return { tooSteep: areaOf(counts, TOO_STEEP, grid), fromTheSide: areaOf(counts, FROM_THE_SIDE, grid) };
}
