import type { FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, type Area } from './area.ts';
import type { ConditionSets, SignedSet } from './conditions.ts';
import type { CameraAreas, Cells } from './coverage.ts';
import { FROM_THE_SIDE, TOO_STEEP } from './rule.ts';
import { pieceAreas, type Piece } from './seenPieces.ts';
import { areaOf, tallyMarked } from './tally.ts';

const NOTHING: CameraAreas['lost'] = { tooSteep: NO_AREA, fromTheSide: NO_AREA };

/** Where faces fall below the band of their density, along the limits' own curves. */
export function lostAreas(pieces: readonly Piece[], found: FoundSight): CameraAreas['lost'] {
  const signed = (pick: (conditions: ConditionSets) => readonly SignedSet[]): Area => {
    const signs = (pieces[0] ? pick(pieces[0].conditions) : []).map(({ sign }) => sign);
    if (signs.length === 0) return NO_AREA;
    return pieceAreas(pieces, found, (conditions) => pick(conditions).map(({ set }) => set)).reduce<Area>(
      (sum, { value, bound }, at) => ({
        value: sum.value + (signs[at] ?? 1) * value,
        bound: sum.bound + bound,
        how: 'exact',
      }),
      NO_AREA,
    );
  };
  const all = signed(({ lowered }) => lowered);
  const fromTheSide = signed(({ loweredFromSide }) => loweredFromSide);
  return { tooSteep: less(all, fromTheSide), fromTheSide: less(fromTheSide, NO_AREA) };
}

/** The same from cells. */
export function lostCells(cells: Cells, mask: Uint8Array): CameraAreas['lost'] {
  const { lost, grid } = cells;
  if (lost === null) return NOTHING;
  const counts = tallyMarked(cells, lost, mask, 3);
  return { tooSteep: areaOf(counts, TOO_STEEP, grid), fromTheSide: areaOf(counts, FROM_THE_SIDE, grid) };
}
