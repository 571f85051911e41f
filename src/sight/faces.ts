import { clumpsOf, type Clumps } from './clumps.ts';
import { convexGroups } from './convexGroups.ts';
import { MOST_CORNERS } from './faceSize.ts';
import type { Facets } from './facets.ts';

/** Corners off the plane of a face by less than this, m, lie in it. */
const FLAT = 1e-9;
/** Sine of the least turn at a corner of a face that two facets make. */
const LEAST_TURN = 1e-6;

/**
 * The facets of a scene as convex faces: two facets of one solid that make a flat convex quadrangle are one, so that its
 * shadow is set up and filled once. Faces keep the order of their first facets, and so of the solids.
 */
export interface Faces {
  readonly count: number;
  /** Corners of each face: 3 or 4. */
  readonly sides: Uint8Array;
  /** Twelve numbers a face: its corners, counter-clockwise from outside. Site frame, m. */
  readonly corners: Float64Array;
  /** Four numbers a face: outward normal, not of unit length, and its length. */
  readonly normals: Float64Array;
  /** Four a face: the face across the edge from corner i to the next; −1 where the mesh is open. */
  readonly neighbours: Int32Array;
  /** Its first facet. */
  readonly facet: Int32Array;
  /** The first face of each group of facets, and after the last group how many faces there are. */
  readonly starts: Int32Array;
  /** Six numbers a group: its box, least and greatest x, y, z. */
  readonly boxes: Float64Array;
  readonly clumps: Clumps;
  /** 1 a group whose faces are few and all lie before none of the others: a convex solid. */
  readonly convex: Uint8Array;
}

type Laid = Pick<Facets, 'count' | 'corners' | 'normals' | 'neighbours' | 'solid' | 'sheets' | 'groups'>;

/** Joins facets to faces, each with the first neighbour that fits. Cost: linear in facets. */
export function facesOf(facets: Laid): Faces {
  const { count, neighbours } = facets;
  const partner = new Int32Array(count).fill(-1);
  const edge = new Uint8Array(count);
  const faceOf = new Int32Array(count).fill(-1);
  let faces = 0;
  for (let facet = 0; facet < count; facet += 1) {
    if (faceOf[facet] !== -1) continue;
    faceOf[facet] = faces;
    for (let k = 0; k < 3; k += 1) {
      const other = neighbours[facet * 3 + k] ?? -1;
      if (other <= facet || faceOf[other] !== -1 || !fits(facets, facet, k, other)) continue;
      partner[facet] = other;
      edge[facet] = k;
      faceOf[other] = faces;
      break;
    }
    faces += 1;
  }
  const found = {
    count: faces,
    sides: new Uint8Array(faces),
    corners: new Float64Array(faces * MOST_CORNERS * 3),
    normals: new Float64Array(faces * 4),
    neighbours: new Int32Array(faces * MOST_CORNERS).fill(-1),
    facet: new Int32Array(faces),
    starts: Int32Array.from([...facets.groups.map(({ from }) => faceOf[from] ?? faces), faces]),
    boxes: Float64Array.from(facets.groups.flatMap(({ box }) => [...box])),
  };
  for (let facet = 0; facet < count; facet += 1) {
    const face = faceOf[facet] ?? 0;
    const other = partner[facet] ?? -1;
    if (other >= 0) writeQuadrangle(found, face, facets, faceOf, facet, edge[facet] ?? 0, other);
    else if (sharesNone(faceOf, facets, facet)) writeTriangle(found, face, facets, faceOf, facet);
  }
  return {
    ...found,
    clumps: clumpsOf(found.starts, found.sides, found.corners),
    convex: convexGroups(found),
  };
}

/** The edge of a facet beyond which another lies. */
const edgeTo = ({ neighbours }: Laid, facet: number, other: number): number => {
  if (neighbours[facet * 3] === other) return 0;
  return neighbours[facet * 3 + 1] === other ? 1 : 2;
};

/** Whether the facet across edge k makes a flat convex quadrangle with this one. */
function fits(facets: Laid, facet: number, k: number, other: number): boolean {
  const { corners, normals, solid, sheets } = facets;
  if (solid[facet] !== solid[other]) return false;
  const n = facet * 3;
  if (sheets !== null)
    for (let axis = 0; axis < 3; axis += 1) if (sheets[n + axis] !== sheets[other * 3 + axis]) return false;
  const [nx, ny, nz] = [normals[n] ?? 0, normals[n + 1] ?? 0, normals[n + 2] ?? 0];
  const size = Math.hypot(nx, ny, nz);
  const m = other * 3;
  const same = nx * (normals[m] ?? 0) + ny * (normals[m + 1] ?? 0) + nz * (normals[m + 2] ?? 0);
  if (!(size > 0) || !(same > 0)) return false;
  const far = other * 9 + ((edgeTo(facets, other, facet) + 2) % 3) * 3;
  const from = facet * 9 + k * 3;
  const to = facet * 9 + ((k + 1) % 3) * 3;
  const apex = facet * 9 + ((k + 2) % 3) * 3;
  const c = (at: number, axis: number) => corners[at + axis] ?? Number.NaN;
  const off = nx * (c(far, 0) - c(from, 0)) + ny * (c(far, 1) - c(from, 1)) + nz * (c(far, 2) - c(from, 2));
  if (!(Math.abs(off) <= FLAT * size)) return false;
  // The quadrangle runs apex, from, far, to: it must turn left at both ends of the edge that goes.
  const turns = (before: number, at: number, after: number): boolean => {
    const [ax, ay, az] = [c(at, 0) - c(before, 0), c(at, 1) - c(before, 1), c(at, 2) - c(before, 2)];
    const [bx, by, bz] = [c(after, 0) - c(at, 0), c(after, 1) - c(at, 1), c(after, 2) - c(at, 2)];
    const turn = nx * (ay * bz - az * by) + ny * (az * bx - ax * bz) + nz * (ax * by - ay * bx);
    return turn > LEAST_TURN * size * Math.hypot(ax, ay, az) * Math.hypot(bx, by, bz);
  };
  return turns(apex, from, far) && turns(far, to, apex);
}

/** Whether a facet is a face by itself: no neighbour belongs to the same face. */
const sharesNone = (faceOf: Int32Array, { neighbours }: Laid, facet: number): boolean => {
  for (let k = 0; k < 3; k += 1) {
    const other = neighbours[facet * 3 + k] ?? -1;
    if (other >= 0 && faceOf[other] === faceOf[facet]) return false;
  }
  return true;
};

type Writable = Omit<Faces, 'clumps' | 'convex'>;

function writeTriangle(into: Writable, face: number, facets: Laid, faceOf: Int32Array, facet: number): void {
  into.facet[face] = facet;
  into.sides[face] = 3;
  for (let k = 0; k < 3; k += 1) writeCorner(into, face, k, facets, faceOf, facet, k);
  writeNormal(into, face, facets.normals, facet);
}

function writeQuadrangle(
  into: Writable,
  face: number,
  facets: Laid,
  faceOf: Int32Array,
  facet: number,
  k: number,
  other: number,
): void {
  const back = edgeTo(facets, other, facet);
  into.facet[face] = facet;
  into.sides[face] = 4;
  writeCorner(into, face, 0, facets, faceOf, facet, (k + 2) % 3);
  writeCorner(into, face, 1, facets, faceOf, other, (back + 1) % 3);
  writeCorner(into, face, 2, facets, faceOf, other, (back + 2) % 3);
  writeCorner(into, face, 3, facets, faceOf, facet, (k + 1) % 3);
  // The larger half has the better normal.
  const { normals } = facets;
  const size = (at: number) =>
    Math.hypot(normals[at * 3] ?? 0, normals[at * 3 + 1] ?? 0, normals[at * 3 + 2] ?? 0);
  writeNormal(into, face, normals, size(other) > size(facet) ? other : facet);
}

/** One corner of a face and what lies across the edge that starts there: those of corner k of a facet. */
function writeCorner(
  into: Writable,
  face: number,
  corner: number,
  { corners, neighbours }: Laid,
  faceOf: Int32Array,
  facet: number,
  k: number,
): void {
  const at = (face * MOST_CORNERS + corner) * 3;
  for (let axis = 0; axis < 3; axis += 1)
    into.corners[at + axis] = corners[facet * 9 + k * 3 + axis] ?? Number.NaN;
  const beyond = neighbours[facet * 3 + k] ?? -1;
  into.neighbours[face * MOST_CORNERS + corner] = beyond < 0 ? -1 : (faceOf[beyond] ?? -1);
}

function writeNormal(into: Writable, face: number, normals: Float64Array, facet: number): void {
  let square = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    const n = normals[facet * 3 + axis] ?? Number.NaN;
    into.normals[face * 4 + axis] = n;
    square += n * n;
  }
  into.normals[face * 4 + 3] = Math.sqrt(square);
}
