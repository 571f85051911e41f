import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Passage } from '../model/passage.ts';
import type { Camera } from '../optics/camera.ts';
import { sheetsOf, type SheetShadows } from './closing.ts';
import type { Facets } from './facets.ts';
import { footingOf, type Footing } from './footing.ts';
import { frameHalfPlanes } from './frame.ts';
import { cutPolygon, halfPlanesOf, type HalfPlanes } from './halfPlanes.ts';
import { lensInside, touchedSolids } from './lensInside.ts';
import type { Plane } from '../base/plane.ts';
import { uncovered, type Bounds } from './region.ts';
import { ringsByUnion } from './ringFallback.ts';
import { chain, ringArea } from './rings.ts';
import { NO_SHADOWS, shadowsOf, STRIDE, type Shadows } from './shadows.ts';
import { FRAME_EDGE, WINDOW_EDGE, type OutlinePiece, type Region, type Sight, type Window } from './sight.ts';
import { SAME_LINE } from './spans.ts';
import { trianglesArea, trianglesOf } from './triangulate.ts';

/** What rings and triangles may differ in area from the spans before something else must make them, m² per m² and m². */
const RING_SLACK = { share: 1e-6, square: 1e-5 };

/** Whether an area of rings or triangles is that of the spans. */
export const isSameArea = (one: number, spans: number): boolean =>
  Math.abs(one - spans) <= RING_SLACK.square + RING_SLACK.share * spans;

/** A sight with the half-planes that cells and areas read as well. */
export interface FoundSight {
  readonly sight: Sight;
  readonly footing: Footing;
  /** Frame and window, relative to the foot; null where nothing of the plane is in both. */
  readonly halfPlanes: HalfPlanes | null;
  /** The frame alone, or the pyramid around a bent one; null where it misses the plane. */
  readonly frame: HalfPlanes | null;
  readonly solids: Shadows;
  readonly screens: Shadows;
  /** Both together. */
  readonly all: Shadows;
  /** Glass: it hides nothing, but throws a camera's own infrared back. */
  readonly glass: Shadows;
  /** Whether the lens touches a solid, whose inside then nothing hides. */
  readonly touches: boolean;
  /** The screens that can close up, sheet by sheet, and the sine of the angle below which they do. */
  readonly sheets: readonly SheetShadows[];
  readonly closing: number;
}

/**
 * What one camera sees of one plane.
 * @param window convex, counter-clockwise, plane coordinates
 * Exact on a flat target: no grid, nothing snapped. Cost: see tests/bench.
 */
export function sightOf(camera: Camera, plane: Plane, window: Window, facets: Facets): FoundSight {
  const footing = footingOf(camera.eye, plane);
  const corners = window.map(([a, b]): Vec2 => [a - footing.foot[0], b - footing.foot[1]]);
  const frame = frameHalfPlanes(camera, footing);
  const inside = lensInside(camera.eye, facets);
  const within = frame === null ? [] : cutPolygon(corners, frame);
  const empty = within.length === 0 || inside !== null;
  const bounds = boundsOf(within, frame ?? [], halfPlanesOf(corners));
  const reach = Math.hypot(bounds.radius, footing.delta);
  const cast = (passage: Passage) => shadowsOf(facets, footing, bounds.halfPlanes, reach, passage);
  const solids = empty ? NO_SHADOWS : cast('solid');
  const screens = empty ? NO_SHADOWS : cast('screen');
  const beyondScreens = empty ? NO_REGION : regionOf(solids, bounds, within, footing.foot);
  const all = screens.count === 0 ? solids : joined(solids, screens);
  const seen = all === solids ? beyondScreens : regionOf(all, bounds, within, footing.foot);
  return {
    sight: {
      camera,
      plane,
      framed: camera.k === 1,
      solids: facets.solids.length,
      lensInside: inside,
      frame: Float64Array.from(within.flatMap(([p, q]) => [p + footing.foot[0], q + footing.foot[1]])),
      seen,
      beyondScreens,
    },
    footing,
    halfPlanes: within.length === 0 ? null : bounds.halfPlanes,
    frame,
    solids,
    screens,
    all,
    glass: empty ? NO_SHADOWS : cast('clear'),
    touches: touchedSolids(camera.eye, facets) !== null,
    sheets: sheetsOf(screens, facets),
    closing: facets.closing,
  };
}

/** A sight without outlines, for targets that are on no plane. */
export const sightOfNothing = (
  camera: Camera,
  plane: Plane,
  solids: number,
  inside: number | null,
): Sight => ({
  camera,
  plane,
  framed: camera.k === 1,
  solids,
  lensInside: inside,
  frame: new Float64Array(0),
  seen: NO_REGION,
  beyondScreens: NO_REGION,
});

const NO_REGION: Region = {
  area: 0,
  pieces: [],
  rings: [],
  ringsClosed: true,
  triangles: new Float64Array(0),
};

/** Frame and window together, without a bound that another one on the same line repeats. */
export function boundsOf(within: readonly Vec2[], frame: HalfPlanes, window: HalfPlanes): Bounds {
  const radius = Math.max(1, ...within.map(([p, q]) => Math.hypot(p, q)));
  const halfPlanes: (readonly [number, number, number])[] = [];
  const beyond: number[] = [];
  const add = (half: readonly [number, number, number], code: number) => {
    const twin = halfPlanes.some(
      ([a, b, k]) =>
        a * half[0] + b * half[1] > 0 &&
        Math.abs(a * half[1] - b * half[0]) * radius < SAME_LINE &&
        Math.abs(k - half[2]) < SAME_LINE,
    );
    if (twin) return;
    halfPlanes.push(half);
    beyond.push(code);
  };
  for (const half of frame) add(half, FRAME_EDGE);
  for (const half of window) add(half, WINDOW_EDGE);
  return { halfPlanes, beyond, radius };
}

/** Solids and screens together; solids keep their order and come first. */
export function joined(one: Shadows, two: Shadows): Shadows {
  const count = one.count + two.count;
  const numbers = new Float64Array(count * STRIDE);
  numbers.set(one.numbers.subarray(0, one.count * STRIDE));
  numbers.set(two.numbers.subarray(0, two.count * STRIDE), one.count * STRIDE);
  const bytes = (pick: (from: Shadows) => Uint8Array): Uint8Array => {
    const all = new Uint8Array(count);
    all.set(pick(one).subarray(0, one.count));
    all.set(pick(two).subarray(0, two.count), one.count);
    return all;
  };
  const ints = (pick: (from: Shadows) => Int32Array): Int32Array => {
    const all = new Int32Array(count);
    all.set(pick(one).subarray(0, one.count));
    all.set(pick(two).subarray(0, two.count), one.count);
    return all;
  };
  return {
    count,
    numbers,
    sides: bytes((s) => s.sides),
    outline: bytes((s) => s.outline),
    solid: ints((s) => s.solid),
    facet: ints((s) => s.facet),
    dark: one.dark ?? two.dark,
  };
}

function regionOf(shadows: Shadows, bounds: Bounds, window: readonly Vec2[], foot: Vec2): Region {
  const { pieces, area } = uncovered(shadows, bounds);
  const own = chain(pieces);
  const sum = own.rings.reduce((total, ring) => total + ringArea(ring), 0);
  const triangles = own.closed && isSameArea(sum, area) ? trianglesOf(own.rings) : null;
  const ringsClosed = triangles !== null && isSameArea(trianglesArea(triangles), area);
  const rings = ringsClosed ? own.rings : ringsByUnion(window, shadows);
  return {
    area: Math.max(0, area),
    pieces: pieces.map(({ from, to, beyond }): OutlinePiece => ({
      from: moved(from, foot),
      to: moved(to, foot),
      beyond,
    })),
    rings: rings.map((ring) => movedRing(ring, foot)),
    ringsClosed,
    triangles: movedRing(ringsClosed ? triangles : trianglesOf(rings), foot),
  };
}

const moved = ([p, q]: Vec2, foot: Vec2): Vec2 => [p + foot[0], q + foot[1]];
const movedRing = (ring: Float64Array, foot: Vec2): Float64Array =>
  ring.map((n, at) => n + foot[at % 2 === 0 ? 0 : 1]);

/** What is seen within a convex part of the window, with its own rings and triangles. */
export const seenWithin = ({ footing, frame, all, sight }: FoundSight, part: Window): Region =>
  sight.lensInside === null ? leftWithin(footing, frame, all, part) : NO_REGION;

/** What shadows leave of a convex part of the plane within a frame. */
export function leftWithin(
  footing: Footing,
  frame: HalfPlanes | null,
  shadows: Shadows,
  part: Window,
): Region {
  if (frame === null) return NO_REGION;
  const corners = part.map(([a, b]): Vec2 => [a - footing.foot[0], b - footing.foot[1]]);
  const within = cutPolygon(corners, frame);
  if (within.length === 0) return NO_REGION;
  return regionOf(shadows, boundsOf(within, frame, halfPlanesOf(corners)), within, footing.foot);
}

/** A lamp over a plane, with the shadows of what stands in its light; null where it is inside a solid. */
export interface FoundLamp {
  readonly footing: Footing;
  readonly shadows: Shadows | null;
}

/** What the light of a lamp is blocked by on the way to a plane: solids, and screens too, since what passes them is not sure. */
export function lampOver(eye: Vec3, plane: Plane, window: Window, facets: Facets): FoundLamp {
  const footing = footingOf(eye, plane);
  if (lensInside(eye, facets) !== null) return { footing, shadows: null };
  const corners = window.map(([a, b]): Vec2 => [a - footing.foot[0], b - footing.foot[1]]);
  const halfPlanes = halfPlanesOf(corners);
  const radius = Math.max(1, ...corners.map(([p, q]) => Math.hypot(p, q)));
  const reach = Math.hypot(radius, footing.delta);
  const cast = (passage: Passage) => shadowsOf(facets, footing, halfPlanes, reach, passage);
  return { footing, shadows: joined(cast('solid'), cast('screen')) };
}
