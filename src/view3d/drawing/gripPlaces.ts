import type { Grip } from '../../editor/grips/grip.ts';
import type { Spot } from '../sheet.ts';

/** A handle with its place on the window. */
export interface GripAt {
  readonly grip: Grip;
  /** Of the point that it moves. */
  readonly spot: Spot;
  /** A solid stands before it. */
  readonly behind: boolean;
  /** Both ends of the edge that it slides, px. */
  readonly bar: readonly [Spot, Spot] | null;
}

export interface GripPlace extends GripAt {
  /** Where it is drawn; apart from its point where it hangs on a leader. */
  readonly at: Spot;
  readonly leader: boolean;
  /** Another handle near it comes first. */
  readonly small: boolean;
}

/** A bar needs an edge of so many pixels. */
const LEAST_EDGE = 40;
/** What is smaller than this, px, has its handles on leaders so long. */
const TINY = 64;
const LEADER = 20;
/** Handles nearer than this overlap. */
const NEAR = 12;
/** A visible handle within this wins over one behind a solid, px. */
const BEFORE_HIDDEN = 24;

/** Who comes first where handles overlap. */
function rankOf({ part }: Grip): number {
  switch (part) {
    case 'height':
    case 'ridge':
    case 'top':
      return 0;
    case 'corner':
    case 'boundary':
    case 'spot':
      return 1;
    case 'edge':
    case 'overhang':
    case 'crown':
    case 'clear':
    case 'heading':
    case 'opening':
    case 'picture':
      return 2;
    case 'base':
    case 'turn':
      return 3;
    case 'body':
      return 4;
  }
}

/** Which handles of a selection are drawn, and where: short edges have no bar, a small thing's hang on leaders. */
export function gripPlaces(grips: readonly GripAt[]): GripPlace[] {
  const shown = grips.filter(({ bar }) => !bar || apart(bar[0], bar[1]) >= LEAST_EDGE);
  const placed = isTiny(shown)
    ? onLeaders(shown)
    : shown.map((one) => ({ ...one, at: one.spot, leader: false }));
  return placed.map((one) => ({
    ...one,
    small: placed.some(
      (other) =>
        other !== one &&
        apart(other.at, one.at) < NEAR &&
        (rankOf(other.grip) < rankOf(one.grip) ||
          (rankOf(other.grip) === rankOf(one.grip) && placed.indexOf(other) < placed.indexOf(one))),
    ),
  }));
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Turn and body say nothing of the size of a thing: they stand off it or in its middle. */
const isOf = ({ grip }: GripAt): boolean => grip.part !== 'turn' && grip.part !== 'body';

function isTiny(grips: readonly GripAt[]): boolean {
  const own = grips.filter(isOf);
  if (own.length < 2) return false;
  const size = (axis: 'x' | 'y'): number => {
    const values = own.map(({ spot }) => spot[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  return Math.max(size('x'), size('y')) < TINY;
}

/** Around the thing, in the order in which they lie, each at least its target's width from the next as far as there is room. */
function onLeaders(grips: readonly GripAt[]): (GripAt & Pick<GripPlace, 'at' | 'leader'>)[] {
  const own = grips.filter(isOf);
  const middle = {
    x: own.reduce((sum, { spot }) => sum + spot.x, 0) / own.length,
    y: own.reduce((sum, { spot }) => sum + spot.y, 0) / own.length,
  };
  const outward = own.filter(({ grip }) => grip.part !== 'body');
  const reach = Math.max(...outward.map(({ spot }) => apart(spot, middle)), 0) + LEADER;
  const step = Math.min((2 * Math.PI) / Math.max(1, outward.length), 2 * Math.asin(Math.min(1, 12 / reach)));
  const angles = outward
    .map((one) => ({ one, angle: Math.atan2(one.spot.y - middle.y, one.spot.x - middle.x) }))
    .toSorted((a, b) => a.angle - b.angle);
  let last = -Infinity;
  const places = new Map<GripAt, Spot>();
  for (const { one, angle } of angles) {
    last = Math.max(angle, last + step);
    places.set(one, { x: middle.x + reach * Math.cos(last), y: middle.y + reach * Math.sin(last) });
  }
  return grips.map((one) => {
    const at = places.get(one);
    return at ? { ...one, at, leader: true } : { ...one, at: one.spot, leader: false };
  });
}

/**
 * The handle under the pointer: a visible one before one behind a solid, then the nearest, then by rank.
 * @param reach half the target's width, px: 12, for touch and pen 22
 */
export function gripAt(places: readonly GripPlace[], { x, y }: Spot, reach: number): GripPlace | null {
  const found = places.filter(({ at }) => apart(at, { x, y }) <= reach);
  const order = found.toSorted(
    (a, b) => apart(a.at, { x, y }) - apart(b.at, { x, y }) || rankOf(a.grip) - rankOf(b.grip),
  );
  const first = order[0];
  if (!first?.behind) return first ?? null;
  const seen = order.find((one) => !one.behind && apart(one.at, first.at) <= BEFORE_HIDDEN);
  return seen ?? first;
}

const CURSORS = ['ew-resize', 'nwse-resize', 'ns-resize', 'nesw-resize'] as const;

/** The resize cursor nearest to a direction on the window. */
export function resizeCursor(dx: number, dy: number): (typeof CURSORS)[number] {
  const eighth = Math.round((Math.atan2(dy, dx) / Math.PI) * 4);
  return CURSORS[((eighth % 4) + 4) % 4] ?? 'ew-resize';
}
