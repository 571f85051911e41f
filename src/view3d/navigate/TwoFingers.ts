import type { Model } from '../Model.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Spot } from '../sheet.ts';
import { slideFrom, zoomBy } from './moves.ts';
import { turnAbout } from '../orbit.ts';

/** Two fingers turn the view only once they have twisted so far, °. */
const TWIST = 12;

interface Pair {
  readonly middle: Spot;
  readonly apart: number;
  readonly angle: number;
}

/** Two fingers on the Model: slide, pinch, and twist past 12°. */
export class TwoFingers {
  private readonly spots = new Map<number, Spot>();
  private last: Pair | null = null;
  private twist = 0;
  private about: Vec3 = [0, 0, 0];
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  /** @returns whether this finger makes two */
  down(id: number, spot: Spot): boolean {
    this.spots.set(id, spot);
    if (this.spots.size !== 2) return this.spots.size > 2;
    this.last = this.pair();
    this.twist = 0;
    const at = this.last ? this.model.pointed(this.last.middle, NO_KEYS) : null;
    this.about = this.model.pivotFor(at?.struck?.point ?? null);
    return true;
  }

  /** @returns whether two fingers are down */
  move(id: number, spot: Spot): boolean {
    if (!this.spots.has(id)) return false;
    this.spots.set(id, spot);
    const now = this.pair();
    if (!now || !this.last) return this.last !== null;
    const { view } = this.model;
    slideFrom(view, this.about, this.last.middle, now.middle);
    if (this.last.apart > 0) zoomBy(view, this.about, now.apart / this.last.apart);
    const turned = ((now.angle - this.last.angle + 540) % 360) - 180;
    const before = this.twist;
    this.twist += turned;
    if (Math.abs(this.twist) > TWIST && !view.stay) {
      const past = Math.abs(before) > TWIST ? turned : this.twist - Math.sign(this.twist) * TWIST;
      view.set(turnAbout(view.orbit, this.about, -past, 0));
    }
    this.last = now;
    return true;
  }

  /** @returns whether the finger was one of two */
  up(id: number): boolean {
    if (!this.spots.delete(id)) return false;
    const were = this.last !== null;
    // The finger that stays does nothing more, so that lifting one never turns the view.
    if (this.spots.size === 0) this.last = null;
    return were;
  }

  /** All are lifted. */
  get isNone(): boolean {
    return this.spots.size === 0;
  }

  private pair(): Pair | null {
    const [a, b] = [...this.spots.values()];
    if (!a || !b) return null;
    return {
      middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
      apart: Math.hypot(b.x - a.x, b.y - a.y),
      angle: (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI,
    };
  }
}

const NO_KEYS = { shiftKey: false, ctrlKey: false, metaKey: false, pointerType: 'touch' };
