import { add, scale, subtract, type Vec3 } from '../../base/vector.ts';
import { restingElevation, slideBy, turnAbout, turnTo, viewAxes, zoomAbout } from '../orbit.ts';
import { meetLevel, type Spot } from '../sheet.ts';
import { lookAbout, walk } from './stays.ts';
import type { View } from './View.ts';

const TURN_PER_PIXEL = 0.4;
const LOW_ELEVATION = 12;

/** Turns with the pointer about a point: dragging right brings the model's left side to the front. */
export function turnByDrag(view: View, about: Vec3, dx: number, dy: number): void {
  const { stay } = view;
  if (stay) {
    // Standing, what was under the pointer stays under it; a lens looks where it is aimed.
    const size = stay.field / view.height;
    if (stay.kind === 'stand') view.set(lookAbout(view.goal, -dx * size, dy * size));
    return;
  }
  view.set(turnAbout(view.orbit, about, dx * TURN_PER_PIXEL, dy * TURN_PER_PIXEL));
}

/** A view let go near level, home or plan comes to rest there. */
export function settle(view: View, about: Vec3): void {
  if (view.stay) return;
  const rest = restingElevation(view.orbit.elevation);
  if (rest !== view.orbit.elevation) view.ease(turnTo(view.orbit, about, view.orbit.bearing, rest));
}

export function turnBy(view: View, about: Vec3, turn: number, rise: number): void {
  const { bearing, elevation, stay } = view.goal;
  if (stay) {
    if (stay.kind === 'stand') view.ease(lookAbout(view.goal, turn, rise));
    return;
  }
  view.ease(turnTo(view.goal, about, bearing + turn, Math.min(90, Math.max(-25, elevation + rise))));
}

/** Slides so that what was under one spot comes under another: over the ground, or flat on the sheet when it is nearly edge-on. */
export function slideFrom(view: View, held: Vec3, from: Spot, to: Spot): void {
  if (view.stay) return;
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
  if (view.stay) return;
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
  if (view.stay) {
    if (view.stay.kind === 'stand') view.set(walk(view.goal, Math.log(factor)));
    return;
  }
  const orbit = zoomAbout(eased ? view.goal : view.orbit, about, factor, view.limits);
  if (eased) view.ease(orbit);
  else view.set(orbit);
}
