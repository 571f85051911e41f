import { add, scale, type Vec3 } from '../../base/vector.ts';
import type { Grip } from '../../editor/grips/grip.ts';
import type { PlacedGrip } from '../../editor/grips/placedGrip.ts';
import type { ToolState } from '../../editor/tools/chart.ts';
import { inSight } from '../labels/inSight.ts';
import { put, svg } from '../labels/signs.ts';
import type { Pickable } from '../picking.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { gripAt, gripPlaces, resizeCursor, type GripAt, type GripPlace } from './gripPlaces.ts';

export interface Grips {
  readonly sheet: Sheet;
  readonly solids: Pickable;
  readonly grips: readonly PlacedGrip[];
  readonly hovered: Grip | null;
  /** While one is held, the others are out of the way. */
  readonly held: Grip | null;
  /** What is held does not go where the pointer is. */
  readonly refused: boolean;
  /** Seen straight from above, where nothing is behind anything. */
  readonly plan: boolean;
}

/** What is nearer than this before a handle does not count as before it, m. */
const BEFORE = 0.12;
/** Half of what is drawn, px: as it is, hovered, beside one that comes first. */
const SIZES = { plain: 5, hovered: 6.5, small: 2.5 } as const;
/** From the middle of a handle to the tip of the arrow along its way, px. */
const ARROW = 14;

/** By what they say: handles are made anew with each plan. */
const sameGrip = (a: Grip | null, b: Grip | null): boolean =>
  a === b || (a !== null && b !== null && JSON.stringify(a) === JSON.stringify(b));

type Drawn = GripPlace & { readonly placed: PlacedGrip; readonly way: Spot | null };

/** The handles of what is selected, over the picture. */
export class GripLayer {
  private readonly root = svg('svg', { class: 'signs grips', 'aria-hidden': 'true' });
  private drawn: readonly Drawn[] = [];

  constructor(layer: HTMLElement) {
    layer.append(this.root);
  }

  show({ sheet, solids, grips, hovered, held, refused, plan }: Grips): void {
    const known = new Map<GripAt, PlacedGrip>();
    for (const placed of grips) {
      const spot = sheet.spotFromSite(placed.at);
      if (!spot || (held && !sameGrip(placed.grip, held))) continue;
      // Seen along its only way it cannot be moved.
      if (plan && typeof placed.way !== 'string' && Math.abs(placed.way.along[2]) > 0.99) continue;
      const behind = !plan && !inSight(sheet, solids, placed.at, BEFORE);
      known.set({ grip: placed.grip, spot, behind, bar: barOf(sheet, placed, grips) }, placed);
    }
    this.drawn = gripPlaces([...known.keys()]).flatMap((place) => {
      const placed = grips.find(({ grip }) => grip === place.grip);
      return placed ? [{ ...place, placed, way: wayOf(sheet, placed) }] : [];
    });
    this.root.replaceChildren(
      ...this.drawn.map((one) => draw(one, sameGrip(one.grip, hovered), held !== null, refused)),
    );
  }

  /** The handle under a place of the window. @param reach half its target's width, px */
  at(spot: Spot, reach: number): Grip | null {
    return gripAt(this.drawn, spot, reach)?.grip ?? null;
  }

  /** How the pointer looks over a handle. */
  cursorOf(grip: Grip, held: boolean): ToolState['cursor'] {
    const one = this.drawn.find((other) => sameGrip(other.grip, grip));
    if (!one) return 'default';
    const { cursor, locked } = one.placed;
    if (locked) return 'not-allowed';
    if (cursor === 'resize') return one.way ? resizeCursor(one.way.x, one.way.y) : 'move';
    return cursor === 'grab' && held ? 'grabbing' : cursor;
  }

  /** What labels keep clear of. */
  get spots(): readonly Spot[] {
    return this.drawn.map(({ at }) => at);
  }
}

/** The only way that a handle moves, as it runs on the window; unit, null where it goes freely or is seen end-on. */
function wayOf(sheet: Sheet, { at, way }: PlacedGrip): Spot | null {
  if (typeof way === 'string') return null;
  return directionOf(sheet, at, way.along);
}

function directionOf(sheet: Sheet, at: Vec3, along: Vec3): Spot | null {
  const size = sheet.metresPerPixel(at) * 20;
  const [a, b] = [sheet.spotFromSite(at), sheet.spotFromSite(add(at, scale(along, size)))];
  if (!a || !b) return null;
  const run = Math.hypot(b.x - a.x, b.y - a.y);
  return run < 3 ? null : { x: (b.x - a.x) / run, y: (b.y - a.y) / run };
}

/** Both ends of the edge that a bar slides: its middle is the handle, one end the corner of its number. */
function barOf(sheet: Sheet, placed: PlacedGrip, grips: readonly PlacedGrip[]): GripAt['bar'] {
  const { grip, bar, at } = placed;
  if (bar === null || grip.part !== 'edge') return null;
  const corner = grips.find(
    (one) =>
      one.grip.part === 'corner' && one.grip.structure === grip.structure && one.grip.index === grip.index,
  );
  if (!corner) return null;
  const other: Vec3 = [2 * at[0] - corner.at[0], 2 * at[1] - corner.at[1], at[2]];
  const [a, b] = [sheet.spotFromSite(corner.at), sheet.spotFromSite(other)];
  return a && b ? [a, b] : null;
}

function draw(one: Drawn, hovered: boolean, held: boolean, refused: boolean): SVGGElement {
  const { at, spot, leader, small, behind, bar, placed, way } = one;
  const size = small ? SIZES.small : hovered || held ? SIZES.hovered : SIZES.plain;
  const root = svg('g', {
    class: 'grip',
    'data-part': placed.grip.part,
    'data-grip': placed.words,
    'data-behind': String(behind),
    'data-held': String(held),
    'data-locked': String(placed.locked),
  });
  if (leader) root.append(svg('line', { class: 'gripLeader', x1: spot.x, y1: spot.y, x2: at.x, y2: at.y }));
  const body = svg('g', { transform: `translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})` });
  root.append(body);
  if (bar && !leader) {
    const turn = (Math.atan2(bar[1].y - bar[0].y, bar[1].x - bar[0].x) * 180) / Math.PI;
    const [w, h] = [(7 * size) / SIZES.plain, (2 * size) / SIZES.plain];
    body.append(
      svg('rect', {
        class: 'knob',
        x: -w,
        y: -h,
        width: 2 * w,
        height: 2 * h,
        rx: 1.5,
        transform: `rotate(${turn.toFixed(1)})`,
      }),
    );
  } else {
    body.append(svg('circle', { class: 'knob', r: size }));
    if (held) body.append(svg('circle', { class: 'core', r: 2 }));
  }
  if (way && !small && placed.grip.part !== 'edge') {
    const turn = (Math.atan2(way.y, way.x) * 180) / Math.PI;
    const arrows = svg('path', { class: 'arrows', transform: `rotate(${turn.toFixed(1)})` });
    put(arrows, {
      d: `M${ARROW - 4},-4L${ARROW},0L${ARROW - 4},4M${4 - ARROW},-4L${-ARROW},0L${4 - ARROW},4`,
    });
    body.append(arrows);
  }
  if (held && refused) body.append(svg('path', { class: 'crossed', d: 'M-9,-9L9,9M-9,9L9,-9' }));
  return root;
}
