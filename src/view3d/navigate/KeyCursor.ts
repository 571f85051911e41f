import { cos, sin } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Compass, Nudge, ToolState } from '../../editor/tools/chart.ts';
import { gridStep } from '../../editor/tools/snap.ts';
import { groundOf, heightOn } from '../ground/terrainFaces.ts';
import type { Model } from '../Model.ts';
import { meetLevel } from '../sheet.ts';
import { compassOf } from './compass.ts';
import { slideByPixels } from './moves.ts';

const HEADINGS = [0, 90, 180, 270];
/** Shift makes a step so many times as long. */
const LARGE = 10;
/** The cursor stays so far within the window, px. */
const INSIDE = 64;

/** The cursor that arrows move over the ground while a tool is in hand; Space presses there. The pointer takes over as it moves. */
export class KeyCursor {
  /** Where it stands, site frame; null while the pointer leads. */
  at: Vec3 | null = null;
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  /** A step over the grid of this view, in the heading that the arrow means on the window. */
  move(way: Nudge, large: boolean): void {
    const { model } = this;
    const from = this.at ?? this.start();
    const { view } = model;
    const compass: Compass = compassOf(view);
    const heading = compass(way, HEADINGS);
    const step = gridStep(view.sheet.metresPerPixel(from));
    const on = (value: number): number => Math.round(value / step) * step;
    const size = large ? step * LARGE : step;
    // A first step also brings it onto the grid.
    const [x, y] = [
      tidy(on(from[0]) + Math.round(sin(heading)) * size),
      tidy(on(from[1]) + Math.round(cos(heading)) * size),
    ];
    const scene = model.assessment?.scene;
    const uneven = scene ? groundOf(scene) : null;
    this.at = [x, y, (uneven && heightOn(uneven, x, y)) ?? from[2]];
    this.keepInside();
    this.lead();
  }

  /** Goes to a point of the site, as though it had been pointed at. */
  goTo(point: Vec3): void {
    this.at = point;
    this.keepInside();
    this.lead();
  }

  /** The pointer moved: the cursor is gone. */
  leave(): void {
    if (this.at === null) return;
    this.at = null;
    this.model.redraw();
  }

  private lead(): void {
    this.model.toolbox.hover(this.model.pointedNow());
    this.model.redraw();
  }

  /** Under the pointer, else in the middle of the window. */
  private start(): Vec3 {
    const { struck, ray } = this.model.pointedNow();
    const ground = this.model.assessment?.scene.ground ?? 0;
    const scene = this.model.assessment?.scene;
    const level = scene && groundOf(scene) ? null : meetLevel(ray, ground);
    return level ?? struck?.point ?? this.model.view.middle;
  }

  private keepInside(): void {
    const { view } = this.model;
    const spot = this.at && view.sheet.spotFromSite(this.at);
    if (!spot) return;
    const past = (value: number, size: number): number =>
      value < INSIDE ? value - INSIDE : value > size - INSIDE ? value - size + INSIDE : 0;
    const [x, y] = [past(spot.x, view.width), past(spot.y, view.height)];
    if (x !== 0 || y !== 0) slideByPixels(view, x, y);
  }
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;

/** Whether arrows move the cursor in this state: it is drawn with, and has no use for arrows itself. */
export const takesCursor = (state: ToolState): boolean =>
  state.hover !== undefined && state.nudge === undefined;
