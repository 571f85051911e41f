import { cos, sin, tan } from '../base/angle.ts';
import { add, dot, scale, subtract, type Vec3 } from '../base/vector.ts';

/** Field of view from top to bottom, °: narrow, so that the model reads as a drawing. */
const FIELD = 13.5;
const LEAST_ELEVATION = -25;
const GREATEST_ELEVATION = 90;
const LEAST_WIDTH = 1;

/** A view from within the site instead of upon it. */
export interface Stay {
  readonly kind: 'stand' | 'lens';
  /** From top to bottom, °. */
  readonly field: number;
  /** Clockwise seen from behind, °. */
  readonly roll: number;
  /** What the lens records, within the wider window. */
  readonly frame: {
    readonly camera: string;
    /** Of the frame as shown, and as the lens has it, °. */
    readonly vertical: number;
    readonly stated: number;
    readonly aspect: number;
    /** The lens is no flat perspective. */
    readonly bent: boolean;
  } | null;
}

/** Where the Model is looked at from. Site frame, m and °. */
export interface Orbit {
  /** The point in the middle of the window. */
  readonly pivot: Vec3;
  /** The bearing in which one looks: what lies that way is up on the sheet. */
  readonly bearing: number;
  /** Of the eye, as seen from the pivot. */
  readonly elevation: number;
  /** From the eye to the pivot. */
  readonly distance: number;
  readonly stay?: Stay | null;
}

/** Field of view from top to bottom, °. */
export const fieldOf = ({ stay }: Orbit): number => stay?.field ?? FIELD;

/** The directions of a view in the site frame, unit and square: what is right, up and ahead on the sheet. */
export interface ViewAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly ahead: Vec3;
}

export function viewAxes({
  bearing,
  elevation,
  stay,
}: Pick<Orbit, 'bearing' | 'elevation' | 'stay'>): ViewAxes {
  const [sb, cb, se, ce] = [sin(bearing), cos(bearing), sin(elevation), cos(elevation)];
  const right: Vec3 = [cb, -sb, 0];
  const up: Vec3 = [se * sb, se * cb, ce];
  const ahead: Vec3 = [ce * sb, ce * cb, -se];
  const roll = stay?.roll ?? 0;
  if (roll === 0) return { right, up, ahead };
  return {
    right: add(scale(right, cos(roll)), scale(up, -sin(roll))),
    up: add(scale(up, cos(roll)), scale(right, sin(roll))),
    ahead,
  };
}

export const eyeOf = (orbit: Orbit): Vec3 =>
  subtract(orbit.pivot, scale(viewAxes(orbit).ahead, orbit.distance));

/** Metres across the height of the window at the pivot's distance. */
export const heightShown = (orbit: Orbit): number => 2 * orbit.distance * tan(fieldOf(orbit) / 2);

const distanceForHeight = (height: number): number => height / (2 * tan(FIELD / 2));

/** Turns the view about a point, which stays where it is on the sheet. Positive `turn` moves the eye clockwise seen from above. */
export function turnAbout(orbit: Orbit, about: Vec3, turn: number, rise: number): Orbit {
  const elevation = Math.min(GREATEST_ELEVATION, Math.max(LEAST_ELEVATION, orbit.elevation + rise));
  return turnTo(orbit, about, orbit.bearing + turn, elevation);
}

/** The view from another side, with `about` at the same place on the sheet. */
export function turnTo(orbit: Orbit, about: Vec3, bearing: number, elevation: number): Orbit {
  const before = viewAxes(orbit);
  const after = viewAxes({ ...orbit, bearing, elevation });
  const offset = subtract(orbit.pivot, about);
  const pivot = add(
    about,
    add(
      add(scale(after.right, dot(offset, before.right)), scale(after.up, dot(offset, before.up))),
      scale(after.ahead, dot(offset, before.ahead)),
    ),
  );
  return { ...orbit, pivot, bearing: ((bearing % 360) + 360) % 360, elevation };
}

/** The elevation at which a let-go view comes to rest: level, the model's own, or from above, when within 3°. */
export function restingElevation(elevation: number): number {
  return [0, HOME_ELEVATION, 90].find((rest) => Math.abs(rest - elevation) <= 3) ?? elevation;
}

export const HOME_ELEVATION = 41;
export const HOME_BEARING = 342;

export const slideBy = (orbit: Orbit, by: Vec3): Orbit => ({ ...orbit, pivot: add(orbit.pivot, by) });

/** The limits of zoom for a site: metres shown across the height of the window. */
export interface ZoomLimits {
  readonly least: number;
  readonly greatest: number;
}

export const zoomLimits = (diagonal: number): ZoomLimits => ({
  least: LEAST_WIDTH,
  greatest: Math.max(4 * diagonal, 2 * LEAST_WIDTH),
});

/** Comes nearer (factor above 1) to a point, which stays where it is on the sheet. */
export function zoomAbout(orbit: Orbit, about: Vec3, factor: number, limits: ZoomLimits): Orbit {
  const shown = heightShown(orbit);
  const wanted = Math.min(limits.greatest, Math.max(limits.least, shown / factor));
  const ratio = wanted / shown;
  return {
    ...orbit,
    pivot: add(about, scale(subtract(orbit.pivot, about), ratio)),
    distance: orbit.distance * ratio,
  };
}

/** A box in the site frame, m. */
export interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

const cornersOf = ({ low, high }: Box): Vec3[] =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [
    i & 1 ? high[0] : low[0],
    i & 2 ? high[1] : low[1],
    i & 4 ? high[2] : low[2],
  ]);

/** The view from the same side that shows a whole box with a margin (share of the window on each side). */
export function fitBox(orbit: Orbit, box: Box, aspect: number, margin = 0.07): Orbit {
  const axes = viewAxes(orbit);
  const middle = scale(add(box.low, box.high), 0.5);
  const half = tan(FIELD / 2) * (1 - 2 * margin);
  const corners = cornersOf(box).map((corner) => subtract(corner, middle));
  const place = (right: number, up: number): { distance: number; right: number; up: number } => {
    let distance = 0;
    let [least, most, low, top] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const c of corners) {
      const [x, y, ahead] = [dot(c, axes.right) - right, dot(c, axes.up) - up, dot(c, axes.ahead)];
      distance = Math.max(distance, Math.abs(x) / (half * aspect) - ahead, Math.abs(y) / half - ahead);
    }
    for (const c of corners) {
      const depth = distance + dot(c, axes.ahead);
      const [x, y] = [(dot(c, axes.right) - right) / depth, (dot(c, axes.up) - up) / depth];
      [least, most, low, top] = [Math.min(least, x), Math.max(most, x), Math.min(low, y), Math.max(top, y)];
    }
    return { distance, right: ((least + most) / 2) * distance, up: ((low + top) / 2) * distance };
  };
  // Perspective makes the near side larger than the far one, so the box's middle is not the picture's.
  let [right, up, distance] = [0, 0, 1];
  for (let round = 0; round < 6; round += 1) {
    const placed = place(right, up);
    distance = placed.distance;
    right += placed.right;
    up += placed.up;
  }
  const pivot = add(middle, add(scale(axes.right, right), scale(axes.up, up)));
  return { ...orbit, pivot, distance: Math.max(distance, distanceForHeight(LEAST_WIDTH)) };
}

/** A view between two, for an eased change; `share` in [0, 1]. */
export function between(from: Orbit, to: Orbit, share: number): Orbit {
  const turn = ((((to.bearing - from.bearing) % 360) + 540) % 360) - 180;
  const mix = (a: number, b: number): number => a + (b - a) * share;
  const stay = to.stay ?? from.stay;
  const roll = mix(from.stay?.roll ?? 0, to.stay?.roll ?? 0);
  return {
    pivot: [
      mix(from.pivot[0], to.pivot[0]),
      mix(from.pivot[1], to.pivot[1]),
      mix(from.pivot[2], to.pivot[2]),
    ],
    bearing: (from.bearing + turn * share + 360) % 360,
    elevation: mix(from.elevation, to.elevation),
    distance: from.distance * (to.distance / from.distance) ** share,
    stay: stay ? { ...stay, field: mix(fieldOf(from), fieldOf(to)), roll } : null,
  };
}
