import type { StoreApi } from 'zustand/vanilla';
import type { Fault } from '../base/fault.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Target } from '../coverage/target.ts';
import type { History } from '../plan/history.ts';
import type { Plan } from '../plan/plan.ts';
import type { OpenChain } from './tools/drawing/openChain.ts';
import type { SightLine, SightPort } from './sightPort.ts';

export type Selected =
  | { readonly kind: 'structure'; readonly id: string }
  | { readonly kind: 'camera'; readonly id: string }
  | { readonly kind: 'lamp'; readonly id: string }
  | { readonly kind: 'situation'; readonly id: string }
  | { readonly kind: 'patch'; readonly id: string }
  | { readonly kind: 'picture'; readonly id: string }
  | { readonly kind: 'group'; readonly id: string }
  /** An opening or a point on a wall (socket, tap, flue), of the structure `on`. */
  | { readonly kind: 'opening' | 'service'; readonly id: string; readonly on: string }
  | { readonly kind: 'boundary' }
  | { readonly kind: 'ground' };

export const TOOLS = [
  'rest',
  'camera',
  'lamp',
  'place',
  'outline',
  'line',
  'posts',
  'boundary',
  'block',
  'opening',
  'tree',
  'vehicle',
  'spot',
  'scale',
  'measure',
  'stand',
] as const;

export type Tool = (typeof TOOLS)[number];

/** A sentence for the person, in the strip or the live region. */
interface Notice {
  readonly id: number;
  readonly tone: 'said' | 'trouble';
  readonly text: string;
  readonly faults: readonly Fault[];
}

/** Points that were measured between and kept to be seen, in the site frame. */
export interface Measured {
  readonly points: readonly Vec3[];
  readonly closed: boolean;
}

/** Where somebody stands who is looked at: in the Section, in the camera's view, at true pixels. No part of the plan. */
export interface Standing {
  /** m ahead of the point below the selected camera's lens. */
  readonly ahead: number;
  /** The place of the site that was picked instead; null: ahead of the lens. */
  readonly at: Vec2 | null;
}

/** What the person says and chooses. Only `plan` is history. */
export interface EditorState {
  readonly plan: Plan;
  /** Rises with every change of plan, target, conditions or alone. */
  readonly revision: number;
  /** The one that sheet and handles are for: the last of `selection`. */
  readonly selected: Selected | null;
  /** Everything selected, in the order in which it was. */
  readonly selection: readonly Selected[];
  readonly hovered: Selected | null;
  readonly target: Target;
  /** Id of the conditions that are judged; null: as drawn. */
  readonly situation: string | null;
  readonly alone: string | null;
  readonly tool: Tool;
  /** Corners drawn with the tool in hand that are no thing yet. They are kept on the device, but no history. */
  readonly chain: OpenChain | null;
  /** Snapping to the plan and the grid; a held Ctrl leaves it off for the while. */
  readonly snapping: boolean;
  /** Coverage is worked out with each move while structures are shaped, instead of at the end. A setting of the window. */
  readonly coverShaping: boolean;
  /** Names of the steps that undo and redo would take; null where there is none. */
  readonly undoName: string | null;
  readonly redoName: string | null;
  /** True from the press to the release of a drag. */
  readonly gesturing: boolean;
  /** Another tab writes this plan. */
  readonly readOnly: boolean;
  readonly kept: { readonly at: number | null; readonly trouble: string | null };
  readonly notice: Notice | null;
  /** What was measured and kept; it goes with the window. */
  readonly measured: readonly Measured[];
  /** Where the person points in the Model; drives the probe. Site frame. */
  readonly pointed: Vec3 | null;
  readonly standing: Standing;
}

/** A drag: each move starts again from the plan at the press. */
export interface Gesture {
  /** Shows the change; not yet a step of history. */
  change(change: (atPress: Plan) => Plan): void;
  /** Makes the whole drag one step. */
  commit(): void;
  /** Back to the plan at the press. */
  cancel(): void;
}

/** The one place that changes the plan, the selection and the tool in hand. */
export interface Editor {
  readonly store: StoreApi<EditorState>;
  /**
   * One named step of history, e.g. run('Tilt C1', (plan) => aimCamera(plan, id, { tilt })). A change that returns the same
   * plan is no step. Steps that follow within a second with the same `merge` (arrow keys on one number) are one.
   */
  run(name: string, change: (plan: Plan) => Plan, merge?: string): void;
  /** Begins a drag; a second one first commits the former. */
  begin(name: string): Gesture;
  /** Calls a drag off, takes the last corner of a chain back, or the last step of history. */
  undo(): void;
  /** What a tool takes back by itself, asked before history; it answers whether there was something. */
  beforeUndo(back: () => boolean): () => void;
  /** The way between two points of the site as it is shown; null where nobody lends sight. */
  sightLine(from: Vec3, to: Vec3): SightLine | null;
  lendSight(port: SightPort): void;
  redo(): void;
  /** The plan with the steps that led to it, as it would be if a drag that goes on ended now. */
  history(): History;
  /** Takes another plan, with its steps where they are known; the former stays kept on the device. */
  open(plan: Plan, history?: History): void;
  /** Selects one thing alone, or nothing. */
  select(selected: Selected | null): void;
  /** Selects several; the last is the one that the sheet shows. */
  selectAll(things: readonly Selected[]): void;
  /** Adds a thing to what is selected, or takes it out. */
  toggle(thing: Selected): void;
  snap(on: boolean): void;
  /** Works coverage out while structures are shaped, or waits for the end. */
  coverShaping(on: boolean): void;
  hover(hovered: Selected | null): void;
  point(point: Vec3 | null): void;
  ask(target: Target): void;
  /** Judges the plan in other conditions; null as drawn. */
  askIn(situation: string | null): void;
  showAlone(camera: string | null): void;
  hold(tool: Tool): void;
  /** Says what is drawn so far; null: nothing. */
  draws(chain: OpenChain | null): void;
  /** Takes corners that were drawn before in hand again, with their tool. */
  takeUp(chain: OpenChain): void;
  measured(kept: readonly Measured[]): void;
  /** Somebody stands elsewhere. */
  stand(where: Partial<Standing>): void;
  say(text: string, faults?: readonly Fault[]): void;
}
