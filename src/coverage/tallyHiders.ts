import { codeOf, hiderIn, stateIn } from './cellCode.ts';
import type { Cells } from './coverage.ts';
import { KEPT } from './rule.ts';
import { HIDDEN, INSIDE, SCREENED } from './state.ts';
import type { Tally } from './tally.ts';
import { relabelled, tallyRuns } from './tallyRuns.ts';

const IN_SOLID = codeOf(INSIDE, KEPT, 0);

/**
 * Counts what is hidden within a mask by what is in the way, what is screened, and what of the frame lies inside solids.
 * @param mask null where all cells count
 */
export function tallyHiders(
  { grid, runs }: Pick<Cells, 'grid' | 'runs'>,
  mask: Uint8Array | null,
  solids: number,
): { readonly hiders: Tally; readonly screens: Tally; readonly inside: Tally } {
  // Labels: hidden by each solid, then screened by each, then inside.
  const labelOf = (code: number): number => {
    const state = stateIn(code);
    if (state === HIDDEN) return hiderIn(code);
    if (state === SCREENED) return solids + hiderIn(code);
    return code === IN_SOLID ? 2 * solids : -1;
  };
  const { cells, edges } = tallyRuns(
    { grid, runs: relabelled({ grid, runs }, labelOf, mask) },
    2 * solids + 1,
  );
  const part = (from: number, to: number): Tally => ({
    cells: cells.subarray(from, to),
    edges: edges.subarray(from, to),
  });
  const whole = ({ cells: all, edges: lone }: Tally): Tally => ({
    cells: Float64Array.of(all.reduce((sum, one) => sum + one, 0)),
    edges: Float64Array.of(lone.reduce((sum, one) => sum + one, 0)),
  });
  return {
    hiders: part(0, solids),
    screens: whole(part(solids, 2 * solids)),
    inside: part(2 * solids, 2 * solids + 1),
  };
}
