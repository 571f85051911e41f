import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { OpenChain } from './drawing/openChain.ts';
import type { Pointed } from './pointed.ts';

/** A number that the strip lets one type. */
export interface StripField {
  readonly key: string;
  readonly label: string;
  /** m, ° or a count. */
  readonly value: number;
  readonly measure: 'length' | 'angle' | 'count';
}

/** One of a few, asked in the strip once a thing is made: the kind of its roof, its passage. */
export interface StripChoice {
  readonly key: string;
  readonly label: string;
  readonly options: readonly { readonly key: string; readonly label: string }[];
  readonly chosen: string;
}

/** One row beside the work: what is being changed, in words, and what may be typed or chosen. */
export interface Strip {
  readonly text: string;
  readonly fields: readonly StripField[];
  /** They stand before the fields; after a choice the first field has the focus. */
  readonly choices?: readonly StripChoice[];
  /** Why it does not go here. */
  readonly trouble: boolean;
}

/** What a tool shows in the Model before the plan holds it: a camera, a lamp, or lines being drawn. */
export type Ghost = CameraGhost | { readonly kind: 'lamp'; readonly eye: Vec3 } | Sketch | FrameGhost;

/** A dashed frame over the window, from corner to corner in px, and how many things lie wholly in it. */
export interface FrameGhost {
  readonly kind: 'frame';
  readonly from: Vec2;
  readonly to: Vec2;
  readonly count: number;
}

export interface CameraGhost {
  readonly kind: 'camera';
  readonly eye: Vec3;
  /** The way it would look. */
  readonly towards: Vec3;
  /** Corners of the face that would carry it. */
  readonly face: readonly Vec3[];
}

/** Lines, marks and plates over the Model, in the site frame. */
export interface Sketch {
  readonly kind: 'sketch';
  readonly lines: readonly SketchLine[];
  readonly marks: readonly SketchMark[];
  readonly plates: readonly SketchPlate[];
}

/**
 * `live` saffron in its casing; `fixed` ink; `guide` dashed; `was` dashed and faint; `wrong` coral; `level` a height
 * line; `clear` and `blocked` the two parts of a sight line.
 */
export type LineStyle = 'live' | 'fixed' | 'guide' | 'was' | 'wrong' | 'level' | 'clear' | 'blocked';

export interface SketchLine {
  readonly points: readonly Vec3[];
  readonly closed: boolean;
  readonly style: LineStyle;
  /** Crossed both ways within: a shape that cannot be. */
  readonly hatched?: boolean;
}

/** Each kind of snap has a mark of its own; `ring` is the first corner, which closes; `wrong` the corner at fault. */
export interface SketchMark {
  readonly at: Vec3;
  readonly sign:
    | 'corner'
    | 'crossing'
    | 'middle'
    | 'perpendicular'
    | 'edge'
    | 'inLine'
    | 'equal'
    | 'angle'
    | 'grid'
    | 'fixed'
    | 'ring'
    | 'wrong'
    | 'scale'
    | 'cursor';
}

export interface SketchPlate {
  readonly at: Vec3;
  readonly text: string;
  readonly tone: 'measure' | 'snap' | 'wrong';
  /** Drawn as a dimension between two points, its plate in the middle. */
  readonly between?: readonly [Vec3, Vec3];
}

export type Nudge = 'left' | 'right' | 'up' | 'down';

/** How a typed text was handed over. An arrow gives a length its heading. */
export type TypedBy = 'enter' | 'tab' | Nudge;

/** The state that follows a typed text, or why the text will not do; then the text stays. */
export type Typed =
  | { readonly ok: true; readonly state: ToolState }
  | { readonly ok: false; readonly trouble: string };

/**
 * A state of a tool. A handler gives the state that follows, itself where nothing changes. A missing handler means the
 * state has no use for the event, and whoever asked does what it does without a tool (turn the view, leave the tool).
 */
export interface ToolState {
  readonly name: string;
  readonly strip: Strip | null;
  readonly ghost: Ghost | null;
  readonly cursor:
    | 'default'
    | 'grab'
    | 'grabbing'
    | 'move'
    | 'crosshair'
    | 'not-allowed'
    | 'pointer'
    | 'ns-resize'
    | 'ew-resize'
    | 'nesw-resize'
    | 'nwse-resize';
  hover?(at: Pointed): ToolState;
  /** Whether a drag that begins here is the tool's; else it turns the view. */
  takes?(at: Pointed): boolean;
  /** The pointer was pressed at `from` and is now at `to`. */
  drag?(from: Pointed, to: Pointed): ToolState;
  release?(): ToolState;
  click?(at: Pointed): ToolState;
  /** Two presses within 300 ms and 6 px, the second instead of a click. */
  double?(at: Pointed): ToolState;
  enter?(): ToolState;
  escape?(): ToolState;
  /** Takes the last corner off, in a chain; Backspace and, while a chain is open, Ctrl+Z. */
  back?(): ToolState;
  nudge?(way: Nudge, large: boolean, compass: Compass): ToolState;
  /** Tab in the Model walks the keyboard stops of what is selected; `back` with Shift. */
  tab?(back: boolean): ToolState;
  /** The other end moves: `;`. */
  swap?(): ToolState;
  /** A field's − and + buttons, its arrows, a drag on its label: shown at once. */
  type?(key: string, value: number): ToolState;
  /** What was typed into a field of the strip, as it was typed: `4.2`, `8.2<30`, `3.2x6`. */
  typed?(key: string, text: string, by: TypedBy, compass: Compass): Typed;
  /** Fields that a digit typed in the Model goes to; missing: the strip's first. */
  readonly takesDigits?: boolean;
  /** Corners that are drawn but not finished, to be kept as a draft. */
  readonly chain?: OpenChain;
  choose?(key: string, option: string): ToolState;
  /** A key or a menu asks for something to be done with what is selected; `at` is where the pointer is, if anywhere. */
  act?(act: Act, at: Pointed | null): ToolState;
  /** The tool's own key again, before the first press. */
  again?(): ToolState;
  /** Undo, redo or another hand changed the plan meanwhile. */
  overtaken?(): ToolState;
}

/** What keys and menus do with what is selected. */
export type Act =
  | 'copy'
  | 'turn right'
  | 'turn left'
  | 'mirror'
  | 'split'
  | 'join'
  | 'hide'
  | 'show all'
  | 'lock'
  | 'delete'
  | 'group'
  | 'ungroup'
  | 'forward'
  | 'back'
  | 'align left'
  | 'align right'
  | 'align front'
  | 'align rear'
  | 'align middle'
  | 'align centre'
  | 'bow';

/** The heading on the ground (°, bearing) that an arrow key means in the view: the axis nearest to it on the screen. */
export type Compass = (way: Nudge, axes: readonly number[]) => number;

/** Strip text without fields. */
export const words = (text: string, trouble = false): Strip => ({ text, fields: [], trouble });
