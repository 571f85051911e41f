import type { Vec2 } from '../base/vector.ts';
import { dotOf } from './segment.ts';
import { cornerBetween, placeAt } from './wavefront.ts';
import type { Contours, FrontCorner, Happening, MovingLine } from './wavefront.ts';
import { followers, type Part } from './wavefrontJoin.ts';

/** A line over which two faces meet: `left` is the face on its left hand, `right` that on its right. */
interface Arc {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
}

/** What has been found of a skeleton so far. */
export interface Trace {
  readonly lines: readonly MovingLine[];
  readonly nodes: { readonly at: Vec2; readonly time: number }[];
  readonly arcs: Arc[];
}

/** Corners that are in one place at the moment. */
interface Spot {
  readonly corners: FrontCorner[];
  readonly at: Vec2;
  /** Something ends or begins here. */
  isNode: boolean;
}

/**
 * Lets happen what happens at a time: corners that are in one place become a node, stretches that lie upon one another
 * become a ridge, and what is left is joined anew, so that each loop keeps its inside on its left. It does not ask
 * which kind of event it is, and takes any number of them at once.
 * @param near  places nearer than this are one, m
 * @returns     the contours that go on, or the edge at which they could not be joined
 */
export function meetAt(
  trace: Trace,
  contours: Contours,
  happening: Happening,
  near: number,
): { readonly contours: Contours } | { readonly stuck: number } {
  const { time } = happening;
  const { spots, spotOf } = spotsAt(contours, happening, near);
  const parts = partsAt(contours, happening, spots, spotOf, trace.lines, near);
  const left = withoutRidges(trace, parts, spots, time);
  for (const spot of spots) {
    if (!spot.isNode) continue;
    const node = nodeAt(trace, spot, time);
    for (const corner of spot.corners) {
      if (corner.node === node) continue;
      trace.arcs.push({ from: corner.node, to: node, left: corner.before, right: corner.after });
    }
  }
  return joined(trace, left, spots, time);
}

function spotsAt(
  contours: Contours,
  happening: Happening,
  near: number,
): { readonly spots: Spot[]; readonly spotOf: Map<FrontCorner, number> } {
  const all = contours.flat();
  const places = all.map((corner) => placeAt(corner, happening.time));
  const parent = all.map((_, k) => k);
  const root = (k: number): number => {
    let at = k;
    while (parent[at] !== at) at = parent[at] ?? at;
    return at;
  };
  const index = new Map(all.map((corner, k) => [corner, k]));
  const unite = (a: number, b: number): void => {
    parent[root(a)] = root(b);
  };
  for (const contour of contours) {
    contour.forEach((corner, k) => {
      if (!happening.vanished.includes(corner)) return;
      const next = contour[(k + 1) % contour.length];
      const [a, b] = [index.get(corner), next && index.get(next)];
      if (a !== undefined && b !== undefined) unite(a, b);
    });
  }
  for (let i = 0; i < all.length; i++) {
    const p = places[i];
    for (let j = i + 1; p && j < all.length; j++) {
      const q = places[j];
      if (q && Math.abs(p[0] - q[0]) < near && Math.abs(p[1] - q[1]) < near) unite(i, j);
    }
  }
  const spots: Spot[] = [];
  const spotOfRoot = new Map<number, number>();
  const spotOf = new Map<FrontCorner, number>();
  // The slowest corner is the one whose place is surest.
  const order = all.map((_, k) => k).sort((a, b) => speed(all[a]) - speed(all[b]));
  for (const k of order) {
    const [corner, at] = [all[k], places[k]];
    if (!corner || !at) continue;
    const r = root(k);
    let spot = spotOfRoot.get(r);
    if (spot === undefined) {
      spot = spots.length;
      spotOfRoot.set(r, spot);
      spots.push({ corners: [], at, isNode: false });
    }
    spotOf.set(corner, spot);
    const there = spots[spot];
    if (there) {
      there.corners.push(corner);
      there.isNode = there.corners.length > 1;
    }
  }
  return { spots, spotOf };
}

const speed = (corner: FrontCorner | undefined): number =>
  corner ? corner.vx * corner.vx + corner.vy * corner.vy : Infinity;

/** The stretches, each cut at the spots that lie on it. */
function partsAt(
  contours: Contours,
  happening: Happening,
  spots: readonly Spot[],
  spotOf: ReadonlyMap<FrontCorner, number>,
  lines: readonly MovingLine[],
  near: number,
): Part[] {
  const parts: Part[] = [];
  for (const contour of contours) {
    contour.forEach((first, k) => {
      const last = contour[(k + 1) % contour.length];
      const line = lines[first.after];
      const [from, to] = [spotOf.get(first), last && spotOf.get(last)];
      if (!line || from === undefined || to === undefined || from === to) return;
      const start = spots[from]?.at ?? [0, 0];
      const length = dotOf(offset(spots[to]?.at ?? start, start), line.along);
      const forced = happening.hits.flatMap(({ corner, stretch }) => {
        const spot = stretch === first ? spotOf.get(corner) : undefined;
        return spot === undefined ? [] : [spot];
      });
      const on: { spot: number; s: number }[] = [];
      spots.forEach((spot, index) => {
        if (index === from || index === to) return;
        const away = offset(spot.at, start);
        const s = dotOf(away, line.along);
        if (s <= 0 || s >= length) return;
        if (Math.abs(dotOf(away, line.inward)) >= near && !forced.includes(index)) return;
        on.push({ spot: index, s });
      });
      on.sort((a, b) => a.s - b.s);
      let at = from;
      for (const spot of [...on.map((each) => each.spot), to]) {
        parts.push({ edge: first.after, from: at, to: spot });
        at = spot;
      }
      for (const { spot } of on) markNode(spots, spot);
    });
  }
  return parts;
}

const offset = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];

function markNode(spots: readonly Spot[], index: number): void {
  const spot = spots[index];
  if (spot) spot.isNode = true;
}

/** Takes out the parts that lie upon one another: their faces meet there in a level ridge. */
function withoutRidges(trace: Trace, parts: readonly Part[], spots: readonly Spot[], time: number): Part[] {
  const waiting = new Map<number, Part[]>();
  const key = (from: number, to: number): number => from * spots.length + to;
  const gone = new Set<Part>();
  for (const part of parts) {
    const back = waiting.get(key(part.to, part.from))?.pop();
    if (back) {
      gone.add(part).add(back);
      markNode(spots, part.from);
      markNode(spots, part.to);
      const [from, to] = [spots[part.to], spots[part.from]];
      if (from && to) {
        const [start, end] = [nodeAt(trace, from, time), nodeAt(trace, to, time)];
        trace.arcs.push({ from: start, to: end, left: part.edge, right: back.edge });
      }
      continue;
    }
    const same = waiting.get(key(part.from, part.to));
    if (same) same.push(part);
    else waiting.set(key(part.from, part.to), [part]);
  }
  return parts.filter((part) => !gone.has(part));
}

/** The node of a spot: one that set out from here just now, or a new one. */
function nodeAt(trace: Trace, spot: Spot, time: number): number {
  for (const { node } of spot.corners) {
    const known = trace.nodes[node];
    if (known && known.at === spot.at) return node;
  }
  for (let node = trace.nodes.length - 1; node >= 0; node--) {
    const known = trace.nodes[node];
    if (!known || known.time < time) break;
    if (known.at === spot.at) return node;
  }
  for (const { node, since } of spot.corners) {
    const known = trace.nodes[node];
    if (known && since >= time - SAME_MOMENT && distance(known.at, spot.at) < SAME_MOMENT) return node;
  }
  trace.nodes.push({ at: spot.at, time });
  return trace.nodes.length - 1;
}

const SAME_MOMENT = 1e-9;
const distance = (a: Vec2, b: Vec2): number => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);

function joined(
  trace: Trace,
  parts: readonly Part[],
  spots: readonly Spot[],
  time: number,
): { readonly contours: Contours } | { readonly stuck: number } {
  const next = followers(parts, trace.lines);
  if (!(next instanceof Map)) return { stuck: next.edge };
  const contours: FrontCorner[][] = [];
  const seen = new Set<Part>();
  for (const start of parts) {
    if (seen.has(start)) continue;
    const contour: FrontCorner[] = [];
    let part = start;
    do {
      seen.add(part);
      const following = next.get(part);
      const spot = spots[part.to];
      if (!following || !spot) return { stuck: part.edge };
      const [only] = spot.corners;
      if (!spot.isNode && only) contour.push(only);
      else if (part.edge !== following.edge) {
        const node = nodeAt(trace, spot, time);
        const corner = cornerBetween(trace.lines, part.edge, following.edge, {
          node,
          since: time,
          at: spot.at,
        });
        if (!corner) return { stuck: part.edge };
        contour.push(corner);
      }
      part = following;
    } while (!seen.has(part));
    if (part !== start || contour.length < 3) return { stuck: part.edge };
    contours.push(contour);
  }
  return { contours };
}
