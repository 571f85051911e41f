import { validFootprint, type Footprint } from './footprint.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { barrierLine } from './barrierLine.ts';
import type { HostFace } from './face.ts';
import { innerFace, roomsOf } from './hollow.ts';
import { ribbon } from './ribbon.ts';
import { cornerAt } from './ring.ts';
import { roofOf } from './roof.ts';
import { topAt } from './roofShape.ts';
import { crossOf, difference, dotOf, heading, leftOf, moved, rightOf, span } from './segment.ts';
import type { Barrier, Block, Building, Canopy, Ring, Structure } from './structure.ts';
import { namedAfter, windNames, withinName } from './wind.ts';

/**
 * The faces of a structure that a mount can be fixed to: walls of a building and, where its roof overhangs, the
 * soffits over them, of a hollow one the ceilings behind them; both long sides of a barrier; sides of a block; the underside of a canopy along each edge.
 * Order: walls by edge, then soffits by edge, then ceilings. Empty for trees and vehicles, and for outlines that cannot be built.
 * A face is told by `sort` and `face` together: a soffit has the number of its wall.
 */
export function hostFaces(structure: Structure): readonly HostFace[] {
  switch (structure.kind) {
    case 'building':
      return buildingFaces(structure);
    case 'barrier':
      return barrierFaces(structure);
    case 'block':
      return blockFaces(structure);
    case 'canopy':
      return canopyFaces(structure);
    case 'tree':
    case 'vehicle':
      return [];
  }
}

/** A wall between two points over ground; its outside on the right of `along`, or on the left. */
function wallFace(
  structure: string,
  face: number,
  name: string,
  [a, b]: readonly [Vec2, Vec2],
  outward: Vec2,
  foot: number,
  topLine: readonly Vec2[],
): HostFace {
  const [x, y] = heading(a, b);
  return {
    structure,
    face,
    sort: 'wall',
    name,
    start: [a[0], a[1], foot],
    along: [x, y, 0],
    outward: [outward[0], outward[1], 0],
    width: span(a, b),
    foot,
    top: Math.max(...topLine.map(([, z]) => z)),
    topLine,
    depth: 0,
    within: null,
  };
}

const asSoffit = (
  wall: HostFace,
  name: string,
  z: number,
  depth: number,
  within: Ring | null = null,
): HostFace => ({
  ...wall,
  within,
  sort: 'soffit',
  name,
  start: [wall.start[0], wall.start[1], z],
  foot: z,
  top: z,
  topLine: [
    [0, z],
    [wall.width, z],
  ],
  depth,
});

const flatVec = ([x, y]: Vec3): Vec2 => [x, y];

function buildingFaces(building: Building): HostFace[] {
  const valid = validFootprint(building.outline, building.holes, building.name);
  if (!valid.ok || !(building.height > 0)) return [];
  const { outline, edges } = valid.value;
  const roof = roofOf(building, valid.value);
  const winds = outlineWinds(outline);
  const soffitZ = building.base + building.height;
  const walls = outline.map((a, edge) => {
    const b = cornerAt(outline, edge + 1);
    const along = heading(a, b);
    const width = span(a, b);
    // The top line may reach beyond the wall, out to the eaves: keep what is above the wall.
    const over = roof
      .topOf(edge)
      .map(([x, y, z]): Vec2 => [dotOf(difference([x, y], a), along), z])
      .filter(([s]) => s > 1e-9 && s < width - 1e-9)
      .reverse();
    const topLine: Vec2[] = [
      [0, topAt(roof, outline, edge, 0)],
      ...over,
      [width, topAt(roof, outline, edge, width)],
    ];
    const name = namedAfter(winds[edge] ?? '', 'wall');
    return wallFace(building.id, edges[edge] ?? edge, name, [a, b], rightOf(along), building.base, topLine);
  });
  const soffits = walls.flatMap((wall, edge) => {
    const depth = roof.soffitDepth(edge);
    if (!(depth > 0)) return [];
    return [asSoffit(wall, `Soffit over ${withinName(winds[edge] ?? '', 'wall')}`, soffitZ, depth)];
  });
  return [...walls, ...soffits, ...ceilings(building, valid.value, winds)];
}

/** The ceilings of a hollow building: one behind each wall that has a room, running from it into that room. */
function ceilings(building: Building, footprint: Footprint, winds: readonly string[]): HostFace[] {
  const { rooms } = roomsOf(building, footprint);
  if (!rooms) return [];
  const { outline, edges } = footprint;
  return outline.flatMap((a, edge) => {
    const b = cornerAt(outline, edge + 1);
    const along = heading(a, b);
    const width = span(a, b);
    const inner = innerFace(rooms, a, b, width / 2, width / 2);
    const ring = inner && rooms.rings[inner.ring];
    if (!inner || !ring) return [];
    // The room's edge may run on behind a neighbour in line with this wall: each has its own stretch.
    const inwards = leftOf(along);
    const behind = moved(a, inwards, rooms.thickness);
    const ends: readonly [Vec2, Vec2] = [
      moved(behind, along, Math.max(0, inner.from)),
      moved(behind, along, Math.min(width, inner.to)),
    ];
    const depth = Math.max(...ring.map((corner) => crossOf(along, difference(corner, behind))));
    const number = (edges[edge] ?? edge) + building.outline.length;
    const wall = wallFace(building.id, number, '', ends, inwards, rooms.ceiling, level(width, rooms.ceiling));
    const name = `Ceiling at ${withinName(winds[edge] ?? '', 'wall')}`;
    return [asSoffit(wall, name, rooms.ceiling, depth, ring)];
  });
}

const outlineWinds = (outline: readonly Vec2[]): string[] =>
  windNames(outline.map((a, k) => rightOf(heading(a, cornerAt(outline, k + 1)))));

const level = (width: number, z: number): Vec2[] => [
  [0, z],
  [width, z],
];

function blockFaces(block: Block): HostFace[] {
  const valid = validFootprint(block.outline, [], block.name);
  if (!valid.ok || !(block.height > 0)) return [];
  const { outline, edges } = valid.value;
  const winds = outlineWinds(outline);
  return outline.map((a, edge) => {
    const b = cornerAt(outline, edge + 1);
    const topLine = level(span(a, b), block.base + block.height);
    const name = namedAfter(winds[edge] ?? '', 'side');
    return wallFace(block.id, edges[edge] ?? edge, name, [a, b], rightOf(heading(a, b)), block.base, topLine);
  });
}

function barrierFaces(barrier: Barrier): HostFace[] {
  const valid = barrierLine(barrier);
  if (!valid.ok || !(barrier.height > 0) || !(barrier.thickness > 0)) return [];
  const { points, edges } = valid.value;
  const drawn = barrier.closed ? barrier.line.length : barrier.line.length - 1;
  const half = barrier.thickness / 2;
  const sides = ribbon(points, barrier.closed, barrier.thickness);
  const along = edges.map((_, k) => heading(cornerAt(points, k), cornerAt(points, k + 1)));
  const outwards = [...along.map(leftOf), ...along.map(rightOf)];
  const winds = windNames(outwards);
  return outwards.map((outward, index) => {
    const k = index % edges.length;
    const isLeft = index < edges.length;
    const side = sides?.[k];
    // A barrier too thick for its turns has no mitred sides: its faces are then as long as its line.
    const [a, b] = side
      ? isLeft
        ? [side.leftStart, side.leftEnd]
        : [side.rightStart, side.rightEnd]
      : [moved(cornerAt(points, k), outward, half), moved(cornerAt(points, k + 1), outward, half)];
    const edge = (edges[k] ?? k) + (isLeft ? 0 : drawn);
    const topLine = level(span(a, b), barrier.base + barrier.height);
    const name = namedAfter(winds[index] ?? '', 'side');
    return wallFace(barrier.id, edge, name, [a, b], outward, barrier.base, topLine);
  });
}

function canopyFaces(canopy: Canopy): HostFace[] {
  const valid = validFootprint(canopy.outline, [], canopy.name);
  if (!valid.ok || !(canopy.thickness > 0)) return [];
  const { outline, edges } = valid.value;
  const winds = outlineWinds(outline);
  const underside = canopy.top - canopy.thickness;
  return outline.map((a, edge) => {
    const b = cornerAt(outline, edge + 1);
    const along = heading(a, b);
    const name = `Soffit at ${withinName(winds[edge] ?? '', 'edge')}`;
    const depth = Math.max(...outline.map((corner) => crossOf(along, difference(corner, a))));
    const wall = wallFace(canopy.id, edges[edge] ?? edge, name, [a, b], leftOf(along), underside, [
      [0, underside],
      [span(a, b), underside],
    ]);
    return asSoffit(wall, name, underside, depth, outline);
  });
}

/** Height above z = 0 of the upper edge of a face, `s` metres along it. */
export function faceTopAt(face: HostFace, s: number): number {
  for (let k = 0; k + 1 < face.topLine.length; k++) {
    const [p, q] = [face.topLine[k], face.topLine[k + 1]];
    if (!p || !q || s > q[0]) continue;
    return q[0] > p[0] ? p[1] + ((q[1] - p[1]) * (s - p[0])) / (q[0] - p[0]) : p[1];
  }
  return face.topLine[face.topLine.length - 1]?.[1] ?? face.top;
}

/** A point on a face over ground, `s` metres along it. */
export const pointOnFace = (face: HostFace, s: number): Vec2 =>
  moved(flatVec(face.start), flatVec(face.along), s);
