import type { Assessment } from '../../assess/assessment.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Theme } from '../../draw/ink.ts';
import { placeLabels, type Plate, type Wish } from '../../draw/labelPlaces.ts';
import type { Solid } from '../../model/solid.ts';
import type { Pickable } from '../picking.ts';
import type { Sheet } from '../sheet.ts';
import { causeWishes } from './causeWishes.ts';
import { contourWishes } from './contourWishes.ts';
import { heightWishes } from './heightWishes.ts';

export interface Plates {
  readonly sheet: Sheet;
  readonly assessment: Assessment;
  readonly solids: Pickable;
  readonly theme: Theme;
  readonly unit: LengthUnit;
  readonly selected: string | null;
  readonly counted: (camera: string) => boolean;
  /** What a person calls the thing that a solid is a part of. */
  readonly names: (solid: Solid) => string;
  /** Boxes that no label may cover. */
  readonly taken: readonly Plate[];
}

/** A label with the site point under its middle and, for a turned one, the point that gives its direction. */
export interface Label {
  readonly text: string;
  readonly look: 'cause' | 'contour' | 'size';
  readonly at: Vec3;
  readonly fill: string | null;
  readonly ink: string | null;
}

interface Drawn {
  readonly element: HTMLElement;
  readonly label: Label;
  /** From the site point's place to the label's middle, px, as placed. */
  readonly aside: { readonly x: number; readonly y: number };
  readonly angle: number;
}

/** Words over the picture: what hides, and the values of band lines. Chosen at rest, carried along while the view moves. */
export class PlateLayer {
  private readonly root = document.createElement('div');
  private readonly sizes = new Map<string, { readonly width: number; readonly height: number }>();
  private drawn: readonly Drawn[] = [];

  constructor(layer: HTMLElement) {
    this.root.className = 'plates';
    this.root.setAttribute('aria-hidden', 'true');
    layer.append(this.root);
  }

  place(plates: Plates): void {
    const size = (text: string, look: Label['look']) => this.sizeOf(text, look);
    const { scene, question } = plates.assessment;
    // From below neither ground nor plane is drawn, so there is nothing to say of it.
    const below = plates.sheet.eye[2] < scene.ground + question.target.height;
    const wishes: Wish<Label>[] = below
      ? []
      : [...causeWishes(plates, size), ...heightWishes(plates, size), ...contourWishes(plates, size)];
    const placed = placeLabels(wishes, plates.taken);
    this.root.replaceChildren();
    this.drawn = placed.flatMap(({ label, place }) => {
      const spot = plates.sheet.spotFromSite(label.at);
      if (!spot) return [];
      const element = this.make(label);
      this.root.append(element);
      return [{ element, label, aside: { x: place.x - spot.x, y: place.y - spot.y }, angle: place.angle }];
    });
    this.follow(plates.sheet);
  }

  /** Takes all of them away: they belong to a plan that is no longer shown. */
  clear(): void {
    if (this.drawn.length === 0) return;
    this.root.replaceChildren();
    this.drawn = [];
  }

  follow(sheet: Sheet): void {
    for (const { element, label, aside, angle } of this.drawn) {
      const spot = sheet.spotFromSite(label.at);
      element.hidden = spot === null;
      if (!spot) continue;
      element.style.transform = `translate(${spot.x + aside.x}px, ${spot.y + aside.y}px) translate(-50%, -50%) rotate(${angle}deg)`;
    }
  }

  private make({ text, look, fill, ink }: Label): HTMLElement {
    const element = document.createElement('span');
    element.className = look;
    element.textContent = text;
    if (fill !== null) element.style.background = fill;
    if (ink !== null) element.style.color = ink;
    return element;
  }

  /** The size that a label will have, measured once. */
  private sizeOf(text: string, look: Label['look']): { readonly width: number; readonly height: number } {
    const key = `${look} ${text}`;
    let size = this.sizes.get(key);
    if (!size) {
      const element = this.make({ text, look, at: [0, 0, 0], fill: null, ink: null });
      this.root.append(element);
      size = { width: element.offsetWidth, height: element.offsetHeight };
      element.remove();
      this.sizes.set(key, size);
    }
    return size;
  }
}
