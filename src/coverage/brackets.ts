import type { HalfPlanes } from '../sight/halfPlanes.ts';
import type { Area } from './area.ts';
import type { TargetBox } from './casters.ts';
import type { Asked, Judge } from './judge.ts';

/** Boxes that are looked at in all, at most; and the side below which none is divided, m. */
const MOST_BOXES = 80_000;
const FINEST = 5e-4;
/** Boxes along the longer side of the ground to begin with. */
const FIRST = 16;
/** Rounding of a sum of boxes, m²; also what a hair's breadth along faces may make. */
const ROUNDING = 1e-5;

/** Where targets lie over a rectangle of the plane: their least and greatest height above it, m. */
export interface Heights {
  /** What must be asked in parts of the rectangle. */
  readonly all: readonly number[];
  over(
    x: number,
    y: number,
    hx: number,
    hy: number,
    asked: readonly number[],
  ): { readonly low: number; readonly high: number; readonly left: readonly number[] };
}

/** All targets lie in the plane. */
export const LEVEL: Heights = { all: [], over: () => ({ low: 0, high: 0, left: [] }) };

/** The ground that counts: its rectangle, and convex parts that do not overlap, as half-planes; null: all of it. */
export interface Counted {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
  readonly parts: readonly HalfPlanes[] | null;
}

/**
 * Turns what several judges can make of one target into classes of several kinds, of which each target has one a kind; adds
 * `area` to each that is possible. All that is added for a kind must be possible for some target.
 * @param labels what each judge can make of it
 * @param into   one list a kind, to be filled with possible classes
 */
export type Classes = (labels: readonly (readonly number[])[], into: readonly number[][]) => void;

/** Areas between which the area of a class surely lies. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
}

/** The middle of a bracket, ± half its width. */
export const areaWithin = ({ low, high }: Bracket): Area => ({
  value: (low + high) / 2,
  bound: (high - low) / 2 + ROUNDING,
  how: 'between',
});

interface Node extends TargetBox {
  readonly isIn: boolean;
  readonly parts: readonly number[];
  readonly heights: readonly number[];
  readonly asked: readonly Asked[];
}

/**
 * How much of the ground is of each class, surely at least and at most: boxes that can be of several are divided until they are
 * small, or many. No place is sampled: what is told of a box holds for every target in it.
 * @param kinds how many classes there are of each kind
 * @param most  boxes that are looked at: with few of them bounds are wide, and hold as well
 * @returns     by kind and class
 */
export function bracketed(
  judges: readonly Judge[],
  counted: Counted,
  heights: Heights,
  kinds: readonly number[],
  classes: Classes,
  most = MOST_BOXES,
): readonly (readonly Bracket[])[] {
  const low = kinds.map((count) => new Float64Array(count));
  const high = kinds.map((count) => new Float64Array(count));
  const found = kinds.map((): number[] => []);
  let open: Node[] = firstNodes(judges, counted, heights);
  let looked = 0;
  while (open.length > 0) {
    const next: Node[] = [];
    looked += open.length;
    const isLast = looked + 3 * open.length > most || (open[0]?.hx ?? 0) < FINEST;
    for (const node of open) {
      const own = partsOver(counted.parts, node);
      if (own === null) continue;
      const over = heights.over(node.x, node.y, node.hx, node.hy, node.heights);
      const { x, y, hx: across, hy: along } = node;
      const box = {
        x,
        y,
        z: (over.low + over.high) / 2,
        hx: across,
        hy: along,
        hz: (over.high - over.low) / 2,
      };
      const judged = judges.map((judge, at) => judge.judge(box, node.asked[at] ?? judge.all));
      for (const list of found) list.length = 0;
      classes(
        judged.map(({ labels }) => labels),
        found,
      );
      const isSure = own.isIn && found.every(isOne);
      if (isSure || isLast) {
        const area = 4 * node.hx * node.hy;
        found.forEach((list, kind) => add(list, area, own.isIn, low[kind], high[kind]));
        continue;
      }
      const asked = judged.map(({ left }) => left);
      const [hx, hy] = [node.hx / 2, node.hy / 2];
      for (let quarter = 0; quarter < 4; quarter += 1)
        next.push({
          x: node.x + (quarter % 2 === 0 ? -hx : hx),
          y: node.y + (quarter < 2 ? -hy : hy),
          z: 0,
          hx,
          hy,
          hz: 0,
          isIn: own.isIn,
          parts: own.parts,
          heights: over.left,
          asked,
        });
    }
    open = next;
  }
  return kinds.map((count, kind) =>
    Array.from({ length: count }, (_, one) => ({ low: low[kind]?.[one] ?? 0, high: high[kind]?.[one] ?? 0 })),
  );
}

function firstNodes(judges: readonly Judge[], counted: Counted, heights: Heights): Node[] {
  const [width, height] = [counted.right - counted.left, counted.top - counted.bottom];
  const side = Math.max(width, height) / FIRST;
  const [columns, rows] = [Math.max(1, Math.ceil(width / side)), Math.max(1, Math.ceil(height / side))];
  const [hx, hy] = [width / columns / 2, height / rows / 2];
  const asked = judges.map(({ all }) => all);
  const parts = (counted.parts ?? []).map((_, at) => at);
  return Array.from({ length: columns * rows }, (_, at) => ({
    x: counted.left + (2 * (at % columns) + 1) * hx,
    y: counted.bottom + (2 * Math.floor(at / columns) + 1) * hy,
    z: 0,
    hx,
    hy,
    hz: 0,
    isIn: counted.parts === null,
    parts,
    heights: heights.all,
    asked,
  }));
}

/** Whether a box lies wholly in the parts that count, and which of them reach into it; null where none does. */
function partsOver(
  parts: readonly HalfPlanes[] | null,
  { x, y, hx, hy, isIn, parts: asked }: Node,
): { readonly isIn: boolean; readonly parts: readonly number[] } | null {
  if (isIn || parts === null) return { isIn: true, parts: [] };
  const met: number[] = [];
  for (const at of asked) {
    let isWhole = true;
    let isOut = false;
    for (const [a, b, k] of parts[at] ?? []) {
      const value = a * x + b * y + k;
      const reach = Math.abs(a) * hx + Math.abs(b) * hy + 1e-12 * (1 + Math.abs(k));
      if (value + reach < 0) isOut = true;
      if (value - reach < 0) isWhole = false;
    }
    if (isWhole) return { isIn: true, parts: [] };
    if (!isOut) met.push(at);
  }
  return met.length === 0 ? null : { isIn: false, parts: met };
}

/** Whether all entries of a list are one and the same. */
const isOne = (list: readonly number[]): boolean => list.every((one) => one === list[0]);

function add(
  list: readonly number[],
  area: number,
  isIn: boolean,
  low: Float64Array | undefined,
  high: Float64Array | undefined,
): void {
  const one = list[0];
  if (isIn && one !== undefined && isOne(list) && low) low[one] = (low[one] ?? 0) + area;
  for (const any of new Set(list)) if (high) high[any] = (high[any] ?? 0) + area;
}
