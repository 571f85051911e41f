import type { Vec2 } from '../base/vector.ts';
import { chainEdges, firstMeet } from './meet.ts';
import { cornerAt } from './ring.ts';
import { crossOf, difference, dotOf, heading, leftOf, moved } from './segment.ts';

/** A joint whose outer corner would stand out further than so many half thicknesses is bevelled. */
const MITRE_LIMIT = 4;

/** One edge of a line with a thickness: its two long sides, both in the direction of the line. */
export interface RibbonEdge {
  readonly leftStart: Vec2;
  readonly leftEnd: Vec2;
  readonly rightStart: Vec2;
  readonly rightEnd: Vec2;
}

/**
 * The sides of a line of corners with a thickness: mitred where it turns, bevelled where it turns sharply, square at
 * open ends. Null when its edges are too short for its turns, so that a side would run backwards or meet another.
 */
export function ribbon(
  line: readonly Vec2[],
  closed: boolean,
  thickness: number,
): readonly RibbonEdge[] | null {
  const half = thickness / 2;
  const count = closed ? line.length : line.length - 1;
  const along = Array.from({ length: count }, (_, k) => heading(cornerAt(line, k), cornerAt(line, k + 1)));
  const edges: RibbonEdge[] = along.map((direction, k) => {
    const start = sides(
      cornerAt(line, k),
      closed || k > 0 ? cornerAt(along, k - 1) : direction,
      direction,
      half,
    );
    const next = closed || k + 1 < count ? cornerAt(along, k + 1) : direction;
    const end = sides(cornerAt(line, k + 1), direction, next, half);
    return {
      leftStart: start.leftAfter,
      leftEnd: end.leftBefore,
      rightStart: start.rightAfter,
      rightEnd: end.rightBefore,
    };
  });
  const isForward = edges.every(
    ({ leftStart, leftEnd, rightStart, rightEnd }, k) =>
      dotOf(difference(leftEnd, leftStart), cornerAt(along, k)) > 1e-6 &&
      dotOf(difference(rightEnd, rightStart), cornerAt(along, k)) > 1e-6,
  );
  if (!isForward) return null;
  const rings = ribbonRings(edges, closed);
  return firstMeet(rings.flatMap((ring, chain) => chainEdges(ring, chain, true))) ? null : edges;
}

/** The points left and right of a corner, as the edge before ends and the edge after begins. */
function sides(
  corner: Vec2,
  before: Vec2,
  after: Vec2,
  half: number,
): { leftBefore: Vec2; leftAfter: Vec2; rightBefore: Vec2; rightAfter: Vec2 } {
  const [one, two] = [leftOf(before), leftOf(after)];
  const [sumX, sumY] = [one[0] + two[0], one[1] + two[1]];
  const scale = half / (1 + dotOf(one, two));
  const mitre: Vec2 = [sumX * scale, sumY * scale];
  const left: Vec2 = [corner[0] + mitre[0], corner[1] + mitre[1]];
  const right: Vec2 = [corner[0] - mitre[0], corner[1] - mitre[1]];
  const plain = { leftBefore: left, leftAfter: left, rightBefore: right, rightAfter: right };
  if (Math.hypot(...mitre) <= MITRE_LIMIT * half) return plain;
  return crossOf(before, after) > 0
    ? { ...plain, rightBefore: moved(corner, one, -half), rightAfter: moved(corner, two, -half) }
    : { ...plain, leftBefore: moved(corner, one, half), leftAfter: moved(corner, two, half) };
}

/** The rings around a ribbon, what it covers on their left. */
export function ribbonRings(edges: readonly RibbonEdge[], closed: boolean): Vec2[][] {
  const right = edges.flatMap(({ rightStart, rightEnd }) => [rightStart, rightEnd]);
  const left = edges.flatMap(({ leftStart, leftEnd }) => [leftStart, leftEnd]).reverse();
  const rings = closed ? [right, left] : [[...right, ...left]];
  return rings.map((ring) =>
    ring.filter((point, k) => {
      const before = cornerAt(ring, k - 1);
      return point[0] !== before[0] || point[1] !== before[1];
    }),
  );
}
