import type { Vec2 } from '../../base/vector.ts';
import type { Got } from '../../model/structure.ts';
import type { WallView } from './wallView.ts';

/** A dimension from a real edge to the hole: what an installer tapes. */
export interface Taped {
  readonly axis: 'across' | 'up';
  /** "left jamb of Front door", "ground". */
  readonly edge: string;
  /** Where the edge is, in the view's x or y. */
  readonly at: number;
  /** How far it reaches the other way, from where it is taped. */
  readonly from: number;
  readonly to: number;
  /** On which side of the hole the edge lies, as one stands before the wall. */
  readonly side: 'left' | 'right' | 'above' | 'below';
  /** Always above 0, m. */
  readonly size: number;
  /** How the place of the edge is known. */
  readonly got: Got;
}

/** An edge closer than this to the hole is none to tape from, m. */
const LEAST = 0.02;
/** What a metre beside an edge costs, against a metre of tape: whoever tapes must carry the edge over with a level. */
const BESIDE = 0.5;

interface Edge extends Omit<Taped, 'size' | 'axis' | 'side'> {
  /** Better taped from than others of its distance, m. */
  readonly favour: number;
}

/** Two fixed edges across and two up, the nearest first; fewer only where the wall has no more. */
export function tapedFrom(view: WallView, [x, y]: Vec2, ground: number): readonly Taped[] {
  return [...chosen('across', acrossEdges(view), x, y), ...chosen('up', upEdges(view, x, ground), y, x)];
}

/** The nearest edge, and the nearest of the others, from the other side where there is one that is not far off. */
function chosen(axis: Taped['axis'], edges: readonly Edge[], at: number, other: number): Taped[] {
  const cost = (edge: Edge): number =>
    Math.abs(edge.at - at) + BESIDE * Math.max(0, edge.from - other, other - edge.to) - edge.favour;
  const ranked = edges
    .filter((edge) => Math.abs(edge.at - at) >= LEAST)
    .toSorted((one, two) => cost(one) - cost(two));
  const [first, ...rest] = ranked;
  if (!first) return [];
  const [next] = rest;
  const opposite = rest.find((edge) => edge.at < at !== first.at < at);
  // From both sides is the better check, unless one of them is far off; upwards the ground is one of them anyway.
  const isFar = next !== undefined && opposite !== undefined && cost(opposite) > 1.4 * cost(next) + 0.8;
  const second = axis === 'up' || isFar ? next : (opposite ?? next);
  return [first, ...(second ? [second] : [])].map(({ edge, at: place, from, to, got }) => ({
    axis,
    edge,
    at: place,
    side: sideOf(axis, place > at),
    from,
    to,
    size: Math.abs(place - at),
    got,
  }));
}

const sideOf = (axis: Taped['axis'], isMore: boolean): Taped['side'] =>
  axis === 'across' ? (isMore ? 'right' : 'left') : isMore ? 'above' : 'below';

const endName = (side: 'left' | 'right', { ends }: WallView): string =>
  `${side}-hand ${ends[side].sort} (${ends[side].wind})`;

function acrossEdges(view: WallView): Edge[] {
  const { width, foot, openings, topLine, got } = view;
  const top = topLine.reduce((most, [, y]) => Math.max(most, y), foot);
  const whole = { from: foot, to: top, favour: 0 };
  return [
    { edge: endName('left', view), at: 0, ...whole, got: got.across },
    { edge: endName('right', view), at: width, ...whole, got: got.across },
    ...openings.flatMap(({ name, left, right, foot: from, head: to, got: how }) => [
      { edge: `left jamb of ${name}`, at: left, from, to, got: how, favour: 0 },
      { edge: `right jamb of ${name}`, at: right, from, to, got: how, favour: 0 },
    ]),
  ];
}

/** The ground is always one of the two: it is what heights are told above. */
const GROUND_FAVOUR = 1000;

function upEdges(view: WallView, x: number, ground: number): Edge[] {
  const { width, openings, got } = view;
  // The underside of a canopy is where the hole itself is.
  const soffit = view.kind === 'canopy' ? null : view.soffit;
  const top = topEdge(view, x);
  return [
    { edge: 'ground', at: ground, from: x, to: x, got: 'measured', favour: GROUND_FAVOUR },
    soffit
      ? { edge: 'underside of the eaves', at: soffit.y, from: 0, to: width, got: got.up, favour: 0 }
      : { edge: top.name, at: top.y, from: x, to: x, got: got.up, favour: 0 },
    ...openings.flatMap(({ name, left: from, right: to, foot, head, got: how, kind }) => [
      { edge: `head of ${name}`, at: head, from, to, got: how, favour: 0 },
      ...(kind === 'window' ? [{ edge: `sill of ${name}`, at: foot, from, to, got: how, favour: 0 }] : []),
    ]),
  ];
}

const TOPS: Readonly<Record<WallView['kind'], string>> = {
  building: 'top of the wall',
  barrier: 'top',
  block: 'top',
  canopy: 'top of the board',
  tree: 'top',
  vehicle: 'top',
};

/** The top of the wall straight above a place. */
function topEdge({ topLine, kind }: WallView, x: number): { readonly y: number; readonly name: string } {
  for (let k = 0; k + 1 < topLine.length; k += 1) {
    const [p, q] = [topLine[k], topLine[k + 1]];
    if (!p || !q || x > q[0] + 1e-9) continue;
    const share = q[0] > p[0] ? Math.min(1, Math.max(0, (x - p[0]) / (q[0] - p[0]))) : 0;
    const isLevel = Math.abs(q[1] - p[1]) < 1e-6;
    const what = isLevel ? TOPS[kind] : 'roof line straight above';
    return { y: p[1] + (q[1] - p[1]) * share, name: what };
  }
  return { y: topLine.at(-1)?.[1] ?? 0, name: 'top' };
}
