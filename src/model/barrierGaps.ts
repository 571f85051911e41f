import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE, SAME_POINT } from '../base/tolerance.ts';
import type { BarrierLine } from './barrierLine.ts';
import { modelFault } from './modelFault.ts';
import { fitOpening, openingSizeFaults, overlapFault, type Fitted } from './openingFit.ts';
import { cornerAt } from './ring.ts';
import { span } from './segment.ts';
import type { Barrier } from './structure.ts';

/** An opening of a barrier on edge `edge` of its line; `full`: nothing of the barrier stands below or above it. */
export interface Gap extends Fitted {
  readonly edge: number;
  readonly full: boolean;
}

/** The openings of a barrier that fit on their edges, apart from one another; each of the others is left out with a fault. */
export function barrierGaps(
  barrier: Barrier,
  line: BarrierLine,
): { readonly gaps: readonly Gap[]; readonly faults: Fault[] } {
  const gaps: Gap[] = [];
  const faults: Fault[] = [];
  for (const [index, opening] of barrier.openings.entries()) {
    const wrong = openingSizeFaults(opening, index);
    const edge = line.edges.indexOf(opening.face);
    if (edge < 0) {
      const count = barrier.closed ? barrier.line.length : barrier.line.length - 1;
      const about = { given: opening.face + 1, allowed: `a stretch from 1 to ${count}` };
      wrong.push(modelFault('opening.face', opening.name, ['openings', index, 'face'], about));
    }
    if (wrong.length > 0) {
      faults.push(...wrong);
      continue;
    }
    const isUp = opening.sill + opening.height > barrier.height - LEAST_SIZE;
    const full = isUp && opening.sill < SAME_POINT;
    const face = {
      length: span(cornerAt(line.points, edge), cornerAt(line.points, edge + 1)),
      foot: barrier.base,
      topAt: () => (full ? Number.POSITIVE_INFINITY : barrier.base + barrier.height),
      margin: full ? 0 : LEAST_SIZE,
      headroom: LEAST_SIZE,
    };
    const fit = fitOpening(opening, index, face, false);
    if ('fault' in fit) {
      faults.push(fit.fault);
      continue;
    }
    const others = gaps.filter((gap) => gap.edge === edge);
    // Two gates side by side make one gap; anything else needs barrier between.
    const overlap =
      overlapFault(
        fit.fitted,
        others.filter((gap) => full && gap.full),
        -SAME_POINT,
      ) ??
      overlapFault(
        { ...fit.fitted, foot: 0, head: 1 },
        others.filter((gap) => full !== gap.full).map((gap) => ({ ...gap, foot: 0, head: 1 })),
        LEAST_SIZE,
      ) ??
      overlapFault(
        fit.fitted,
        others.filter((gap) => !full && !gap.full),
        LEAST_SIZE,
      );
    if (overlap) faults.push(overlap);
    else gaps.push({ ...fit.fitted, edge, full });
  }
  return { gaps, faults };
}
