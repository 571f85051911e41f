import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Plan } from '../../plan/plan.ts';
import type { SketchMark } from '../tools/chart.ts';
import type { Pointed } from '../tools/pointed.ts';
import { gridStep } from '../tools/snap.ts';
import { indexOf } from '../tools/snapping/planIndex.ts';

/** What a body that is moved over the ground snaps with: its own corners and edges. */
export interface Body {
  readonly corners: readonly Vec2[];
  readonly edges: readonly (readonly [Vec2, Vec2])[];
}

/** How far the body goes, and what of it met what. */
export interface BodySnapped {
  readonly by: Vec2;
  readonly name: string | null;
  readonly marks: readonly SketchMark[];
}

const CORNER = { mouse: 12, pen: 12, touch: 22 } as const;
const EDGE = { mouse: 8, pen: 8, touch: 14 } as const;

interface Meeting extends BodySnapped {
  readonly order: 1 | 5;
  readonly off: number;
}

/**
 * A movement over the ground, drawn to where a corner of the body meets a corner or an edge of another thing, or an edge
 * of it another's corner; else to the grid.
 * @param others the plan without the body
 * @param level  height of the ground
 */
export function bodySnap(
  others: Plan,
  { corners, edges }: Body,
  by: Vec2,
  at: Pointed,
  free: boolean,
  level: number,
): BodySnapped {
  if (free) return { by: [milli(by[0]), milli(by[1])], name: null, marks: [] };
  const index = indexOf(others);
  const pad = 3 * CORNER[at.by] * at.metresPerPixel;
  const box = ([x, y]: Vec2) => ({ left: x - pad, right: x + pad, bottom: y - pad, top: y + pad });
  const found: Meeting[] = [];
  const meet = (order: 1 | 5, mine: Vec2, theirs: Vec2, name: string) => {
    const off = pixelsBetween(at, mine, theirs, level);
    if (off > (order === 1 ? CORNER : EDGE)[at.by]) return;
    const sign = order === 1 ? 'corner' : 'edge';
    const marks: SketchMark[] = [{ at: [theirs[0], theirs[1], level], sign }];
    found.push({ order, off, by: [by[0] + theirs[0] - mine[0], by[1] + theirs[1] - mine[1]], name, marks });
  };
  const moved = ([x, y]: Vec2): Vec2 => [x + by[0], y + by[1]];
  for (const corner of corners.map(moved)) {
    for (const other of index.corners(box(corner))) meet(1, corner, other.at, other.name);
    for (const other of index.edges(box(corner))) {
      const foot = footOn(corner, other.from, other.to);
      if (foot) meet(5, corner, foot, other.of);
    }
  }
  for (const [a, b] of edges.map(([from, to]) => [moved(from), moved(to)] as const)) {
    const around = {
      left: Math.min(a[0], b[0]) - pad,
      right: Math.max(a[0], b[0]) + pad,
      bottom: Math.min(a[1], b[1]) - pad,
      top: Math.max(a[1], b[1]) + pad,
    };
    for (const other of index.corners(around)) {
      const foot = footOn(other.at, a, b);
      if (foot) meet(5, foot, other.at, other.name);
    }
  }
  const [best] = found.toSorted((a, b) => a.order - b.order || a.off - b.off);
  if (best) return { by: [nano(best.by[0]), nano(best.by[1])], name: best.name, marks: best.marks };
  const step = gridStep(at.metresPerPixel, others.settings.units);
  const grid = (value: number): number => Math.round(Math.round(value / step) * step * 1e7) / 1e7 + 0;
  return { by: [grid(by[0]), grid(by[1])], name: null, marks: [] };
}

const milli = (value: number): number => Math.round(value * 1000) / 1000 + 0;
const nano = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

/** How far apart two places on the ground appear, px. */
function pixelsBetween({ screen, metresPerPixel }: Pointed, a: Vec2, b: Vec2, level: number): number {
  const lifted = ([x, y]: Vec2): Vec3 => [x, y, level];
  const [p, q] = [screen.place(lifted(a)), screen.place(lifted(b))];
  return p && q
    ? Math.hypot(p[0] - q[0], p[1] - q[1])
    : Math.hypot(a[0] - b[0], a[1] - b[1]) / metresPerPixel;
}

/** The foot of a perpendicular on an edge; null where it falls beside it. */
export function footOn([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): Vec2 | null {
  const [dx, dy] = [bx - ax, by - ay];
  const size = dx * dx + dy * dy;
  const share = size > 0 ? ((x - ax) * dx + (y - ay) * dy) / size : -1;
  return share < 0 || share > 1 ? null : [ax + share * dx, ay + share * dy];
}
