import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import { edgeCount, wholeEdge, type Chain, type EdgePart, type Reshaped } from './reshaped.ts';

/** A corner taken out, so that its two edges become one. At the end of an open line its only edge goes. */
export function joinCornerOf(chain: Chain, corner: number): Reshaped {
  const { corners, closed } = chain;
  const size = corners.length;
  const number = (other: number): number => (other > corner ? other - 1 : other);
  const count = edgeCount(chain);
  const before = closed ? (corner - 1 + size) % size : corner - 1;
  const isEnd = before < 0 || corner >= count;
  const joined = isEnd ? 0 : span(cornerAt(corners, corner - 1), cornerAt(corners, corner + 1));
  const after = span(cornerAt(corners, corner), cornerAt(corners, corner + 1));
  const all = { from: -Infinity, to: Infinity };
  const partsOf = (edge: number): readonly EdgePart[] => {
    if (edge !== before && edge !== corner) return wholeEdge(number(edge));
    if (isEnd) return [];
    const here = { edge: number(before), ...all };
    return edge === before
      ? [{ ...here, shift: 0, start: true, end: false }]
      : [{ ...here, shift: joined - after, start: false, end: true }];
  };
  return {
    corners: corners.filter((_, k) => k !== corner),
    parts: Array.from({ length: count }, (_, edge) => partsOf(edge)),
    numbers: corners.map((_, k) => (k === corner ? null : number(k))),
    reversed: false,
  };
}
