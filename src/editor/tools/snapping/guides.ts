import type { Vec2 } from '../../../base/vector.ts';
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
/** As many edges as give their direction to the one that is drawn. */
const PARALLELS = 6;

const endless = (origin: Vec2, along: Vec2): Way => ({ origin, along, least: -Infinity, most: Infinity });

/**
 * The guides of a chain: square to and on from its last side, along the working axes, parallel to its sides and to
 * edges near by, in line with its corners; and edges near by drawn on beyond their ends. Of guides on one line the
 * first counts.
 */
export function guidesOf(
  { corners, axes }: Chain,
  near: readonly SnapEdge[],
  point: Vec2,
  metresPerPixel: number,
): readonly Guide[] {
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
  for (const { key, of, from, to, length } of near) {
    if (!(length > 0)) continue;
    const along = ahead(headingOf(from, to));
    for (const [end, out] of [
      [to, along],
      [from, [-along[0], -along[1]]],
    ] as const)
      if (Math.hypot(end[0] - point[0], end[1] - point[1]) < FAR * metresPerPixel)
        add(
          `beyond ${key}`,
          `in line with ${of}`,
          { origin: end, along: out, least: 0, most: Infinity },
          'inLine',
        );
  }
  return guides;
}

/** Edges by how far they are from a point. */
function nearest(edges: readonly SnapEdge[], point: Vec2): readonly SnapEdge[] {
  const off = ({ from, to, length }: SnapEdge): number => {
    const share =
      length > 0
        ? ((point[0] - from[0]) * (to[0] - from[0]) + (point[1] - from[1]) * (to[1] - from[1])) / length ** 2
        : 0;
    const t = Math.min(1, Math.max(0, share));
    return Math.hypot(from[0] + t * (to[0] - from[0]) - point[0], from[1] + t * (to[1] - from[1]) - point[1]);
  };
  return edges
    .filter(({ length }) => length > 0)
    .map((edge) => ({ edge, off: off(edge) }))
    .toSorted((a, b) => a.off - b.off)
    .map(({ edge }) => edge);
}
