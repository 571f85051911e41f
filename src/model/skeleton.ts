import type { Vec2 } from '../base/vector.ts';
import { cornerAt, signedArea } from './ring.ts';
import { dotOf, heading, leftOf } from './segment.ts';
import type { Ring } from './structure.ts';
import { cornerBetween, nextHappening } from './wavefront.ts';
import type { Contours, MovingLine } from './wavefront.ts';
import { meetAt, type Trace } from './wavefrontMeet.ts';

/** A node of a skeleton: a place over ground, and how far the edges have moved inwards when they meet there, m. */
export interface SkeletonNode {
  readonly at: Vec2;
  readonly time: number;
}

/** The straight skeleton of an outline with holes. */
export interface Skeleton {
  readonly nodes: readonly SkeletonNode[];
  /**
   * For each edge, ring by ring, the nodes around what it sweeps, counter-clockwise, from the start of the edge to its
   * end and back over the top. Neighbours share every node between them.
   */
  readonly faces: readonly (readonly number[])[];
}

/** Places nearer than this are one, m; the next is tried when the one before leads nowhere. */
const NEAR = [3e-6, 3e-7, 3e-8, 1e-4, 1e-3, 3e-9];
/** The faces must fill the outline to this share of its area. */
const FILL = 1e-7;

/**
 * What each edge of an outline sweeps when all move inwards at one speed: over ground, the roof of one pitch whose
 * eaves are the edges. Height of a node: its time × the pitch's tangent.
 * @param rings  simple and apart, the outline counter-clockwise, holes clockwise; no corners on a straight run
 * @returns      `stuck`, the edge at which no roof came about, counted ring by ring, for outlines beyond the precision
 *               of the numbers
 * Cost: for each of about as many events as corners, corners × inward corners.
 * Source: the front is moved from event to event (straight skeletons, Aichholzer and others 1995, from memory); how
 * events are resolved is our own, so that many at once, which every symmetrical house has, are no special case.
 */
export function straightSkeleton(rings: readonly Ring[]): Skeleton | { readonly stuck: number } {
  let stuck = 0;
  for (const near of NEAR) {
    const found = skeletonWithin(rings, near);
    if (!('stuck' in found)) return found;
    stuck = found.stuck;
  }
  return { stuck };
}

function skeletonWithin(rings: readonly Ring[], near: number): Skeleton | { readonly stuck: number } {
  const lines: MovingLine[] = rings.flatMap((ring) =>
    ring.map((at, k) => {
      const along = heading(at, cornerAt(ring, k + 1));
      return { at, along, inward: leftOf(along) };
    }),
  );
  const nodes: SkeletonNode[] = rings.flatMap((ring) => ring.map((at) => ({ at, time: 0 })));
  const trace: Trace = { lines, nodes, arcs: [] };
  const ends: number[] = [];
  let count = 0;
  const first: Contours = rings.map((ring) => {
    const start = count;
    count += ring.length;
    return ring.flatMap((at, k) => {
      const edge = start + k;
      ends[edge] = start + ((k + 1) % ring.length);
      const before = start + ((k + ring.length - 1) % ring.length);
      return cornerBetween(lines, before, edge, { node: edge, since: 0, at }) ?? [];
    });
  });
  if (first.flat().length < count) return { stuck: 0 };

  const waiting: { readonly contours: Contours; readonly now: number }[] = [{ contours: first, now: 0 }];
  for (let steps = 0; steps < 4 * count + 16; steps++) {
    const front = waiting.pop();
    if (!front) return facesOf(rings, trace, ends);
    const happening = nextHappening(front.contours, lines, front.now);
    const edge = front.contours[0]?.[0]?.after ?? 0;
    if (!happening) return { stuck: edge };
    const met = meetAt(trace, front.contours, happening, near);
    if ('stuck' in met) return met;
    // Without holes, loops that have come apart go on alone.
    const isAlone = front.contours.length === 1;
    if (isAlone)
      for (const contour of met.contours) waiting.push({ contours: [contour], now: happening.time });
    else if (met.contours.length > 0) waiting.push({ contours: met.contours, now: happening.time });
  }
  return { stuck: waiting[0]?.contours[0]?.[0]?.after ?? 0 };
}

/** Steps along an edge smaller than this have no direction, m. */
const STEP = 3e-6;

/** Whether places along an edge, around its face, run forth once and back once, as over any edge of a skeleton. */
function isPlain(along: readonly number[]): boolean {
  let [turns, forth] = [0, true];
  let last = along[0] ?? 0;
  for (const s of [...along.slice(1), along[0] ?? 0]) {
    if (Math.abs(s - last) < STEP) continue;
    if (s > last !== forth) turns++;
    forth = s > last;
    last = s;
  }
  // From the start of the edge forth to its end, back, and where the face reaches out beyond its start, forth again.
  return turns <= 2;
}

/** Joins the lines around each face to a loop, and checks that the faces fill the outline. */
function facesOf(
  rings: readonly Ring[],
  { nodes, arcs, lines }: Trace,
  ends: readonly number[],
): Skeleton | { readonly stuck: number } {
  const nexts = lines.map((_, edge) => new Map<number, number>([[edge, ends[edge] ?? 0]]));
  for (const { from, to, left, right } of arcs) {
    const [one, other] = [nexts[left], nexts[right]];
    if (!one || !other || one.has(from)) return { stuck: left };
    one.set(from, to);
    if (other.has(to)) return { stuck: right };
    other.set(to, from);
  }
  const faces: number[][] = [];
  let filled = 0;
  for (const [edge, next] of nexts.entries()) {
    const loop = [edge];
    for (let node = next.get(edge); node !== undefined && node !== edge; node = next.get(node)) {
      loop.push(node);
      if (loop.length > next.size) return { stuck: edge };
    }
    if (loop.length !== next.size || loop.length < 3) return { stuck: edge };
    const line = lines[edge];
    if (!line || !isPlain(loop.map((node) => dotOf(nodes[node]?.at ?? line.at, line.along))))
      return { stuck: edge };
    const area = signedArea(loop.map((node) => nodes[node]?.at ?? [0, 0]));
    if (!(area > 0)) return { stuck: edge };
    filled += area;
    faces.push(loop);
  }
  const asked = rings.reduce((sum, ring) => sum + signedArea(ring), 0);
  if (!(Math.abs(filled - asked) <= FILL * asked)) return { stuck: 0 };
  return { nodes, faces };
}
