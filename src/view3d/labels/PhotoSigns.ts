import { cos, sin } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Plate } from '../../draw/labelPlaces.ts';
import type { EditorState } from '../../editor/editor.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Pickable } from '../picking.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { inSight } from './inSight.ts';
import { put, svg } from './signs.ts';
import styles from './photoSigns.module.css';

interface Pinned {
  readonly id: string;
  readonly name: string;
  readonly at: Vec3;
  readonly heading: number | null;
}

const pinnedIn = ({ pictures, pictureOrder }: Plan): readonly Pinned[] =>
  pictureOrder.flatMap((id): Pinned[] => {
    const picture = pictures[id];
    if (!picture || picture.hidden || picture.use.kind !== 'photo') return [];
    const { at, heading } = picture.use;
    return [{ id, name: picture.name, at, heading }];
  });

/** A print with a hill and a sun on it, px about its middle. */
const FRAME = { x: -9, y: -7, width: 18, height: 14, rx: 1.5 } as const;
const HILL = 'M-7,4.5 L-2,-1 L1,2 L3.5,-0.5 L7,4.5 Z';
/** How far a stroke runs in the way that the photo looks, px, and what that is in the site, m. */
const REACH = 22;
/** A long name is cut after so many letters. */
const MOST_LETTERS = 18;
/** About as wide as a letter, px. */
const LETTER = 6.5;
/** A wall within this of a photo carries it, m. */
const BEFORE = 0.15;

class PhotoSign {
  readonly root = svg('g', { class: styles['photo'] ?? '' });
  private readonly way = svg('line');
  private readonly print = svg('g');
  private readonly text = svg('text', { x: 14, dy: '0.35em' });

  constructor() {
    this.print.append(
      svg('rect', FRAME),
      svg('circle', { cx: 4, cy: -3.2, r: 1.5 }),
      svg('path', { d: HILL }),
      this.text,
    );
    this.root.append(this.way, this.print);
  }

  draw(name: string, at: Spot | null, towards: Spot | null, state: Readonly<Record<string, string>>): void {
    this.root.style.display = at ? '' : 'none';
    if (!at) return;
    const short = name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name;
    if (this.text.textContent !== short) this.text.textContent = short;
    put(this.print, { transform: `translate(${at.x} ${at.y})` });
    this.way.style.display = towards ? '' : 'none';
    const run = towards ? Math.hypot(towards.x - at.x, towards.y - at.y) : 0;
    if (towards && run > 0)
      put(this.way, {
        x1: at.x,
        y1: at.y,
        x2: at.x + ((towards.x - at.x) / run) * REACH,
        y2: at.y + ((towards.y - at.y) / run) * REACH,
      });
    put(this.root, state);
  }
}

/** Photos where they were taken, as small prints of one size with their names, each with a stroke the way that it looks. */
export class PhotoSigns {
  private readonly root = svg('svg', { class: styles['layer'] ?? '', 'aria-hidden': 'true' });
  private readonly signs = new Map<string, PhotoSign>();
  private drawn: readonly { readonly id: string; readonly name: string; readonly at: Spot }[] = [];

  constructor(layer: HTMLElement) {
    layer.append(this.root);
  }

  show(
    sheet: Sheet,
    solids: Pickable,
    { plan, selection, hovered }: Pick<EditorState, 'plan' | 'selection' | 'hovered'>,
  ): void {
    const photos = pinnedIn(plan);
    for (const [id, sign] of this.signs) {
      if (photos.some((photo) => photo.id === id)) continue;
      sign.root.remove();
      this.signs.delete(id);
    }
    this.drawn = photos.flatMap(({ id, name, at: place, heading }) => {
      const sign = this.signs.get(id) ?? new PhotoSign();
      if (!this.signs.has(id)) {
        this.signs.set(id, sign);
        this.root.append(sign.root);
      }
      const at = sheet.spotFromSite(place);
      const [x, y, z] = place;
      const towards = heading === null ? null : sheet.spotFromSite([x + sin(heading), y + cos(heading), z]);
      const isThis = (thing: EditorState['hovered']): boolean => thing?.kind === 'picture' && thing.id === id;
      sign.draw(name, at, towards, {
        'data-selected': String(selection.some(isThis)),
        'data-hovered': String(isThis(hovered)),
        'data-behind': String(!inSight(sheet, solids, place, BEFORE)),
      });
      return at ? [{ id, name, at }] : [];
    });
  }

  /** The photo whose sign is within reach of a place of the window, px. */
  at({ x, y }: Spot, reach: number): string | null {
    return this.drawn.findLast(({ at }) => Math.hypot(at.x - x, at.y - y) <= reach)?.id ?? null;
  }

  /** What labels keep clear of. */
  get plates(): readonly Plate[] {
    return this.drawn.map(({ name, at: { x, y } }) => {
      const wide = Math.min(name.length, MOST_LETTERS) * LETTER;
      return { x: x + wide / 2, y, width: 28 + wide, height: 20, angle: 0 };
    });
  }
}
