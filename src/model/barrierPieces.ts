import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { BarrierLine } from './barrierLine.ts';
import { cornerAt } from './ring.ts';
import { heading, moved, span } from './segment.ts';

/** A stretch of an edge of the line, metres from the edge's start. */
export interface Stretch {
  readonly edge: number;
  readonly from: number;
  readonly to: number;
}

/** A run of barrier between gaps: stretch k lies between points k and k + 1. */
export interface Piece {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
  readonly stretches: readonly Stretch[];
}

/** What is left of a line when gaps are taken out of its edges. Gaps that touch are one; slivers below `least` go too. */
export function barrierPieces(line: BarrierLine, gaps: readonly Stretch[], least: number): Piece[] {
  const lengths = line.edges.map((_, k) => span(cornerAt(line.points, k), cornerAt(line.points, k + 1)));
  if (gaps.length === 0) {
    const stretches = lengths.map((to, edge) => ({ edge, from: 0, to }));
    return [{ points: line.points, closed: line.closed, stretches }];
  }
  const runs: Stretch[][] = [];
  let run: Stretch[] = [];
  const end = (): void => {
    if (run.length > 0) runs.push(run);
    run = [];
  };
  lengths.forEach((length, edge) => {
    let from = 0;
    const here = gaps.filter((gap) => gap.edge === edge).sort((a, b) => a.from - b.from);
    for (const gap of here) {
      if (gap.from - from >= least) run.push({ edge, from, to: gap.from });
      end();
      from = Math.max(from, gap.to);
    }
    if (length - from >= least) run.push({ edge, from, to: length });
    else end();
  });
  end();
  return joined(runs, line, lengths).map((stretches) => pieceOf(stretches, line));
}

/** On a closed line the last run goes on into the first, unless a gap lies at the first corner. */
function joined(
  runs: readonly Stretch[][],
  line: BarrierLine,
  lengths: readonly number[],
): readonly Stretch[][] {
  const first = runs[0];
  const last = runs[runs.length - 1];
  if (!line.closed || !first || !last || first === last) return runs;
  const start = first[0];
  const finish = last[last.length - 1];
  const isWhole =
    start?.edge === 0 &&
    start.from < SAME_POINT &&
    finish?.edge === lengths.length - 1 &&
    (lengths[finish.edge] ?? 0) - finish.to < SAME_POINT;
  return isWhole ? [[...last, ...first], ...runs.slice(1, -1)] : runs;
}

function pieceOf(stretches: readonly Stretch[], line: BarrierLine): Piece {
  const at = (edge: number, s: number): Vec2 => {
    const a = cornerAt(line.points, edge);
    return s === 0 ? a : moved(a, heading(a, cornerAt(line.points, edge + 1)), s);
  };
  const points = stretches.map(({ edge, from }) => at(edge, from));
  const last = stretches[stretches.length - 1];
  if (last) points.push(at(last.edge, last.to));
  return { points, closed: false, stretches };
}
