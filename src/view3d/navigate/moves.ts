import { add, scale, subtract, type Vec3 } from '../../base/vector.ts';
import { restingElevation, slideBy, turnAbout, turnTo, viewAxes, zoomAbout } from '../orbit.ts';
import { meetLevel, type Spot } from '../sheet.ts';
import type { View } from './View.ts';

const TURN_PER_PIXEL = 0.4;
const LOW_ELEVATION = 12;

/** Turns with the pointer about a point: dragging right brings the model's left side to the front. */
export function turnByDrag(view: View, about: Vec3, dx: number, dy: number): void {
  view.set(turnAbout(view.orbit, about, dx * TURN_PER_PIXEL, dy * TURN_PER_PIXEL));
}

/** A view let go near level, home or plan comes to rest there. */
export function settle(view: View, about: Vec3): void {
  const rest = restingElevation(view.orbit.elevation);
  if (rest !== view.orbit.elevation) view.ease(turnTo(view.orbit, about, view.orbit.bearing, rest));
}

export function turnBy(view: View, about: Vec3, turn: number, rise: number): void {
  const { bearing, elevation } = view.goal;
  view.ease(turnTo(view.goal, about, bearing + turn, Math.min(90, Math.max(-25, elevation + rise))));
}

/** Slides so that what was under one spot comes under another: over the ground, or flat on the sheet when it is nearly edge-on. */
export function slideFrom(view: View, held: Vec3, from: Spot, to: Spot): void {
  const { sheet, orbit } = view;
  if (Math.abs(orbit.elevation) > LOW_ELEVATION) {
    const a = meetLevel(sheet.rayFromSpot(from), held[2]);
    const b = meetLevel(sheet.rayFromSpot(to), held[2]);
    if (a && b) {
      view.set(slideBy(orbit, subtract(a, b)));
      return;
    }
  }
  view.set(slideBy(orbit, sheetShift(view, held, from, to)));
}

function sheetShift(view: View, at: Vec3, from: Spot, to: Spot): Vec3 {
  const { right, up } = viewAxes(view.orbit);
  const size = view.sheet.metresPerPixel(at);
  return add(scale(right, (from.x - to.x) * size), scale(up, (to.y - from.y) * size));
}

/** Slides by pixels: positive x shows what lies to the right. */
export function slideByPixels(view: View, x: number, y: number, eased = false): void {
  const { right, up, ahead } = viewAxes(view.orbit);
  const size = view.sheet.metresPerPixel(view.orbit.pivot);
  // Up the sheet is farther over the ground, unless one looks along it.
  const level = Math.hypot(up[0], up[1]) > 0.2 ? up : ahead;
  const run = Math.hypot(level[0], level[1]);
  const lifted = run < 0.2 || Math.abs(view.orbit.elevation) <= LOW_ELEVATION;
  const away: Vec3 = lifted ? up : [level[0] / run, level[1] / run, 0];
  const stretch = lifted ? 1 : 1 / Math.max(0.2, Math.abs(Math.sin((view.orbit.elevation * Math.PI) / 180)));
  const orbit = slideBy(
    eased ? view.goal : view.orbit,
    add(scale(right, x * size), scale(away, -y * size * stretch)),
  );
  if (eased) view.ease(orbit);
  else view.set(orbit);
}

export function zoomBy(view: View, about: Vec3, factor: number, eased = false): void {
  const orbit = zoomAbout(eased ? view.goal : view.orbit, about, factor, view.limits);
  if (eased) view.ease(orbit);
  else view.set(orbit);
}
