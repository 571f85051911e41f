import { refuse, accept, type Fault, type Outcome } from '../base/fault.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import { coordinateFaults } from './footprint.ts';
import { chainEdges, firstMeet, type ChainEdge } from './meet.ts';
import { modelFault } from './modelFault.ts';
import { cornerAt } from './ring.ts';
import { span } from './segment.ts';
import type { Barrier } from './structure.ts';

/** A line fit to build on: no corner twice, nowhere meeting itself. */
export interface BarrierLine {
  readonly points: readonly Vec2[];
  readonly closed: boolean;
  /** For each edge, the edge that it was in the line given. */
  readonly edges: readonly number[];
}

/**
 * The line of a barrier without repeated corners (each with a note), or which corners stand in the way.
 * Faults: path `['line', corner]`; corners named in `given` count from 1.
 */
export function barrierLine(barrier: Barrier): Outcome<BarrierLine> {
  const { line, name } = barrier;
  const wrong = coordinateFaults(line, ['line'], name);
  if (wrong.length > 0) return refuse(...wrong);
  const notes: Fault[] = [];
  const kept: number[] = [];
  line.forEach((corner, index) => {
    const before = kept[kept.length - 1];
    if (before === undefined || span(cornerAt(line, before), corner) >= SAME_POINT) kept.push(index);
    else notes.push(repeated(name, index));
  });
  const first = kept[0];
  while (barrier.closed && first !== undefined && kept.length > 1) {
    const last = kept[kept.length - 1] ?? 0;
    if (span(cornerAt(line, last), cornerAt(line, first)) >= SAME_POINT) break;
    notes.push(repeated(name, last));
    kept.pop();
  }
  const least = barrier.closed ? 3 : 2;
  if (kept.length < least) {
    const about = { given: kept.length, allowed: `${least} corners or more` };
    return refuse(modelFault('barrier.corners', name, ['line'], about));
  }
  const points = kept.map((index) => cornerAt(line, index));
  const meet = firstMeet(chainEdges(points, 0, barrier.closed));
  if (meet) {
    const number = (index: number): number => (kept[index % kept.length] ?? index) + 1;
    const words = (edge: ChainEdge): string => `corners ${number(edge.index)} to ${number(edge.index + 1)}`;
    const at = number(meet.how === 'crosses' ? meet.first.index : meet.corner.index);
    const given =
      meet.how === 'crosses'
        ? `${words(meet.first)} and ${words(meet.second)}`
        : `corner ${at} and ${words(meet.edge)}`;
    return refuse(modelFault(`barrier.${meet.how}`, name, ['line', at - 1], { given }));
  }
  const edges = (barrier.closed ? kept : kept.slice(0, -1)).map((start, k) => {
    const end = kept[k + 1] ?? line.length;
    let edge = start;
    while (edge + 1 < end && span(cornerAt(line, edge), cornerAt(line, edge + 1)) < SAME_POINT) edge++;
    return edge;
  });
  return accept({ points, closed: barrier.closed, edges }, notes);
}

const repeated = (name: string, index: number): Fault =>
  modelFault('barrier.repeated', name, ['line', index], { given: `corner ${index + 1}` });
