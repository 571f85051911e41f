import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Footprint } from './footprint.ts';
import { innerFace, type InnerFace, type Rooms } from './hollow.ts';
import { modelFault } from './modelFault.ts';
import { fitOpening, openingSizeFaults, overlapFault, type Fitted } from './openingFit.ts';
import { recessesMeet, recessFits, type RecessPlan } from './recess.ts';
import { cornerAt } from './ring.ts';
import { topAt, type RoofShape } from './roofShape.ts';
import { heading, leftOf, moved, span } from './segment.ts';
import type { Building } from './structure.ts';

/** A recess shallower than this is the wall itself, m. */
const LEAST_DEPTH = 0.001;

/** An opening that a wall of a building has: through to a room, or a recess `depth` deep. */
export interface WallOpening extends Fitted {
  /** Edge of the footprint's outline. */
  readonly edge: number;
  readonly depth: number;
  readonly through: InnerFace | null;
}

/**
 * The openings of a building that fit: on a face that exists, apart from its corners, its top and one another, and on
 * a block not so deep that they come out elsewhere. Each of the others is left out with a fault.
 */
export function buildingOpenings(
  building: Building,
  footprint: Footprint,
  roof: RoofShape,
  rooms: Rooms | null,
): { readonly openings: readonly WallOpening[]; readonly faults: readonly Fault[] } {
  const openings: WallOpening[] = [];
  const plans: { readonly opening: WallOpening; readonly plan: RecessPlan }[] = [];
  const faults: Fault[] = [];
  const { outline, holes } = footprint;
  for (const [index, opening] of building.openings.entries()) {
    const wrong = openingSizeFaults(opening, index);
    const edge = footprint.edges.indexOf(opening.face);
    if (edge < 0) {
      const about = { given: opening.face + 1, allowed: `a wall from 1 to ${building.outline.length}` };
      wrong.push(modelFault('opening.face', opening.name, ['openings', index, 'face'], about));
    }
    if (wrong.length > 0) {
      faults.push(...wrong);
      continue;
    }
    const [a, b] = [cornerAt(outline, edge), cornerAt(outline, edge + 1)];
    const face = {
      length: span(a, b),
      foot: building.base,
      topAt: (s: number) => topAt(roof, outline, edge, s),
      margin: LEAST_SIZE,
      headroom: LEAST_SIZE,
    };
    const fit = fitOpening(opening, index, face, footprint.reversed);
    if ('fault' in fit) {
      faults.push(fit.fault);
      continue;
    }
    const { fitted } = fit;
    const overlap = overlapFault(
      fitted,
      openings.filter((other) => other.edge === edge),
      LEAST_SIZE,
    );
    if (overlap) {
      faults.push(overlap);
      continue;
    }
    const refuse = (
      code: 'opening.high' | 'opening.corner' | 'opening.deep',
      key: string,
      allowed: string,
    ): void => {
      faults.push(
        modelFault(code, opening.name, ['openings', index, key], { given: opening.setBack, allowed }),
      );
    };
    if (rooms && fitted.foot < rooms.ceiling) {
      const through = innerFace(rooms, a, b, fitted.from, fitted.to);
      if (fitted.head > rooms.ceiling - LEAST_SIZE) {
        refuse(
          'opening.high',
          'height',
          `a head below the ceiling, ${rooms.ceiling - building.base} m above the base`,
        );
      } else if (!through) {
        refuse(
          'opening.corner',
          'along',
          'further from the corner, where the wall is plain inside and outside',
        );
      } else {
        openings.push({ ...fitted, edge, depth: opening.setBack, through });
      }
      continue;
    }
    const made: WallOpening = { ...fitted, edge, depth: opening.setBack, through: null };
    if (made.depth < LEAST_DEPTH) continue;
    const inwards = leftOf(heading(a, b));
    const mouth = [moved(a, heading(a, b), made.from), moved(a, heading(a, b), made.to)] as const;
    const plan: RecessPlan = [
      ...mouth,
      moved(mouth[1], inwards, made.depth),
      moved(mouth[0], inwards, made.depth),
    ];
    const isBlocked = plans.some(
      ({ opening: other, plan: there }) =>
        made.foot < other.head + LEAST_SIZE &&
        other.foot < made.head + LEAST_SIZE &&
        recessesMeet(plan, there),
    );
    if (isBlocked || !recessFits(plan, [outline, ...holes], edge)) {
      refuse('opening.deep', 'setBack', 'less, so that it stays within the building');
      continue;
    }
    openings.push(made);
    plans.push({ opening: made, plan });
  }
  return { openings, faults };
}
