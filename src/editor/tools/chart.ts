import type { Vec3 } from '../../base/vector.ts';
import type { Pointed } from './pointed.ts';

/** A number that the strip lets one type. */
export interface StripField {
  readonly key: string;
  readonly label: string;
  /** m or °. */
  readonly value: number;
  readonly measure: 'length' | 'angle';
}

/** One row beside the work: what is being changed, in words, and what may be typed. */
export interface Strip {
  readonly text: string;
  readonly fields: readonly StripField[];
  /** Why it does not go here. */
  readonly trouble: boolean;
}

/** What a tool shows in the Model before the plan holds it: a camera, or a lamp. */
export type Ghost = CameraGhost | { readonly kind: 'lamp'; readonly eye: Vec3 };

export interface CameraGhost {
  readonly kind: 'camera';
  readonly eye: Vec3;
  /** The way it would look. */
  readonly towards: Vec3;
  /** Corners of the face that would carry it. */
  readonly face: readonly Vec3[];
}

export type Nudge = 'left' | 'right' | 'up' | 'down';

/**
 * A state of a tool. A handler gives the state that follows, itself where nothing changes. A missing handler means the
 * state has no use for the event, and whoever asked does what it does without a tool (turn the view, leave the tool).
 */
export interface ToolState {
  readonly name: string;
  readonly strip: Strip | null;
  readonly ghost: Ghost | null;
  readonly cursor: 'default' | 'grab' | 'grabbing' | 'crosshair' | 'not-allowed' | 'pointer';
  hover?(at: Pointed): ToolState;
  /** Whether a drag that begins here is the tool's; else it turns the view. */
  takes?(at: Pointed): boolean;
  /** The pointer was pressed at `from` and is now at `to`. */
  drag?(from: Pointed, to: Pointed): ToolState;
  release?(): ToolState;
  click?(at: Pointed): ToolState;
  enter?(): ToolState;
  escape?(): ToolState;
  nudge?(way: Nudge, large: boolean): ToolState;
  type?(key: string, value: number): ToolState;
  /** The tool's own key again, before the first press. */
  again?(): ToolState;
}

/** Strip text without fields. */
export const words = (text: string, trouble = false): Strip => ({ text, fields: [], trouble });
