import type { Vec3 } from '../../base/vector.ts';
import type { Pickable } from '../picking.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { inSight } from './inSight.ts';
import { put, svg } from './signs.ts';

/** A lamp as it is drawn. Site frame. */
export interface LampShown {
  readonly id: string;
  readonly name: string;
  readonly eye: Vec3;
  /** Straight below it on the ground. */
  readonly foot: Vec3;
  /** How far it lights the ground around its foot, m; null where a file tells. */
  readonly reach: number | null;
}

/** Eight rays around a small disc. */
const RAYS = Array.from({ length: 8 }, (_, k) => {
  const turn = (k * Math.PI) / 4;
  const at = (far: number): string =>
    `${(far * Math.cos(turn)).toFixed(2)},${(far * Math.sin(turn)).toFixed(2)}`;
  return `M${at(5.5)} L${at(9)}`;
}).join(' ');
const DISC = 3.4;

/** A wall within this of a lamp carries it, m. */
const BEFORE = 0.15;

class LampSign {
  readonly root = svg('g', { class: 'lamp' });
  private readonly leader = svg('line', { class: 'leader' });
  private readonly glyph = svg('g');

  constructor() {
    this.glyph.append(
      svg('path', { d: RAYS, class: 'halo' }),
      svg('circle', { r: DISC, class: 'halo' }),
      svg('path', { d: RAYS, class: 'rays' }),
      svg('circle', { r: DISC, class: 'disc' }),
    );
    this.root.append(this.leader, this.glyph);
  }

  draw(at: Spot | null, foot: Spot | null, state: Readonly<Record<string, string>>): void {
    this.root.style.display = at ? '' : 'none';
    if (!at) return;
    put(this.glyph, { transform: `translate(${at.x} ${at.y})` });
    this.leader.style.display = foot ? '' : 'none';
    if (foot) put(this.leader, { x1: at.x, y1: at.y, x2: foot.x, y2: foot.y });
    put(this.root, state);
  }
}

/** The lamps of a plan as signs of one size on the window, each with a line down to the ground, and one that is being placed. */
export class LampSigns {
  readonly root = svg('g');
  private readonly signs = new Map<string, LampSign>();
  private readonly ghost = new LampSign();
  private drawn: readonly { readonly id: string; readonly at: Spot }[] = [];

  constructor() {
    this.root.append(this.ghost.root);
  }

  show(
    sheet: Sheet,
    solids: Pickable,
    lamps: readonly LampShown[],
    of: { readonly selected: string | null; readonly hovered: string | null; readonly ghost: Vec3 | null },
  ): void {
    for (const [id, sign] of this.signs) {
      if (lamps.some((lamp) => lamp.id === id)) continue;
      sign.root.remove();
      this.signs.delete(id);
    }
    this.drawn = lamps.flatMap(({ id, eye, foot }) => {
      const sign = this.signs.get(id) ?? new LampSign();
      if (!this.signs.has(id)) {
        this.signs.set(id, sign);
        this.root.append(sign.root);
      }
      const at = sheet.spotFromSite(eye);
      sign.draw(at, sheet.spotFromSite(foot), {
        'data-selected': String(id === of.selected),
        'data-hovered': String(id === of.hovered),
        'data-behind': String(!inSight(sheet, solids, eye, BEFORE)),
      });
      return at ? [{ id, at }] : [];
    });
    this.ghost.draw(of.ghost && sheet.spotFromSite(of.ghost), null, { 'data-selected': 'true' });
  }

  /** The lamp whose sign is within reach of a place of the window, px. */
  at({ x, y }: Spot, reach: number): string | null {
    return this.drawn.findLast(({ at }) => Math.hypot(at.x - x, at.y - y) <= reach)?.id ?? null;
  }

  /** Where signs stand. */
  get spots(): readonly Spot[] {
    return this.drawn.map(({ at }) => at);
  }
}
