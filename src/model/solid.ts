import type { Passage } from './passage.ts';

/**
 * A closed triangle mesh that can block a view. Site frame, metres; every edge is shared by exactly
 * two triangles, corners run counter-clockwise seen from outside, each connected part has a positive volume.
 */
export interface Solid {
  /** Unique in a scene; the OBJ group and `hidden_by`: the structure's id, or that and `.part`. */
  readonly id: string;
  /** Id of the structure (or of the camera whose post this is). */
  readonly structure: string;
  /** What a person calls it: "Hidden by {name}". */
  readonly name: string;
  readonly passage: Passage;
  /** x, y, z of each corner. */
  readonly positions: Float64Array;
  /** Three corner indices a triangle. */
  readonly triangles: Uint32Array;
  /**
   * Of a screen made of sheets (mesh, slats, railings): three numbers a triangle, the unit normal of the sheet that it
   * belongs to, or 0, 0, 0. Seen at a low angle to its sheet a screen closes up. Absent where it has no sheets.
   */
  readonly sheets?: Float64Array;
}
