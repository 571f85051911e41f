import type { Vec3 } from '../../base/vector.ts';
import {
  between,
  fitBox,
  HOME_BEARING,
  HOME_ELEVATION,
  turnTo,
  zoomLimits,
  type Box,
  type Orbit,
  type Stay,
  type ZoomLimits,
} from '../orbit.ts';
import { sheetOf, type Sheet } from '../sheet.ts';

const EASE_TIME = 240;
/** Share of the window that the view of the whole site leaves free on each side. */
const HOME_MARGIN = 0.05;
/** Share of the window at each edge in which a place is not shown well. */
const WELL_WITHIN = 0.12;

/** How the Model is looked at just now; eased changes of view run here, and end at once where motion is unwanted. */
export class View {
  orbit: Orbit = { pivot: [0, 0, 0], bearing: HOME_BEARING, elevation: HOME_ELEVATION, distance: 60 };
  width = 1;
  height = 1;
  /** All there is to see. */
  site: Box = { low: [-5, -5, 0], high: [5, 5, 3] };
  /** What the view of the whole site shows. */
  homeBox: Box = this.site;
  /** The whole site as shown last, for as long as nobody has turned away from it. */
  private atHome: Orbit | null = null;
  private readonly listeners = new Set<() => void>();
  private running = 0;
  private towards: Orbit | null = null;
  /** What Esc goes back to from another way of looking. */
  private before: Orbit | null = null;
  private beforePlan: Pick<Orbit, 'bearing' | 'elevation'> | null = null;

  subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  current = (): Orbit => this.orbit;

  /** Where an eased change is going; else the present view. What keys change, they change from here. */
  get goal(): Orbit {
    return this.towards ?? this.orbit;
  }

  /** The view upon the site: the present one, or the one before one stood in it. */
  get outer(): Orbit {
    return this.goal.stay ? (this.before ?? this.homeView()) : this.goal;
  }

  get stay(): Stay | null {
    return this.goal.stay ?? null;
  }

  /** Goes to another way of looking, from which `leave` comes back. */
  enter(to: Orbit): void {
    if (!this.goal.stay) this.before = this.goal;
    this.ease(to);
  }

  /** Back to the view before; tells whether there was one. */
  leave(): boolean {
    const { before } = this;
    if (!before) return false;
    this.before = null;
    this.ease(before);
    return true;
  }

  get sheet(): Sheet {
    return sheetOf(this.orbit, this.width, this.height);
  }

  get limits(): ZoomLimits {
    const { low, high } = this.site;
    return zoomLimits(Math.hypot(high[0] - low[0], high[1] - low[1]));
  }

  get middle(): Vec3 {
    const { low, high } = this.site;
    return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, Math.max(0, low[2])];
  }

  resize(width: number, height: number): void {
    this.width = width;
    this.height = height;
    if (this.atHome !== null && this.atHome === this.goal) this.home(false);
    else this.tell();
  }

  /** Moves the view so far that a place lies well within it. */
  reveal(point: Vec3): void {
    const spot = this.sheet.spotFromSite(point);
    const [mx, my] = [this.width * WELL_WITHIN, this.height * WELL_WITHIN];
    const isIn =
      spot !== null && spot.x > mx && spot.x < this.width - mx && spot.y > my && spot.y < this.height - my;
    if (!isIn) this.set({ ...this.orbit, pivot: point });
  }

  /** Shows this view now. */
  set(orbit: Orbit): void {
    cancelAnimationFrame(this.running);
    this.towards = null;
    this.orbit = orbit;
    this.tell();
  }

  /** Goes to a view in a moment. */
  ease(to: Orbit): void {
    cancelAnimationFrame(this.running);
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.set(to);
      return;
    }
    this.towards = to;
    const from = this.orbit;
    const start = performance.now();
    const step = (): void => {
      const share = Math.min(1, (performance.now() - start) / EASE_TIME);
      this.orbit = share === 1 ? to : between(from, to, 1 - (1 - share) ** 3);
      if (share === 1) this.towards = null;
      this.tell();
      if (share < 1) this.running = requestAnimationFrame(step);
    };
    this.running = requestAnimationFrame(step);
  }

  fit(box: Box, margin?: number): void {
    this.ease(fitBox(this.outer, box, this.width / this.height, margin));
  }

  /** The whole site: from above where one looks from there, else from the model's own side. */
  whole(): void {
    if (this.isPlan) this.fit(this.homeBox, HOME_MARGIN);
    else this.home();
  }

  /** The whole site from the model's own side. */
  home(eased = true): void {
    const to = this.homeView();
    this.beforePlan = null;
    this.before = null;
    this.atHome = to;
    if (eased) this.ease(to);
    else this.set(to);
  }

  private homeView(): Orbit {
    const from = { ...this.orbit, bearing: HOME_BEARING, elevation: HOME_ELEVATION, stay: null };
    return fitBox(from, this.homeBox, this.width / this.height, HOME_MARGIN);
  }

  /** From above with north up, and back to where one looked from before. */
  togglePlan(about: Vec3): void {
    const { outer } = this;
    const { bearing, elevation } = outer;
    if (this.isPlan) {
      const back = this.beforePlan ?? { bearing: HOME_BEARING, elevation: HOME_ELEVATION };
      this.beforePlan = null;
      this.ease(turnTo(outer, about, back.bearing, back.elevation));
      return;
    }
    this.beforePlan = { bearing, elevation };
    this.ease(turnTo(outer, about, 0, 90));
  }

  get isPlan(): boolean {
    return !this.goal.stay && this.goal.elevation > 89.5;
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}
