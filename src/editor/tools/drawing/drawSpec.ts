import type { Outcome } from '../../../base/fault.ts';
import type { Vec2 } from '../../../base/vector.ts';
import type { Got } from '../../../model/structure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor, Selected, Tool } from '../../editor.ts';
import type { ToolState } from '../chart.ts';

/** Corners as they were drawn; `closed` where the last is joined to the first. */
export interface Drawn {
  readonly corners: readonly Vec2[];
  readonly closed: boolean;
  /** Every length of it was typed, so somebody has taped it. */
  readonly typed: boolean;
}

/** A thing that was put into the plan. */
export interface Made {
  readonly plan: Plan;
  readonly thing: Selected;
}

/** A height that is pulled up or typed once the outline stands. */
export interface Raise {
  /** Above the ground, m, for the first of its kind; later the last used. */
  readonly first: number;
  read(plan: Plan, thing: Selected): number | null;
  set(plan: Plan, thing: Selected, height: number, how: Got): Plan;
}

/** One of what a drawing tool can make. The tool's key again takes the next. */
export interface DrawKind {
  readonly key: string;
  /** "Fence" */
  readonly label: string;
  /** Height that is raised, or asked once made; null: it has none. */
  readonly raise: Raise | null;
  /** Refused where it cannot be built. */
  make(plan: Plan, drawn: Drawn, height: number): Outcome<Made>;
}

/** How a tool draws. */
export interface DrawSpec {
  readonly tool: Tool;
  readonly kinds: readonly [DrawKind, ...DrawKind[]];
  /** A ring must close; a line ends with Enter, or closes. */
  readonly ends: 'ring' | 'line';
  /** A first press that drags draws a rectangle, and `3.2x6` after one corner. */
  readonly rectangle: boolean;
  /** Nothing but a rectangle. */
  readonly rectangleOnly: boolean;
  /** The height follows the pointer before the rest is asked. */
  readonly raises: boolean;
  /** What is asked once the thing is made, at rest with it selected. */
  ask(editor: Editor, thing: Selected, drawn: Drawn): ToolState;
}

/** The drawing in hand: what it makes, and the states that it goes on to. */
export interface Drawing {
  readonly editor: Editor;
  readonly spec: DrawSpec;
  readonly kind: DrawKind;
  /** Nothing drawn yet. */
  armed(): ToolState;
  /** Puts the thing into the plan and asks the rest; where it cannot be built, what is drawn stays with the trouble. */
  finish(drawn: Drawn, stay: (trouble: string) => ToolState): ToolState;
}
