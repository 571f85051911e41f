import { sin } from '../base/angle.ts';
import type { Passage } from '../model/passage.ts';
import type { Solid } from '../model/solid.ts';
import { facesOf, type Faces } from './faces.ts';

/** A range of facets that belongs to one solid, with its box: least and greatest x, y, z. */
export interface FacetGroup {
  readonly solid: number;
  readonly passage: Passage;
  readonly from: number;
  readonly to: number;
  readonly box: Float64Array;
}

/** All triangles of a scene in flat arrays, in the order of the solids. Site frame, m. */
export interface Facets {
  readonly solids: readonly Solid[];
  readonly groups: readonly FacetGroup[];
  readonly count: number;
  /** Nine numbers a facet: its corners, counter-clockwise from outside. */
  readonly corners: Float64Array;
  /** Three numbers a facet: outward normal, not of unit length. */
  readonly normals: Float64Array;
  /** Three a facet: the facet across the edge from corner i to the next; −1 where the mesh is open. */
  readonly neighbours: Int32Array;
  /** Index of its solid. */
  readonly solid: Int32Array;
  /** Three a facet: unit normal of the sheet of a screen that it belongs to, 0 where none; null where no solid has sheets. */
  readonly sheets: Float64Array | null;
  /** Sine of the angle to its sheet below which a screen closes up. */
  readonly closing: number;
  /** The same triangles as convex faces, which throw the shadows. */
  readonly faces: Faces;
}

/** The angle to its face below which the gaps of mesh, slats or railings close up, °. Common practice, no source. */
const CLOSING = 30;

/**
 * Lays the triangles of closed solids out for the sight engine. Cost: linear in triangles.
 * @param closing angle to its sheet below which a screen closes up, °
 */
export function facetsOf(solids: readonly Solid[], closing = CLOSING): Facets {
  const count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
  const facets = {
    solids,
    groups: [] as FacetGroup[],
    count,
    corners: new Float64Array(count * 9),
    normals: new Float64Array(count * 3),
    neighbours: new Int32Array(count * 3).fill(-1),
    solid: new Int32Array(count),
    sheets: solids.some(({ sheets }) => sheets) ? new Float64Array(count * 3) : null,
    closing: sin(closing),
  };
  let from = 0;
  solids.forEach((solid, index) => {
    const to = from + solid.triangles.length / 3;
    copyCorners(solid, from, facets.corners);
    joinNeighbours(solid.triangles, from, facets.neighbours);
    facets.solid.fill(index, from, to);
    if (solid.sheets) facets.sheets?.set(solid.sheets, from * 3);
    facets.groups.push({ solid: index, passage: solid.passage, from, to, box: boxOf(solid.positions) });
    from = to;
  });
  fillNormals(facets.corners, facets.normals);
  return { ...facets, faces: facesOf(facets) };
}

function copyCorners({ positions, triangles }: Solid, from: number, corners: Float64Array): void {
  let at = from * 9;
  for (const corner of triangles)
    for (let axis = 0; axis < 3; axis += 1) corners[at++] = positions[corner * 3 + axis] ?? Number.NaN;
}

function joinNeighbours(triangles: Uint32Array, from: number, neighbours: Int32Array): void {
  const corner = (facet: number, k: number) => triangles[facet * 3 + (k % 3)] ?? 0;
  const key = (a: number, b: number) => a * 4_294_967_296 + b;
  const open = new Map<number, number>();
  for (let facet = 0; facet < triangles.length / 3; facet += 1) {
    for (let k = 0; k < 3; k += 1) {
      const [a, b] = [corner(facet, k), corner(facet, k + 1)];
      const other = open.get(key(b, a));
      if (other === undefined) {
        open.set(key(a, b), facet * 3 + k);
        continue;
      }
      open.delete(key(b, a));
      neighbours[from * 3 + facet * 3 + k] = from + Math.floor(other / 3);
      neighbours[from * 3 + other] = from + facet;
    }
  }
}

function boxOf(positions: Float64Array): Float64Array {
  const box = Float64Array.of(Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity);
  positions.forEach((value, at) => {
    const axis = at % 3;
    box[axis] = Math.min(box[axis] ?? value, value);
    box[axis + 3] = Math.max(box[axis + 3] ?? value, value);
  });
  return box;
}

function fillNormals(corners: Float64Array, normals: Float64Array): void {
  for (let facet = 0; facet < normals.length / 3; facet += 1) {
    const at = (k: number) => corners[facet * 9 + k] ?? Number.NaN;
    const [ux, uy, uz] = [at(3) - at(0), at(4) - at(1), at(5) - at(2)];
    const [vx, vy, vz] = [at(6) - at(0), at(7) - at(1), at(8) - at(2)];
    normals[facet * 3] = uy * vz - uz * vy;
    normals[facet * 3 + 1] = uz * vx - ux * vz;
    normals[facet * 3 + 2] = ux * vy - uy * vx;
  }
}
