import { turn } from '../../../base/angle.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { SketchLine, SketchMark, SketchPlate } from '../chart.ts';
import { ahead, fourOf, headingOf } from '../drawing/axes.ts';
import type { Pointed } from '../pointed.ts';
import { gridStep } from '../snap.ts';
import {
  chosen,
  HOLD,
  pixelsOff,
  reachOf,
  type SnapCandidate,
  type SnapOrder,
  type Way,
} from './candidate.ts';
import { Candidates, sideLengths } from './candidates.ts';
import { guidesOf, type Chain } from './guides.ts';
import { crossing, pointOf, shareOf } from './onWay.ts';
import { indexOf, type PlanIndex } from './planIndex.ts';
import type { Box } from './bins.ts';
import { groundPoint, pointAtLevel } from './workingPoint.ts';

/** What a pointer means on the ground, and why. */
export interface Snapped {
  readonly point: Vec2;
  /** Null: snapping was off. */
  readonly order: SnapOrder | null;
  /** Tells the same place from move to move. */
  readonly key: string | null;
  /** "corner of Garage"; null for the grid and for nothing. */
  readonly name: string | null;
  /** The edge that it lies on. */
  readonly edge: SnapCandidate['edge'];
  readonly lines: readonly SketchLine[];
  readonly marks: readonly SketchMark[];
  readonly plates: readonly SketchPlate[];
}

export interface SnapAsk {
  readonly plan: Plan;
  readonly at: Pointed;
  /** The switch; a held Ctrl is in `at`. */
  readonly snapping: boolean;
  readonly chain: Chain;
  /** A press on the first corner closes the chain. */
  readonly closes: boolean;
  /** What it snapped to at the last move. */
  readonly held: string | null;
}

/** Half the angle that fifteen degrees attract within, °. */
const ANGLE_REACH = 2.5;
/** A guide's source is looked for this far around, px. */
const AROUND = 240;

/** The place on the ground that a pointer means; null where its ray misses the ground or sees it edge-on. */
export function snapAt(ask: SnapAsk): Snapped | null {
  const { plan, at, chain } = ask;
  const point = groundPoint(plan, at);
  if (!point) return null;
  const level = groundHeight(plan.ground);
  const unit = plan.settings.units;
  const free = at.free || !ask.snapping;
  if (at.shift && chain.corners.length > 0) return constrained(ask, point, level, free);
  if (free) return plain([milli(point[0]), milli(point[1])]);

  const index = indexOf(plan);
  const last = chain.corners.at(-1) ?? null;
  const close = boxAround(index, at, point, level, 2 * HOLD * reachOf(1, at.by));
  const wide = boxAround(index, at, point, level, AROUND);
  const near = index.edges(wide);
  const candidates = new Candidates(at, point, level);
  const [first] = chain.corners;
  if (ask.closes && first) candidates.closing(first);
  candidates.corners(index.corners(close));
  candidates.edges(index.edges(close), last);
  candidates.guides(guidesOf(chain, near, point, at.metresPerPixel));
  candidates.crossings(last);
  candidates.equalLengths(chain.corners);
  const best = chosen(candidates.found, ask.held, at.screen.seen);
  if (best) return refined(best, ask, point, level);
  const angle = fifteen(chain, point);
  if (angle) return refined(angle, ask, point, level);
  const step = gridStep(at.metresPerPixel, unit);
  const on: Vec2 = [multiple(point[0], step), multiple(point[1], step)];
  return { ...plain(on), order: 9, marks: [{ at: lifted(on, level), sign: 'grid' }] };
}

const plain = (point: Vec2): Snapped => ({
  point,
  order: null,
  key: null,
  name: null,
  edge: null,
  lines: [],
  marks: [],
  plates: [],
});

const milli = (value: number): number => Math.round(value * 1000) / 1000 + 0;
// A tenth of a micrometre: multiples of a foot keep their digits.
const multiple = (value: number, step: number): number =>
  Math.round(Math.round(value / step) * step * 1e7) / 1e7 + 0;
const lifted = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];

/** The ground within so many pixels of the pointer, and of all that stands along its ray. */
function boxAround(index: PlanIndex, at: Pointed, point: Vec2, level: number, pixels: number): Box {
  const steep = at.screen.plan ? 1 : Math.max(0.12, Math.abs(at.ray.along[2]));
  const pad = (pixels * at.metresPerPixel * (at.screen.plan ? 1 : 2)) / steep;
  const high = at.screen.plan || index.top <= level ? point : (pointAtLevel(at, index.top) ?? point);
  return {
    left: Math.min(point[0], high[0]) - pad,
    right: Math.max(point[0], high[0]) + pad,
    bottom: Math.min(point[1], high[1]) - pad,
    top: Math.max(point[1], high[1]) + pad,
  };
}

/** A candidate as what the pointer means; what a line leaves free goes to an equal length or to the grid. */
function refined(
  candidate: SnapCandidate,
  { plan, at, chain }: SnapAsk,
  point: Vec2,
  level: number,
): Snapped {
  const { way, key, order, edge, sign, guides } = candidate;
  const last = chain.corners.at(-1);
  let on = candidate.point;
  const names = [candidate.name];
  const marks: SketchMark[] = [];
  if (way && way.least < way.most) {
    // On an edge the point is the one that the pointer showed at that edge's height.
    const share = shareOf(way, order === 5 ? candidate.point : point);
    const fromLast = last && sameSpot(way.origin, last);
    const equal = fromLast ? equalAlong(way, share, chain.corners, at, level) : null;
    const step = gridStep(at.metresPerPixel, plan.settings.units);
    on = pointOf(way, equal?.share ?? Math.min(way.most, Math.max(way.least, multiple(share, step))));
    if (equal) {
      names.push(equal.name);
      marks.push({ at: lifted(on, level), sign: 'equal' });
    }
  }
  on = [Math.round(on[0] * 1e9) / 1e9 + 0, Math.round(on[1] * 1e9) / 1e9 + 0];
  const name = order === 8 && names.length === 1 ? null : names.filter(Boolean).join(' · ');
  const lines: SketchLine[] = [];
  for (let k = 0; k + 1 < guides.length; k += 2) {
    const [from, to] = [guides[k], guides[k + 1]];
    if (!from || !to) continue;
    const style = order === 5 ? 'live' : 'guide';
    lines.push({
      points: [lifted(from, level), lifted(order === 5 || order === 2 ? to : on, level)],
      closed: false,
      style,
    });
  }
  return {
    point: on,
    order,
    key,
    name,
    edge,
    lines,
    marks: [{ at: lifted(on, level), sign }, ...marks],
    plates: name === null ? [] : [{ at: lifted(on, level), text: name, tone: 'snap' }],
  };
}

const sameSpot = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9;

/** The side drawn before whose length ends a new one near the pointer. */
function equalAlong(
  way: Way,
  share: number,
  corners: readonly Vec2[],
  at: Pointed,
  level: number,
): { readonly share: number; readonly name: string } | null {
  const reach = reachOf(7, at.by);
  const near = sideLengths(corners)
    .map(([length, index]) => {
      const signed = share < 0 ? -length : length;
      return { share: signed, index, off: pixelsOff(at, pointOf(way, signed), level) };
    })
    .filter(({ off }) => off <= reach)
    .toSorted((a, b) => a.off - b.off)[0];
  return near ? { share: near.share, name: `as long as side ${near.index + 1}` } : null;
}

/** The line at a multiple of fifteen degrees to the working axes that the pointer is within 2.5° of. */
function fifteen({ corners, axes }: Chain, point: Vec2): SnapCandidate | null {
  const last = corners.at(-1);
  if (!last || sameSpot(last, point)) return null;
  const heading = headingOf(last, point);
  const nearest = axes.up + Math.round((heading - axes.up) / 15) * 15;
  if (Math.abs(turn(nearest, heading)) > ANGLE_REACH) return null;
  const way: Way = { origin: last, along: ahead(nearest), least: 0, most: Infinity };
  const on = pointOf(way, shareOf(way, point));
  const about = { name: '', sign: 'angle', seenAt: null, guides: [last, on], edge: null } as const;
  return { ...about, key: `angle ${nearest}`, order: 8, point: on, off: 0, reach: 0, way };
}

/** Shift: only along the working axes and square to the last side or on from it; there to crossings, equal lengths, the grid. */
function constrained(ask: SnapAsk, point: Vec2, level: number, free: boolean): Snapped | null {
  const { plan, at, chain } = ask;
  const last = chain.corners.at(-1);
  if (!last) return null;
  const before = chain.corners.at(-2);
  const side = before ? headingOf(before, last) : null;
  const ways = [...fourOf(chain.axes), ...(side === null ? [] : [side - 90, side, side + 90])];
  const heading = sameSpot(last, point) ? chain.axes.up : headingOf(last, point);
  const along = ways.toSorted((a, b) => Math.abs(turn(a, heading)) - Math.abs(turn(b, heading)))[0] ?? 0;
  const way: Way = { origin: last, along: ahead(along), least: 0, most: Infinity };
  const share = shareOf(way, point);
  const far = pointOf(way, share + AROUND * at.metresPerPixel);
  const guide: SketchLine = {
    points: [lifted(last, level), lifted(far, level)],
    closed: false,
    style: 'guide',
  };
  if (free) return { ...plain(pointOf(way, milli(share))), lines: [guide] };
  const crossed = crossedOn(ask, way, point, level);
  if (crossed) return { ...crossed, lines: [guide, ...crossed.lines] };
  const on = pointOf(way, share);
  const about = { name: '', sign: 'angle', seenAt: null, guides: [], edge: null } as const;
  const kept: SnapCandidate = { ...about, key: 'shift', order: 8, point: on, off: 0, reach: 0, way };
  const snapped = refined(kept, { ...ask, plan }, point, level);
  return { ...snapped, lines: [guide] };
}

/** What crosses the way that Shift keeps to, near the pointer's foot on it. */
function crossedOn({ plan, at, chain }: SnapAsk, way: Way, point: Vec2, level: number): Snapped | null {
  const index = indexOf(plan);
  const foot = pointOf(way, shareOf(way, point));
  const near = index.edges(boxAround(index, at, foot, level, AROUND));
  const sides = near.map(({ from, to, of, length }) => ({
    name: `side of ${of}`,
    source: from,
    way: { origin: from, along: ahead(headingOf(from, to)), least: 0, most: length },
  }));
  const guides = guidesOf({ ...chain, corners: chain.corners }, near, foot, at.metresPerPixel);
  const place = at.screen.place(lifted(foot, level));
  if (!place) return null;
  const best = [...sides, ...guides]
    .flatMap(({ name, source, way: other }) => {
      const meet = crossing(way, other);
      const shown = meet && at.screen.place(lifted(meet, level));
      if (!meet || !shown || sameSpot(meet, way.origin)) return [];
      return [{ name, source, meet, off: Math.hypot(shown[0] - place[0], shown[1] - place[1]) }];
    })
    .filter(({ off }) => off <= reachOf(2, at.by))
    .toSorted((a, b) => a.off - b.off)[0];
  if (!best) return null;
  const on: Vec2 = [Math.round(best.meet[0] * 1e9) / 1e9 + 0, Math.round(best.meet[1] * 1e9) / 1e9 + 0];
  return {
    ...plain(on),
    order: 2,
    key: `shift ${best.name}`,
    name: best.name,
    lines: [{ points: [lifted(best.source, level), lifted(on, level)], closed: false, style: 'guide' }],
    marks: [{ at: lifted(on, level), sign: 'crossing' }],
    plates: [{ at: lifted(on, level), text: best.name, tone: 'snap' }],
  };
}
