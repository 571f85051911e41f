import { LEAST_SIZE } from '../../../base/tolerance.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { validFootprint } from '../../../model/footprint.ts';
import { faultText } from '../../../plan/faultText.ts';
import { crossingOf, tooFewWords } from './crossingWords.ts';
import type { Draft } from './draft.ts';
import type { Drawn } from './drawSpec.ts';

/** A chain brought to its end, or why it cannot be; then it stays as it is. */
export type Ended =
  | { readonly ok: true; readonly drawn: Drawn }
  | { readonly ok: false; readonly trouble: string };

/** The chain closed to a ring, if that is one that can be built on. */
export function closed({ corners, typed }: Pick<Draft, 'corners' | 'typed'>): Ended {
  const ring = withoutRepeat(corners);
  if (ring.length < 3) return { ok: false, trouble: tooFewWords(3, ring.length) };
  const crossing = crossingOf(ring, true);
  if (crossing) return { ok: false, trouble: crossing.text };
  const built = validFootprint(ring, [], 'This outline');
  if (!built.ok) return { ok: false, trouble: built.faults.map(faultText).join(' ') };
  return { ok: true, drawn: { corners: ring, closed: true, typed } };
}

/** The chain ended as a line. */
export function ended({ corners, typed }: Pick<Draft, 'corners' | 'typed'>): Ended {
  if (corners.length < 2) return { ok: false, trouble: tooFewWords(2, corners.length) };
  return { ok: true, drawn: { corners, closed: false, typed } };
}

/** Where the last corner lies on the first, it is the same one. */
function withoutRepeat(corners: readonly Vec2[]): readonly Vec2[] {
  const first = corners[0];
  const last = corners.at(-1);
  const isSame = first && last && Math.hypot(first[0] - last[0], first[1] - last[1]) < LEAST_SIZE;
  return isSame && corners.length > 1 ? corners.slice(0, -1) : corners;
}
