import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { headingOf, ahead } from '../drawing/axes.ts';
import type { Pointed } from '../pointed.ts';
import { HOLD, pixelsOff, reachOf, type SnapCandidate, type SnapOrder, type Way } from './candidate.ts';
import type { Guide } from './guides.ts';
import { crossing, pointOf, shareOf } from './onWay.ts';
import type { SnapCorner, SnapEdge } from './planIndex.ts';
import { pointAtLevel } from './workingPoint.ts';

/** More lines than this are not crossed with one another: the nearest count. */
const CROSSED = 12;

/** Gathers what is within its reach, and half as far again for what may hold. */
export class Candidates {
  readonly found: SnapCandidate[] = [];
  /** Edges and guides that the pointer is near, for their crossings. */
  private readonly lines: {
    way: Way;
    key: string;
    name: string;
    off: number;
    edge: SnapEdge | null;
    source: Vec2;
  }[] = [];

  private readonly at: Pointed;
  private readonly point: Vec2;
  private readonly level: number;

  constructor(at: Pointed, point: Vec2, level: number) {
    this.at = at;
    this.point = point;
    this.level = level;
  }

  private add(
    order: SnapOrder,
    candidate: Pick<SnapCandidate, 'key' | 'point' | 'off' | 'name' | 'sign'> & Partial<SnapCandidate>,
  ): void {
    const reach = candidate.reach ?? reachOf(order, this.at.by);
    if (candidate.off <= HOLD * reach)
      this.found.push({ seenAt: null, way: null, guides: [], edge: null, ...candidate, order, reach });
  }

  /** Corners of things, at the height at which they are nearest to the pointer. */
  corners(corners: readonly SnapCorner[]): void {
    for (const { key, at: point, heights, name, of, heading } of corners) {
      const { off, z } = this.nearestHeight(point, heights);
      const edge = heading === null ? null : { heading, of };
      this.add(1, { key, point, off, name, sign: 'corner', seenAt: [point[0], point[1], z], edge });
    }
  }

  /** The first corner of a chain, on which a press closes it. */
  closing(point: Vec2): void {
    const reach = Math.max(16, reachOf(1, this.at.by));
    const off = pixelsOff(this.at, point, this.level);
    this.add(1, { key: 'close', point, off, reach, name: 'corner 1, which closes', sign: 'ring' });
  }

  /** Middles of edges, feet of perpendiculars from the last corner, edges. */
  edges(edges: readonly SnapEdge[], last: Vec2 | null): void {
    for (const side of edges) {
      if (!(side.length > 0)) continue;
      const heading = headingOf(side.from, side.to);
      const edge = { heading, of: side.of };
      const way: Way = { origin: side.from, along: ahead(heading), least: 0, most: side.length };
      const middle = pointOf(way, side.length / 2);
      const half = this.nearestHeight(middle, side.heights);
      this.add(3, {
        key: `${side.key} middle`,
        point: middle,
        off: half.off,
        name: `middle of a side of ${side.of}`,
        sign: 'middle',
        seenAt: [middle[0], middle[1], half.z],
        edge,
      });
      if (last) this.foot(side, way, last, edge);
      const on = this.nearestOn(way, side.heights);
      this.lines.push({ way, key: side.key, name: side.of, off: on.off, edge: side, source: side.from });
      this.add(5, {
        key: side.key,
        point: on.point,
        off: on.off,
        name: `on a side of ${side.of}`,
        sign: 'edge',
        seenAt: on.seenAt,
        way,
        guides: [side.from, side.to],
        edge,
      });
    }
  }

  private foot(side: SnapEdge, way: Way, last: Vec2, edge: SnapCandidate['edge']): void {
    const share = shareOf(way, last);
    // Past its ends, or from a corner that lies on it, an edge has no perpendicular.
    if (share <= 0 || share >= side.length) return;
    const foot = pointOf(way, share);
    if (Math.hypot(foot[0] - last[0], foot[1] - last[1]) < 0.01) return;
    const { off, z } = this.nearestHeight(foot, side.heights);
    this.add(4, {
      key: `${side.key} foot`,
      point: foot,
      off,
      name: `square to a side of ${side.of}`,
      sign: 'perpendicular',
      seenAt: [foot[0], foot[1], z],
      guides: [last, foot],
      edge,
    });
  }

  guides(guides: readonly Guide[]): void {
    for (const { key, name, way, sign, source } of guides) {
      const point = pointOf(way, shareOf(way, this.point));
      const off = pixelsOff(this.at, point, this.level);
      this.lines.push({ way, key, name, off, edge: null, source });
      this.add(6, { key, point, off, name, sign, way, guides: [source, point] });
    }
  }

  /** Where the lines gathered so far cross near the pointer. */
  crossings(last: Vec2 | null): void {
    const far = HOLD * 2 * reachOf(2, this.at.by);
    const near = this.lines
      .filter(({ off }) => off <= far)
      .toSorted((a, b) => a.off - b.off)
      .slice(0, CROSSED);
    for (const [index, a] of near.entries())
      for (const b of near.slice(index + 1)) {
        // Edges of one thing meet in its corners, which count already.
        if (a.edge && b.edge && a.edge.owner === b.edge.owner) continue;
        const point = crossing(a.way, b.way);
        if (!point) continue;
        // A guide from the last corner that meets an edge at a right angle ends in the foot of its perpendicular.
        const isFoot = last !== null && (a.edge === null) !== (b.edge === null) && isSquare(a.way, b.way);
        if (isFoot && sameSpot((a.edge ? b : a).source, last)) continue;
        const names = [a, b].map(({ edge, name }) => (edge ? `side of ${name}` : name));
        const sided = a.edge ?? b.edge;
        this.add(2, {
          key: [a.key, b.key].toSorted().join(' × '),
          point,
          off: pixelsOff(this.at, point, this.level),
          name: names.join(' and '),
          sign: 'crossing',
          guides: [a, b].flatMap(({ edge, source }) => (edge ? [edge.from, edge.to] : [source, point])),
          edge: sided ? { heading: headingOf(sided.from, sided.to), of: sided.of } : null,
        });
      }
  }

  /** As long as a side drawn before, the way that the pointer is. */
  equalLengths(corners: readonly Vec2[]): void {
    const last = corners.at(-1);
    if (!last) return;
    const away = Math.hypot(this.point[0] - last[0], this.point[1] - last[1]);
    if (!(away > 0)) return;
    const heading = headingOf(last, this.point);
    for (const [length, index] of sideLengths(corners)) {
      const way: Way = { origin: last, along: ahead(heading), least: length, most: length };
      const point = pointOf(way, length);
      this.add(7, {
        key: `equal ${index}`,
        point,
        off: pixelsOff(this.at, point, this.level),
        name: `as long as side ${index + 1}`,
        sign: 'equal',
      });
    }
  }

  private nearestHeight(point: Vec2, heights: readonly number[]): { off: number; z: number } {
    let best = { off: Infinity, z: this.level };
    for (const z of this.at.screen.plan ? heights.slice(0, 1) : heights) {
      const off = pixelsOff(this.at, point, z);
      if (off < best.off) best = { off, z };
    }
    return best;
  }

  private nearestOn(way: Way, heights: readonly number[]): { off: number; point: Vec2; seenAt: Vec3 } {
    let best = { off: Infinity, point: way.origin, z: this.level };
    for (const z of this.at.screen.plan ? heights.slice(0, 1) : heights) {
      const below = this.at.screen.plan ? this.point : pointAtLevel(this.at, z);
      if (!below) continue;
      const point = pointOf(way, shareOf(way, below));
      const off = pixelsOff(this.at, point, z);
      if (off < best.off) best = { off, point, z };
    }
    return { off: best.off, point: best.point, seenAt: [best.point[0], best.point[1], best.z] };
  }
}

const isSquare = (a: Way, b: Way): boolean =>
  Math.abs(a.along[0] * b.along[0] + a.along[1] * b.along[1]) < 1e-6;

const sameSpot = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9;

/** The lengths of a chain's sides, each with its number from nought. */
export function sideLengths(corners: readonly Vec2[]): readonly (readonly [length: number, index: number])[] {
  return corners.slice(1).map(([x, y], index) => {
    const [x0, y0] = corners[index] ?? [x, y];
    return [Math.hypot(x - x0, y - y0), index] as const;
  });
}
