import { MOST_CORNERS } from './faceSize.ts';
import { treeOfBoxes, type Tree } from './tree.ts';

/** Most faces that are culled together. */
const MOST = 64;

/** Runs of faces of one solid with a tree over their boxes, so that a camera passes by most of a scene at once. */
export interface Clumps {
  /** The first face of each, and after the last how many faces there are. */
  readonly starts: Int32Array;
  /** Which group of facets each belongs to. */
  readonly group: Int32Array;
  /** Six numbers each: least and greatest x, y, z. */
  readonly boxes: Float64Array;
  readonly tree: Tree;
}

/**
 * Runs of at most MOST faces that follow one another, as a mesh mostly lists neighbours together.
 * @param starts  the first face of each group, and after the last how many faces there are
 * @param corners as in Faces
 */
export function clumpsOf(starts: Int32Array, sides: Uint8Array, corners: Float64Array): Clumps {
  const first: number[] = [];
  const group: number[] = [];
  for (let at = 0; at + 1 < starts.length; at += 1)
    for (let face = starts[at] ?? 0; face < (starts[at + 1] ?? 0); face += MOST) {
      first.push(face);
      group.push(at);
    }
  const count = first.length;
  const ends = Int32Array.from([...first, sides.length]);
  const boxes = new Float64Array(count * 6);
  for (let clump = 0; clump < count; clump += 1) {
    const box = clump * 6;
    boxes.fill(Infinity, box, box + 3);
    boxes.fill(-Infinity, box + 3, box + 6);
    for (let face = ends[clump] ?? 0; face < (ends[clump + 1] ?? 0); face += 1)
      for (let k = 0; k < (sides[face] ?? 0) * 3; k += 1) {
        const n = corners[face * MOST_CORNERS * 3 + k] ?? Number.NaN;
        const axis = box + (k % 3);
        if (n < (boxes[axis] ?? 0)) boxes[axis] = n;
        if (n > (boxes[axis + 3] ?? 0)) boxes[axis + 3] = n;
      }
  }
  return { starts: ends, group: Int32Array.from(group), boxes, tree: treeOfBoxes(boxes) };
}
