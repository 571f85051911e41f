import { bearing, degreesFromRad, sin, tan } from '../../base/angle.ts';
import { fallOf } from '../../model/monopitchRoof.ts';
import { isRectangle, meanLength } from '../../model/rectangle.ts';
import { signedArea } from '../../model/ring.ts';
import { dotOf, span } from '../../model/segment.ts';
import { straightSkeleton, type SkeletonNode } from '../../model/skeleton.ts';
import { straightened } from '../../model/straightRun.ts';
import type { Got, Ring, Roof, RoofKind } from '../../model/structure.ts';
import { LIMITS } from '../../plan/limits.ts';
import { LEAST_HEIGHT } from './heights.ts';
import { taggedBearing, taggedNumber, type Tags } from './tags.ts';

/** The pitch of a roof that says its shape and no more, °. Common practice for tiled roofs, no source. */
export const DEFAULT_PITCH = 35;

const KINDS: Readonly<Record<string, RoofKind>> = {
  flat: 'flat',
  gabled: 'gable',
  hipped: 'hip',
  pyramidal: 'hip',
  skillion: 'monopitch',
};

const FLAT: Roof = { kind: 'flat', pitch: 0, overhang: 0, ridge: null, parapet: 0 };

export interface ReadRoof {
  readonly roof: Roof;
  /** How high the roof rises above the wall, m. */
  readonly rise: number;
  readonly got: Got;
  /** The tagged shape, where it comes in flat; and why. */
  readonly flattened: 'shape' | 'outline' | 'steep' | null;
}

/** Whether a tagged roof is one that stands over a space of its own. */
export const hasRoofSpace = (tags: Tags): boolean => {
  const kind = KINDS[tags['roof:shape'] ?? 'flat'];
  return kind !== undefined && kind !== 'flat';
};

/** Above so many corners a roof's ridges are not worked out to learn its height. */
const MOST_CORNERS = 200;
/** How far from one another the tops of a pyramid may be, as a share of its breadth. */
const ONE_TOP = 0.05;

/**
 * The roof that the tags ask for, on an outline in metres. Where shapes are not built here or the outline takes no such
 * roof, it is flat at its full height.
 * @param holes      courtyards, either way round
 * @param roofHeight the roof's share of the height as tagged, m; null where no tag says it
 * @param room       the height that roof and walls share, m (infinite where the roof comes on top): a roof that would
 *                   take it all comes in flat
 */
export function roofOf(
  tags: Tags,
  outline: Ring,
  holes: readonly Ring[],
  roofHeight: number | null,
  room: number,
): ReadRoof {
  const shape = tags['roof:shape'];
  const kind = shape === undefined ? 'flat' : KINDS[shape];
  if (kind === 'flat')
    return { roof: FLAT, rise: 0, got: shape === undefined ? 'guessed' : 'mapped', flattened: null };
  if (kind === undefined) return flat('shape');
  const square = holes.length === 0 && isRectangle(outline);
  const sides = square ? ([meanLength(outline, 0), meanLength(outline, 1)] as const) : null;
  const ridge = ridgeOf(tags, kind, outline, sides);
  const tops = sides === null ? topsOn(kind, outline, holes, ridge) : [];
  const run = sides ? runOf(kind, outline, sides, ridge) : Math.max(...tops.map(({ time }) => time));
  if (!(run > 0)) return flat('outline');
  const [top] = tops;
  const apart = sides
    ? Math.abs(sides[0] - sides[1])
    : Math.max(...tops.map(({ at }) => span(at, top?.at ?? at)));
  if (shape === 'pyramidal' && apart > ONE_TOP * (sides ? Math.max(...sides) : run)) return flat('shape');
  const angle = taggedNumber(tags, 'roof:angle');
  const pitch =
    roofHeight !== null && roofHeight > 0
      ? degreesFromRad(Math.atan(roofHeight / run))
      : (angle ?? DEFAULT_PITCH);
  if (!(pitch > 0 && pitch <= LIMITS.pitch.most)) return flat('steep');
  const rise = run * tan(pitch);
  if (room - rise < LEAST_HEIGHT) return flat('steep');
  const got = roofHeight !== null || angle !== null ? 'mapped' : 'guessed';
  return { roof: { kind, pitch, overhang: 0, ridge, parapet: 0 }, rise, got, flattened: null };
}

/**
 * Where a roof on any outline has its tops, and how far over ground from the eaves, m; empty where none can be made.
 * Those of a hip, or of a hip whose ends stand upright, are the skeleton's nodes: ridges lie as high.
 */
function topsOn(
  kind: RoofKind,
  outline: Ring,
  holes: readonly Ring[],
  ridge: number | null,
): readonly SkeletonNode[] {
  const inwards = holes.map((hole) => (signedArea(hole) > 0 ? hole.toReversed() : hole));
  const rings = [outline, ...inwards].map((ring) => straightened(ring).ring);
  if (rings.flat().length > MOST_CORNERS) return [];
  if (kind === 'monopitch') {
    const fall = fallOf(rings[0] ?? outline, ridge);
    const least = Math.min(...outline.map((corner) => dotOf(corner, fall)));
    return outline.map((at) => ({ at, time: dotOf(at, fall) - least }));
  }
  const skeleton = straightSkeleton(rings);
  return 'stuck' in skeleton ? [] : skeleton.nodes.filter(({ time }) => time > 0);
}

const flat = (flattened: 'shape' | 'outline' | 'steep'): ReadRoof => ({
  roof: FLAT,
  rise: 0,
  got: 'guessed',
  flattened,
});

/** Bearing of a gable's ridge, or towards which a mono-pitch falls; null lets the longer side decide. */
function ridgeOf(
  tags: Tags,
  kind: RoofKind,
  outline: Ring,
  sides: readonly [number, number] | null,
): number | null {
  const direction = taggedBearing(tags, 'roof:direction');
  if (kind === 'monopitch') return direction;
  if (kind !== 'gable') return null;
  if (direction !== null) return bearing(direction + 90);
  if (tags['roof:orientation'] !== 'across' || sides === null) return null;
  return bearing(edgeBearing(outline, sides[0] < sides[1] ? 0 : 1));
}

/** Plan distance over which the roof rises, m. */
function runOf(
  kind: RoofKind,
  outline: Ring,
  sides: readonly [number, number],
  ridge: number | null,
): number {
  if (kind === 'hip') return Math.min(...sides) / 2;
  const span = kind === 'gable' ? 0.5 : 1;
  if (ridge === null) return Math.min(...sides) * span;
  // The ridge runs along the edge whose direction is nearest to it; a mono-pitch falls along that edge.
  const off = Math.abs(sin(edgeBearing(outline, 0) - ridge));
  const along = off < Math.SQRT1_2 ? 0 : 1;
  if (kind === 'monopitch') return sides[along];
  return sides[along === 0 ? 1 : 0] * span;
}

function edgeBearing(outline: Ring, edge: number): number {
  const [a = [0, 0], b = [0, 0]] = [outline[edge], outline[(edge + 1) % outline.length]];
  return bearing(degreesFromRad(Math.atan2(b[0] - a[0], b[1] - a[1])));
}
