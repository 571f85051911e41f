import type { Vec3 } from '../../base/vector.ts';
import type { State } from '../../coverage/state.ts';
import type { Camera } from '../../optics/camera.ts';
import { densityAt, depressionAt } from '../../optics/density.ts';
import { inFrame } from '../../optics/projection.ts';
import { heightAlong } from '../section/cutSolids.ts';
import type { Section, SectionLine, Stretch } from '../section/section.ts';
import { sectionPlane, siteFromSection } from '../section/sectionPlane.ts';
import { FACE_WIDTH } from '../section/standingPerson.ts';

/** What one setting makes of a place ahead of it, in the vertical plane of its axis. */
export interface AtDistance {
  /** Horizontal px/m at the asked height; null where the lens has no image. */
  readonly density: number | null;
  readonly state: State;
  /** Index + 1 into the edition's bands; 0 where it is not covered. */
  readonly band: number;
  /** How wide the picture is there, square to the axis, m; null out of the frame, Infinity where it has no end. */
  readonly width: number | null;
  readonly face: {
    readonly state: State;
    readonly band: number;
    readonly density: number | null;
    /** Pixels across a face. */
    readonly across: number | null;
    /** From how far above it is looked down on, °; negative from below. */
    readonly above: number;
  };
}

/** A stretch of the curve of density against distance on which the camera makes the same of every target. */
export interface CurvePart {
  readonly state: State;
  readonly band: number;
  /** Distance, m, and px/m, in order. */
  readonly points: readonly (readonly [distance: number, density: number])[];
}

/**
 * What is found of a distance, by the section's own stretches and the lens's own density.
 * @param distance m ahead of the point below the lens
 */
export function atDistance(section: Section, distance: number, faceHeight: number): AtDistance {
  const { camera, lines } = section;
  const asked = lines[0];
  const faces = faceLine(section, faceHeight);
  const point = placeOn(section, distance, asked?.target.height ?? 0);
  const facePoint = placeOn(section, distance, faceHeight);
  const here = stretchAt(asked, distance);
  const face = stretchAt(faces, distance);
  const density = densityAt(camera, facePoint)?.horizontal ?? null;
  return {
    density: densityAt(camera, point)?.horizontal ?? null,
    state: here?.state ?? 'out of frame',
    band: here?.band ?? 0,
    width: widthAt(camera, point),
    face: {
      state: face?.state ?? 'out of frame',
      band: face?.band ?? 0,
      density,
      across: density === null ? null : density * FACE_WIDTH,
      above: depressionAt(camera.eye, facePoint),
    },
  };
}

/** Samples a part of the curve has for each doubling of the distance; the curve is smooth there. */
const PER_DOUBLING = 24;
/** Nearer than this to the point below the lens nothing is drawn, m. */
const NEAREST = 0.05;

/** Density against distance at the asked height, from just ahead of the lens to `far` m. */
export function densityCurve(section: Section, far: number): readonly CurvePart[] {
  const asked = section.lines[0];
  if (asked === undefined) return [];
  return asked.stretches.flatMap(({ from, to, state, band }): readonly CurvePart[] => {
    const [start, end] = [Math.max(from, NEAREST), Math.min(to, far)];
    if (!(end > start)) return [];
    const steps = Math.max(1, Math.ceil(PER_DOUBLING * Math.log2(end / start)));
    const points = Array.from({ length: steps + 1 }, (_, step) => start * (end / start) ** (step / steps))
      .map((t) => ({ t, density: densityAt(section.camera, placeOn(section, t, asked.target.height)) }))
      .flatMap(({ t, density }) => (density === null ? [] : [[t, density.horizontal] as const]));
    return points.length > 1 ? [{ state, band, points }] : [];
  });
}

/** The farthest target ahead that is covered at the asked height, m; null where none is. */
export const farthestCovered = ({ lines: [asked] }: Section): number | null =>
  asked?.stretches.findLast(({ state, to }) => state === 'covered' && to > 0)?.to ?? null;

const faceLine = ({ lines }: Section, faceHeight: number): SectionLine | undefined =>
  lines.find(({ target }) => target.kind === 'face' && target.height === faceHeight);

const stretchAt = (line: SectionLine | undefined, t: number): Stretch | undefined =>
  line?.stretches.find(({ from, to }) => from <= t && t <= to);

function placeOn({ camera, datum, ground }: Section, t: number, height: number): Vec3 {
  return siteFromSection(sectionPlane(camera, datum), [t, heightAlong(ground, t) + height]);
}

/** Farther than this a view is said to have no end, m. */
const NO_END = 5000;

/** How far the frame reaches to both sides of a point, along the level line square to the pan. */
function widthAt(camera: Camera, point: Vec3): number | null {
  if (!inFrame(camera, point)) return null;
  const { normal } = sectionPlane(camera, 0);
  const within = (by: number): boolean =>
    inFrame(camera, [point[0] + by * normal[0], point[1] + by * normal[1], point[2]]);
  return edgeOf((by) => within(by)) + edgeOf((by) => within(-by));
}

/** How far from 0 a place is still within, found by doubling and then by halving. */
function edgeOf(within: (by: number) => boolean): number {
  let high = 0.01;
  while (within(high)) {
    high *= 1.25;
    if (high > NO_END) return Infinity;
  }
  let low = high > 0.01 ? high / 1.25 : 0;
  while (high - low > 1e-9 * (1 + high)) {
    const middle = (low + high) / 2;
    if (within(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
