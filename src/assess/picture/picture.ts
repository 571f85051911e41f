import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { State } from '../../coverage/state.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Quarter } from '../../optics/upright.ts';

/*
 * The picture that a camera gives, as lines. Places are pixels of the recorded picture as it stands upright: x right, y down
 * from the outer corner of its top-left pixel. A line is x, y in turn; its chords lie within BENT of the true curve.
 */

/** How far a chord may lie off the curve that it stands for, px of the recorded picture. */
export const BENT = 0.1;

/** A stretch of an edge of a solid. */
export interface PictureLine {
  readonly at: Float64Array;
  /** Index of the solid in the scene. */
  readonly solid: number;
  /** Against what is behind the solid, or between two of its faces that are seen. */
  readonly kind: 'outline' | 'crease';
}

/** The edge past which a solid hides what is asked for; as one runs along it, the hider lies on its right. */
export interface HidingLine {
  readonly at: Float64Array;
  readonly solid: number;
}

/** A line on what is asked for at which a band begins. */
export interface BandLine {
  /** Index + 1 of that band. */
  readonly band: number;
  /** It is not density that ends it, but range or an angle at which faces are seen. */
  readonly limit: boolean;
  readonly at: Float64Array;
}

/** A picture mode that shows less than the recorded one. */
export interface ModeFrame {
  readonly name: string;
  /** Its corners. */
  readonly ring: readonly Vec2[];
}

/** A fixed place that an installer finds in the picture. */
export interface Landmark {
  readonly id: string;
  /** "Front door, left jamb, foot". Left and right as one stands before it on the lens's side. */
  readonly name: string;
  readonly kind: 'jamb' | 'corner' | 'post' | 'trunk';
  readonly structure: string;
  /** Site frame, m. */
  readonly place: Vec3;
  readonly x: number;
  readonly y: number;
  /** Per cent of the picture's width from its left, and of its height from its top. */
  readonly left: number;
  readonly top: number;
  /** In the frame with nothing in the way, by the judge of single points. */
  readonly seen: boolean;
}

/** A person who stands where somebody is looked at. */
export interface PicturePerson {
  /** The ground below them, site frame. */
  readonly at: Vec3;
  /** Outlines of body and head, closed; empty out of the frame. */
  readonly body: readonly Float64Array[];
  /** Those stretches of them that nothing hides. */
  readonly seen: readonly Float64Array[];
  readonly parts: readonly {
    readonly part: 'feet' | 'waist' | 'face';
    readonly state: State;
    readonly hider: number | null;
    /** Where it is in the picture; null without an image. */
    readonly x: number | null;
    readonly y: number | null;
  }[];
  /** Horizontal px/m at the face; null without an image. */
  readonly density: number | null;
}

/** What of a picture is known at once, for a drag. */
export interface PictureAround {
  readonly camera: Camera;
  readonly turn: Quarter;
  readonly width: number;
  readonly height: number;
  /** Index of the solid that holds the lens; then nothing is seen. */
  readonly lensInside: number | null;
  readonly hiding: readonly HidingLine[];
  readonly horizon: readonly Float64Array[];
  /** Where the lens law ends within the frame. */
  readonly rim: readonly Float64Array[];
  readonly modes: readonly ModeFrame[];
}

/** All that is drawn of what a camera sees. */
export interface Picture extends PictureAround {
  readonly visible: readonly PictureLine[];
  /** Edges that lie behind other solids. */
  readonly covered: readonly PictureLine[];
  readonly bands: readonly BandLine[];
  readonly landmarks: readonly Landmark[];
}
