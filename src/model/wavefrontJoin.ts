import type { MovingLine } from './wavefront.ts';

/** A stretch, or a part of one between two spots of the moment. */
export interface Part {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** Parts within this angle of one another leave a place side by side, rad. */
const SIDE_BY_SIDE = 1e-7;

/**
 * Which part goes on from which: the inside of a loop lies between a part that leaves and the next that arrives. Where they
 * do not take turns, one that is out of turn.
 */
export function followers(parts: readonly Part[], lines: readonly MovingLine[]): Map<Part, Part> | Part {
  const at = new Map<number, { readonly ins: Part[]; readonly outs: Part[] }>();
  const there = (spot: number) => {
    const known = at.get(spot) ?? { ins: [], outs: [] };
    at.set(spot, known);
    return known;
  };
  for (const part of parts) {
    there(part.from).outs.push(part);
    there(part.to).ins.push(part);
  }
  const next = new Map<Part, Part>();
  for (const { ins, outs } of at.values()) {
    const [onlyIn, onlyOut] = [ins[0], outs[0]];
    if (ins.length === 1 && outs.length === 1 && onlyIn && onlyOut) {
      next.set(onlyIn, onlyOut);
      continue;
    }
    const angle = (part: Part, sign: number): number => {
      const along = lines[part.edge]?.along ?? [1, 0];
      return Math.atan2(sign * along[1], sign * along[0]);
    };
    const zero = onlyOut ? angle(onlyOut, 1) - SIDE_BY_SIDE : 0;
    const round = (a: number): number => (((a - zero) % TURN) + TURN) % TURN;
    const all = [
      ...outs.map((part) => ({ part, isOut: true, a: round(angle(part, 1)) })),
      // What arrives from where another leaves counts as just after it: a thin loop between the two.
      ...ins.map((part) => ({ part, isOut: false, a: round(angle(part, -1) + SIDE_BY_SIDE / 2) })),
    ].sort((p, q) => p.a - q.a);
    for (const [k, { part, isOut }] of all.entries()) {
      const following = all[(k + 1) % all.length];
      if (!following || following.isOut === isOut) return part;
      if (isOut) next.set(following.part, part);
    }
  }
  return next;
}

const TURN = 2 * Math.PI;
