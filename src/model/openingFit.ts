import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE, SAME_POINT } from '../base/tolerance.ts';
import { modelFault } from './modelFault.ts';
import { numberFaults } from './size.ts';
import type { Opening } from './structure.ts';

/** The face that an opening is to be cut into: `length` of its edge, heights above z = 0. */
export interface OpenFace {
  readonly length: number;
  readonly foot: number;
  /** Height of its top at `s` metres along. */
  readonly topAt: (s: number) => number;
  /** What must stay at the ends of the edge and below the top, m. */
  readonly margin: number;
  readonly headroom: number;
}

/** An opening as a rectangle on its face. */
export interface Fitted {
  readonly opening: Opening;
  /** Its place in the structure's list, for the paths of faults. */
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly foot: number;
  readonly head: number;
}

const metres = (value: number): string => `${Math.round(value * 1000) / 1000} m`;

/** What is wrong with an opening's own numbers. */
export function openingSizeFaults(opening: Opening, index: number): Fault[] {
  const path = (key: string): (string | number)[] => ['openings', index, key];
  const faults = (['along', 'width', 'height', 'sill', 'setBack'] as const).flatMap((key) =>
    numberFaults(opening[key], path(key), opening.name),
  );
  if (faults.length > 0) return faults;
  for (const key of ['width', 'height'] as const) {
    if (opening[key] < LEAST_SIZE) {
      const about = { given: opening[key], allowed: `at least ${LEAST_SIZE} m` };
      faults.push(modelFault('opening.size', opening.name, path(key), about));
    }
  }
  for (const key of ['sill', 'setBack'] as const) {
    if (opening[key] < 0) {
      const about = { given: opening[key], allowed: '0 m or more' };
      faults.push(modelFault('opening.size', opening.name, path(key), about));
    }
  }
  return faults;
}

/** The opening on its face, or why it does not fit there. `reversed`: the edge runs the other way than it was drawn. */
export function fitOpening(
  opening: Opening,
  index: number,
  face: OpenFace,
  reversed: boolean,
): { readonly fitted: Fitted } | { readonly fault: Fault } {
  const from = reversed ? face.length - opening.along - opening.width : opening.along;
  const to = from + opening.width;
  if (from < face.margin - SAME_POINT || to > face.length - face.margin + SAME_POINT) {
    const last = face.length - face.margin - opening.width;
    const allowed =
      last >= face.margin
        ? `from ${metres(face.margin)} to ${metres(last)} along its wall`
        : `a width of at most ${metres(face.length - 2 * face.margin)}`;
    const about = { given: opening.along, allowed };
    return { fault: modelFault('opening.outside', opening.name, ['openings', index, 'along'], about) };
  }
  const foot = opening.sill < SAME_POINT ? face.foot : face.foot + opening.sill;
  const head = foot + opening.height;
  const limit = Math.min(face.topAt(from), face.topAt(to)) - face.headroom;
  if (head > limit + SAME_POINT) {
    const about = {
      given: head - face.foot,
      allowed: `a head at most ${metres(limit - face.foot)} above the base`,
    };
    return { fault: modelFault('opening.high', opening.name, ['openings', index, 'height'], about) };
  }
  return { fitted: { opening, index, from, to, foot, head } };
}

/** The fault of an opening that runs into another on the same face; null when `gap` metres stay between them. */
export function overlapFault(fitted: Fitted, others: readonly Fitted[], gap: number): Fault | null {
  const hit = others.find(
    (other) =>
      fitted.from < other.to + gap &&
      other.from < fitted.to + gap &&
      fitted.foot < other.head + gap &&
      other.foot < fitted.head + gap,
  );
  if (!hit) return null;
  const allowed = `at least ${LEAST_SIZE} m away from it`;
  return modelFault('opening.overlaps', fitted.opening.name, ['openings', fitted.index, 'along'], {
    given: hit.opening.name,
    allowed,
  });
}
