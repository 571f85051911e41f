import type { Vec2 } from '../../../base/vector.ts';
import { crossOf, difference, distanceToSegment, dotOf } from '../../../model/segment.ts';
import { windOf } from '../../../model/wind.ts';
import type { SketchMark } from '../chart.ts';
import { ahead, fourOf, headingOf, type Axes } from '../drawing/axes.ts';
import type { Way } from './candidate.ts';
import { sameLine } from './onWay.ts';
import type { SnapEdge } from './planIndex.ts';

/** A line that attracts though nothing is drawn on it. */
export interface Guide {
  readonly key: string;
  readonly name: string;
  readonly way: Way;
  readonly sign: SketchMark['sign'];
  /** From where it is drawn, dashed. */
  readonly source: Vec2;
}

/** What is being drawn: its corners so far, and the working axes. */
export interface Chain {
  readonly corners: readonly Vec2[];
  readonly axes: Axes;
}

/** An end of a neighbour's edge farther from the pointer than this throws no guide, px. */
const FAR = 240;
/** A shorter edge throws none, px. */
const SHORT = 24;
/** Nor does one whose line passes farther from the pointer, px. */
const ASIDE = 40;
/** As many edges as give their direction to the one that is drawn, and as many as are drawn on beyond their ends. */
const PARALLELS = 6;
const BEYOND = 24;

const endless = (origin: Vec2, along: Vec2): Way => ({ origin, along, least: -Infinity, most: Infinity });

/**
 * The guides of a chain: square to and on from its last side, along the working axes, parallel to its sides and to
 * edges near by, in line with its corners; and edges near by drawn on beyond their ends. Of guides on one line the
 * first counts.
 */
export function guidesOf(
  { corners, axes }: Chain,
  around: readonly SnapEdge[],
  point: Vec2,
  metresPerPixel: number,
): readonly Guide[] {
  const near = around.filter(({ length }) => length > SHORT * metresPerPixel);
  const guides: Guide[] = [];
  const add = (key: string, name: string, way: Way, sign: Guide['sign'], source = way.origin): void => {
    if (!guides.some((other) => sameLine(other.way, way))) guides.push({ key, name, way, sign, source });
  };
  const sides = corners.slice(1).map((to, index) => headingOf(corners[index] ?? to, to));
  const last = corners.at(-1);
  const lastSide = sides.at(-1);
  if (last && lastSide !== undefined) {
    add('square', `square to side ${sides.length}`, endless(last, ahead(lastSide + 90)), 'perpendicular');
    add('on', `in line with side ${sides.length}`, endless(last, ahead(lastSide)), 'inLine');
  }
  const [up = 0, right = 90] = fourOf(axes);
  if (last) {
    const alongAxis = (heading: number): string => {
      const toward = (point[0] - last[0]) * ahead(heading)[0] + (point[1] - last[1]) * ahead(heading)[1];
      const wind = windOf(ahead(toward < 0 ? heading + 180 : heading));
      return axes.of === null ? `due ${wind}` : `${wind}, along ${axes.of}`;
    };
    for (const heading of [up, right])
      add(`axis ${heading}`, alongAxis(heading), endless(last, ahead(heading)), 'inLine');
    for (const [index, heading] of sides.slice(0, -1).entries())
      add(`parallel ${index}`, `parallel to side ${index + 1}`, endless(last, ahead(heading)), 'inLine');
    for (const { key, of, from, to } of nearest(near, point).slice(0, PARALLELS))
      add(`parallel ${key}`, `parallel to ${of}`, endless(last, ahead(headingOf(from, to))), 'inLine');
  }
  const through = [up, right, ...(lastSide === undefined ? [] : [lastSide, lastSide + 90])];
  for (const [index, corner] of corners.slice(0, -1).entries())
    for (const heading of through)
      add(
        `line ${index} ${heading}`,
        `in line with corner ${index + 1}`,
        endless(corner, ahead(heading)),
        'inLine',
      );
  for (const { key, of, way } of beyond(near, point, metresPerPixel))
    add(`beyond ${key}`, `in line with ${of}`, way, 'inLine');
  return guides;
}

/** Edges drawn on beyond their ends, those whose lines pass nearest to a point. */
function beyond(edges: readonly SnapEdge[], point: Vec2, metresPerPixel: number) {
  return edges
    .flatMap(({ key, of, from, to, length }) => {
      const along: Vec2 = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
      const off = Math.abs(crossOf(difference(point, from), along));
      if (off > ASIDE * metresPerPixel) return [];
      const share = dotOf(difference(point, from), along);
      const isBefore = share < 0;
      if ((isBefore ? -share : share - length) > FAR * metresPerPixel || (!isBefore && share <= length))
        return [];
      const way: Way = isBefore
        ? { origin: from, along: [-along[0], -along[1]], least: 0, most: Infinity }
        : { origin: to, along, least: 0, most: Infinity };
      return [{ key, of, off, way }];
    })
    .toSorted((a, b) => a.off - b.off)
    .slice(0, BEYOND);
}

/** Edges by how far they are from a point. */
function nearest(edges: readonly SnapEdge[], point: Vec2): readonly SnapEdge[] {
  return edges
    .map((edge) => ({ edge, off: distanceToSegment(point, edge.from, edge.to) }))
    .toSorted((a, b) => a.off - b.off)
    .map(({ edge }) => edge);
}
