import type { Vec2 } from '../../../base/vector.ts';
import type { Tool } from '../../editor.ts';
import type { Axes } from './axes.ts';

/** Corners that stand but are not closed or ended yet, and all that is needed to go on with them. */
export interface OpenChain {
  readonly tool: Tool;
  /** Which of the tool's kinds. */
  readonly kind: string;
  readonly corners: readonly Vec2[];
  readonly axes: Axes;
  /** Every corner but the first was typed. */
  readonly typed: boolean;
}

/** Whether two chains are the same state of one: corners are never changed in place. */
export const isSameChain = (a: OpenChain | null, b: OpenChain | null): boolean =>
  a === b || (a !== null && b !== null && a.corners === b.corners && a.tool === b.tool && a.kind === b.kind);
