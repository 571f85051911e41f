import type { Vec2 } from '../../base/vector.ts';
import type { Target } from '../../coverage/target.ts';
import type { State } from '../../coverage/state.ts';
import type { Passage } from '../../model/passage.ts';
import type { Camera } from '../../optics/camera.ts';
import type { FrameEdges } from '../../optics/frameEdges.ts';

/*
 * A section is told in the vertical plane through a lens along its pan: t in metres from the point below the lens, ahead
 * positive; h in metres above the datum of the ground. A place is [t, h].
 */

/** The cut of one solid. */
export interface CutSolid {
  /** Index in the scene. */
  readonly solid: number;
  readonly id: string;
  readonly structure: string;
  readonly name: string;
  readonly passage: Passage;
  /** t, h in turn; outer rings counter-clockwise, holes clockwise. */
  readonly rings: readonly Float64Array[];
  /** False where a ring found no end: then its outline is drawn, but not filled. */
  readonly closed: boolean;
  /** t0, h0, t1, h1 of each side, the solid on its left. */
  readonly sides: Float64Array;
  /** Of a screen: the normals of its sheets, along t and h, each once; seen at a low angle to one it closes up. */
  readonly sheets: readonly Vec2[];
}

/** A stretch of a line on which a camera makes the same of every target. Ends are exact to a micrometre. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly state: State;
  /** Index + 1 into the edition's bands; 0 where the state is not covered. */
  readonly band: number;
  /** Index of the solid that hides or screens it; null where none does. */
  readonly hider: number | null;
  /** Why a covered face is below the band of its density (coverage/rule.ts). */
  readonly lost: number;
}

/** A line of targets a height above the ground, all along the section. */
export interface SectionLine {
  readonly target: Target;
  /** From left to right. */
  readonly stretches: readonly Stretch[];
  /** Nothing ahead is covered nearer than this, m; null where nothing is covered at all. */
  readonly nearest: number | null;
}

/** What a camera hides behind one solid: places in order around a part of the plane. It goes on past the drawing. */
export interface HiddenPart {
  readonly solid: number;
  readonly outline: readonly Vec2[];
}

/** A part of a standing person as the camera makes of it. */
interface PersonPart {
  readonly part: 'feet' | 'waist' | 'face';
  readonly state: State;
  readonly hider: number | null;
}

/** A person of the plan's stature who stands in the section. */
export interface StandingPerson {
  readonly distance: number;
  /** Height of the ground there, above the datum, m. */
  readonly ground: number;
  readonly stature: number;
  readonly faceHeight: number;
  readonly parts: readonly PersonPart[];
  /** Of the face: what the camera makes of it. */
  readonly face: Stretch;
  /** Horizontal px/m at the face; null without an image. */
  readonly density: number | null;
  /** Pixels across a face of FACE_WIDTH; null without an image. */
  readonly across: number | null;
  /** From how far above the face is looked down on, °; negative from below. */
  readonly above: number;
}

/** All that a section shows, in numbers. */
export interface Section {
  readonly camera: Camera;
  /** Height of the datum in the site frame, m. */
  readonly datum: number;
  /** The lens: t is 0. */
  readonly lens: number;
  /** Height of the ground below the lens above the datum, m; the lens's own height less this is the mounting height. */
  readonly groundBelow: number;
  readonly mountingHeight: number;
  /** Ends of what is told, m. */
  readonly from: number;
  readonly to: number;
  /** Id of the structure that carries the camera; null without one. */
  readonly host: string | null;
  readonly frame: FrameEdges;
  /** Where the axis ends: at the ground, at a solid, or at the end of the section. */
  readonly axisEnd: Vec2;
  readonly cuts: readonly CutSolid[];
  /** The ground, from left to right. */
  readonly ground: readonly Vec2[];
  /** The chosen target first; then the ground and face height, as far as they are others. */
  readonly lines: readonly SectionLine[];
  readonly hidden: readonly HiddenPart[];
  readonly person: StandingPerson;
}
