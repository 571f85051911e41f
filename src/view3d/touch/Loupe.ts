import { SKETCH_ID } from '../drawing/SketchLayer.ts';
import { put, svg } from '../labels/signs.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';

/** Across, above the finger, and how many times as large, px. */
const SIZE = 96;
const ABOVE = 72;
const LARGER = 2;
const EDGE = 4;

/** A finger covers what it points at: the same, twice as large, in a circle above it. */
export class Loupe {
  private readonly root = document.createElement('div');
  private readonly glass = document.createElement('canvas');
  private readonly over = svg('svg', { width: SIZE, height: SIZE });
  private readonly sketch = svg('use', { href: `#${SKETCH_ID}` });
  private readonly model: Model;
  private readonly canvas: HTMLCanvasElement;
  private spot: Spot | null = null;

  constructor(model: Model, layer: HTMLElement, canvas: HTMLCanvasElement) {
    this.model = model;
    this.canvas = canvas;
    this.root.className = 'loupe';
    this.root.hidden = true;
    this.root.setAttribute('aria-hidden', 'true');
    const middle = SIZE / 2;
    const cross = svg('path', {
      class: 'loupeCross',
      d: `M${middle - 16},${middle}h12m8,0h12M${middle},${middle - 16}v12m0,8v12`,
    });
    this.over.append(this.sketch, cross);
    this.root.append(this.glass, this.over);
    layer.append(this.root);
    model.follows(() => this.draw());
  }

  show(spot: Spot): void {
    this.spot = spot;
    this.root.hidden = false;
    // The picture can be read only in the frame in which it is painted.
    this.model.invalidate();
  }

  hide(): void {
    this.spot = null;
    this.root.hidden = true;
  }

  private draw(): void {
    const { spot, glass, canvas } = this;
    if (!spot || canvas.clientWidth === 0) return;
    const ratio = canvas.width / canvas.clientWidth;
    const side = Math.round(SIZE * ratio);
    if (glass.width !== side) [glass.width, glass.height] = [side, side];
    const seen = SIZE / LARGER;
    glass
      .getContext('2d')
      ?.drawImage(
        canvas,
        (spot.x - seen / 2) * ratio,
        (spot.y - seen / 2) * ratio,
        seen * ratio,
        seen * ratio,
        0,
        0,
        side,
        side,
      );
    const shift = `translate(${SIZE / 2 - spot.x * LARGER} ${SIZE / 2 - spot.y * LARGER}) scale(${LARGER})`;
    put(this.sketch, { transform: shift });
    const x = Math.min(this.model.view.width - SIZE - EDGE, Math.max(EDGE, spot.x - SIZE / 2));
    const y = Math.max(EDGE, spot.y - ABOVE - SIZE / 2);
    this.root.style.transform = `translate(${x}px, ${y}px)`;
  }
}
