import type { Vec2 } from '../../base/vector.ts';
import { crossOf, difference, dotOf, heading, span } from '../../model/segment.ts';
import type { Got, Structure } from '../../model/structure.ts';
import { windOf } from '../../model/wind.ts';

/** A corner that the foot of a post is taped from. */
export interface TapedCorner {
  /** "south-east corner of House" */
  readonly name: string;
  readonly at: Vec2;
  readonly distance: number;
  readonly got: Got;
}

/** Corners farther off than this are out of a tape's reach, m. */
const TAPE = 30;
/** Two tapes fix a place well where they meet at no less than this, as the sine: 30°. */
const WELL_MET = 0.5;

/** Two corners to tape the foot of a post from: the nearest, and the nearest of those that fix it well with it. */
export function tapedCorners(structures: readonly Structure[], foot: Vec2): readonly TapedCorner[] {
  const corners = structures
    .flatMap(cornersOf)
    .map((corner) => ({ ...corner, distance: span(corner.at, foot) }))
    .filter(({ distance }) => distance > 0.05 && distance <= TAPE)
    .toSorted((one, two) => one.distance - two.distance);
  const [first, ...rest] = corners;
  if (!first) return [];
  const well = rest.find(
    ({ at }) => Math.abs(crossOf(heading(foot, first.at), heading(foot, at))) >= WELL_MET,
  );
  const second = well ?? rest[0];
  return second ? [first, second] : [first];
}

function cornersOf(structure: Structure): Omit<TapedCorner, 'distance'>[] {
  const [ring, got]: readonly [readonly Vec2[], Got] =
    structure.kind === 'building' || structure.kind === 'block'
      ? [structure.outline, structure.got.outline]
      : structure.kind === 'barrier' && structure.sort === 'wall'
        ? [structure.line, structure.got.line]
        : [[], 'guessed'];
  if (ring.length === 0) return [];
  const middle: Vec2 = [
    ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
    ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
  ];
  const word = structure.kind === 'barrier' ? 'end' : 'corner';
  return ring.map((at) => ({
    name: `${windOf(difference(at, middle))} ${word} of ${structure.name}`,
    at,
    got,
  }));
}

/** How far right of a line from a post to a corner the camera looks, with the back to the post, °. */
export function rightOfLine(foot: Vec2, corner: Vec2, ahead: Vec2): number {
  const line = heading(foot, corner);
  return (Math.atan2(-crossOf(line, ahead), dotOf(line, ahead)) * 180) / Math.PI;
}
