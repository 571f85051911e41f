import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { HostFace } from '../../model/face.ts';
import { hostFaces } from '../../model/faces.ts';
import { validFootprint } from '../../model/footprint.ts';
import { cornerAt } from '../../model/ring.ts';
import { roofOf } from '../../model/roof.ts';
import { crossOf, difference, dotOf, heading, moved } from '../../model/segment.ts';
import type { Got, OpeningKind, ServiceKind, Structure } from '../../model/structure.ts';
import { windOf } from '../../model/wind.ts';

/** An end of a wall, as one stands before it. */
interface WallEnd {
  /** "west" */
  readonly wind: string;
  /** Of a barrier; else a corner of a building, of which an inner one meets another wall that comes towards you. */
  readonly sort: 'corner' | 'inner corner' | 'end';
}

interface SeenOpening {
  readonly name: string;
  readonly kind: OpeningKind;
  readonly left: number;
  readonly right: number;
  readonly foot: number;
  readonly head: number;
  readonly got: Got;
}

export interface SeenService {
  readonly name: string;
  readonly kind: ServiceKind;
  readonly at: Vec2;
  readonly inside: boolean;
  readonly got: Got;
}

/**
 * A wall as one stands before it, outside: x to the right from its left end, y up, both m; y as z of the site frame.
 * Left and right are the viewer's.
 */
export interface WallView {
  /** "South wall" and "House". */
  readonly name: string;
  readonly structure: string;
  readonly kind: Structure['kind'];
  readonly width: number;
  readonly foot: number;
  /** Its upper edge from left to right. */
  readonly topLine: readonly Vec2[];
  readonly ends: { readonly left: WallEnd; readonly right: WallEnd };
  readonly openings: readonly SeenOpening[];
  readonly services: readonly SeenService[];
  /** Middles of the posts that a canopy has along this edge. */
  readonly posts: readonly number[];
  /** Level underside of the eaves over it; null without one. */
  readonly soffit: { readonly y: number; readonly depth: number } | null;
  /** Faces of the roof as they are seen from here, the farthest first. */
  readonly roof: readonly (readonly Vec2[])[];
  /** How its outline and its height were got. */
  readonly got: { readonly across: Got; readonly up: Got };
  /** Level unit directions in the site frame: to the viewer's right, and from the wall towards the viewer. */
  readonly right: Vec2;
  readonly out: Vec2;
  /** Place of x = 0 over ground. */
  readonly origin: Vec2;
}

/** Where a point of the site lies in the view of a wall. */
export const seenAt = ({ origin, right }: WallView, [x, y, z]: Vec3): Vec2 => [
  dotOf(difference([x, y], origin), right),
  z,
];

/** How far a point over ground lies in front of a wall, m. */
export const inFront = ({ origin, out }: WallView, [x, y]: readonly [number, number, ...number[]]): number =>
  dotOf(difference([x, y], origin), out);

/**
 * The face of a structure as it is seen from outside; of a canopy, whose soffits are named by its edges, its edge as one
 * stands before it.
 */
export function wallView(structure: Structure, face: HostFace): WallView {
  const outward: Vec2 = [face.outward[0], face.outward[1]];
  const out: Vec2 = structure.kind === 'canopy' ? [-outward[0], -outward[1]] : outward;
  const right: Vec2 = [0 - out[1], out[0]];
  const [start, end]: [Vec2, Vec2] = [
    [face.start[0], face.start[1]],
    moved([face.start[0], face.start[1]], [face.along[0], face.along[1]], face.width),
  ];
  // The left-hand sides of a barrier run the other way.
  const isMirrored = dotOf([face.along[0], face.along[1]], right) < 0;
  const origin = isMirrored ? end : start;
  const wall = wallUnder(structure, face);
  const across = (place: Vec2): number => dotOf(difference(place, origin), right);
  const topLine = topOf(structure, wall).map(([s, z]): Vec2 => [isMirrored ? face.width - s : s, z]);
  const edges = edgesOf(structure, face.face);
  const onEdge = (along: number): number =>
    edges === null ? 0 : across(moved(edges[0], heading(...edges), along));
  const faceEdge = structure.kind === 'barrier' ? face.face % edgeCount(structure) : face.face;
  const openings =
    structure.kind === 'building' || structure.kind === 'barrier'
      ? structure.openings.filter((opening) => opening.face === faceEdge)
      : [];
  const services =
    structure.kind === 'building' ? structure.services.filter((service) => service.face === face.face) : [];
  const base = structure.kind === 'canopy' ? 0 : structure.base;
  return {
    name: wall.name,
    structure: structure.name,
    kind: structure.kind,
    width: face.width,
    foot: wall.foot,
    topLine: isMirrored ? topLine.reverse() : topLine,
    ends: {
      left: endOf(structure, origin, [-right[0], -right[1]]),
      right: endOf(structure, isMirrored ? start : end, right),
    },
    openings: openings.map(({ name, kind, along, width, height, sill, got }) => {
      const sides = [onEdge(along), onEdge(along + width)];
      const foot = base + sill;
      return {
        name,
        kind,
        left: Math.min(...sides),
        right: Math.max(...sides),
        foot,
        head: foot + height,
        got,
      };
    }),
    services: services.map(({ name, kind, along, height, inside, got }) => ({
      name,
      kind,
      at: [onEdge(along), base + height],
      inside,
      got,
    })),
    posts: postsAlong(structure, origin, { out, right }, face.width),
    soffit: soffitOver(structure, face),
    // From within a room no roof is seen.
    roof: structure.kind === 'building' && face.within !== null ? [] : roofSeen(structure, { across, out }),
    got: gotOf(structure),
    right,
    out,
    origin,
  };
}

/** The wall that a soffit is over; the face itself where it is one, or where there is none. */
const wallUnder = (structure: Structure, face: HostFace): HostFace =>
  hostFaces(structure).find((other) => other.sort === 'wall' && other.face === face.face) ?? face;

function soffitOver(structure: Structure, face: HostFace): WallView['soffit'] {
  const soffit = hostFaces(structure).find((other) => other.sort === 'soffit' && other.face === face.face);
  return soffit ? { y: soffit.top, depth: soffit.depth } : null;
}

/** The upper edge of a wall; of a canopy's edge that of its board. */
const topOf = (structure: Structure, { topLine, width }: HostFace): readonly Vec2[] =>
  structure.kind === 'canopy'
    ? [
        [0, structure.top],
        [width, structure.top],
      ]
    : topLine;

function postsAlong(
  structure: Structure,
  origin: Vec2,
  { out, right }: { readonly out: Vec2; readonly right: Vec2 },
  width: number,
): readonly number[] {
  if (structure.kind !== 'canopy') return [];
  return structure.outline.slice(0, structure.posts).flatMap((corner) => {
    const off = difference(corner, origin);
    const x = dotOf(off, right);
    return Math.abs(dotOf(off, out)) < 1e-6 && x > -1e-6 && x < width + 1e-6 ? [x] : [];
  });
}

const edgeCount = (structure: Structure): number => {
  if (structure.kind !== 'barrier') return 1;
  return Math.max(1, structure.line.length - (structure.closed ? 0 : 1));
};

/** The edge of a face as it was drawn, from which openings and services are measured. */
function edgesOf(structure: Structure, face: number): readonly [Vec2, Vec2] | null {
  if (structure.kind !== 'building' && structure.kind !== 'barrier') return null;
  const corners = structure.kind === 'building' ? structure.outline : structure.line;
  const edge = structure.kind === 'barrier' ? face % edgeCount(structure) : face;
  return [cornerAt(corners, edge), cornerAt(corners, edge + 1)];
}

function endOf(structure: Structure, place: Vec2, way: Vec2): WallEnd {
  return { wind: windOf(way), sort: endSort(structure, place) };
}

/** Whether a wall ends freely, at a corner, or where another wall comes towards the viewer. */
function endSort(structure: Structure, place: Vec2): WallEnd['sort'] {
  if (structure.kind === 'barrier') return 'end';
  if (structure.kind === 'tree' || structure.kind === 'vehicle') return 'corner';
  const valid = validFootprint(structure.outline, [], structure.name);
  if (!valid.ok) return 'corner';
  const { outline } = valid.value;
  const k = outline.findIndex(([x, y]) => Math.hypot(x - place[0], y - place[1]) < 1e-6);
  if (k < 0) return 'corner';
  const [before, at, after] = [cornerAt(outline, k - 1), cornerAt(outline, k), cornerAt(outline, k + 1)];
  return crossOf(difference(at, before), difference(after, at)) < 0 ? 'inner corner' : 'corner';
}

/** The faces of a building's roof as seen square on to a wall, the farthest first. */
function roofSeen(
  structure: Structure,
  { across, out }: { across(place: Vec2): number; readonly out: Vec2 },
): WallView['roof'] {
  if (structure.kind !== 'building') return [];
  const valid = validFootprint(structure.outline, structure.holes, structure.name);
  if (!valid.ok) return [];
  const faces = roofOf(structure, valid.value).faces.flatMap(([outer]) => (outer ? [outer] : []));
  const near = (loop: readonly Vec3[]): number =>
    loop.reduce((sum, [x, y]) => sum + dotOf([x, y], out), 0) / Math.max(1, loop.length);
  return faces
    .toSorted((a, b) => near(a) - near(b))
    .map((loop) => loop.map(([x, y, z]): Vec2 => [across([x, y]), z]));
}

function gotOf(structure: Structure): WallView['got'] {
  switch (structure.kind) {
    case 'building':
    case 'block':
      return { across: structure.got.outline, up: structure.got.height };
    case 'canopy':
      return { across: structure.got.outline, up: structure.got.top };
    case 'barrier':
      return { across: structure.got.line, up: structure.got.height };
    case 'tree':
      return { across: structure.got.at, up: structure.got.height };
    case 'vehicle':
      return { across: structure.got.at, up: structure.got.size };
  }
}
