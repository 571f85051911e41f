import type { Vec2 } from '../../../base/vector.ts';
import type { Editor } from '../../editor.ts';
import type { Pointed } from '../pointed.ts';
import { snapAt, type Snapped } from '../snapping/snapAt.ts';
import { axesAlong, EAST_NORTH, type Axes } from './axes.ts';

/** What is drawn so far, and where the pointer means to go on. */
export interface Draft {
  readonly corners: readonly Vec2[];
  readonly axes: Axes;
  /** Where the next corner would go; null before anything was pointed at. */
  readonly meant: Snapped | null;
  /** It was set by a number, from where the pointer was last. */
  readonly keyed: boolean;
  /** The pointer has moved since the last corner. */
  readonly moved: boolean;
  /** Where the pointer was last, px. */
  readonly spot: Vec2 | null;
  readonly metresPerPixel: number;
  /** A length typed and ended with Tab, m, that waits for its turn. */
  readonly length: number | null;
  /** Every corner but the first was typed. */
  readonly typed: boolean;
  /** What did not go, in words. */
  readonly trouble: string | null;
}

export const EMPTY: Draft = {
  corners: [],
  axes: EAST_NORTH,
  meant: null,
  keyed: false,
  moved: false,
  spot: null,
  metresPerPixel: 0.02,
  length: null,
  typed: true,
  trouble: null,
};

/** A press so near to where the pointer was means what is shown, px. */
const STILL = 4;

/** Whether a press is where the pointer was when keys or typed numbers moved the place that is meant. */
export function isStill({ spot }: Draft, { screen }: Pointed): boolean {
  return spot === null || Math.hypot(screen.spot[0] - spot[0], screen.spot[1] - spot[1]) <= STILL;
}

/** The draft with the pointer somewhere else; the same draft's trouble is over. */
export function pointedTo(editor: Editor, draft: Draft, at: Pointed, closes: boolean): Draft {
  const { plan, snapping } = editor.store.getState();
  const { corners, axes } = draft;
  const held = draft.meant?.key ?? null;
  const meant = snapAt({ plan, at, snapping, chain: { corners, axes }, closes, held });
  const moved = draft.moved || draft.spot === null || !isStill(draft, at);
  const { spot } = at.screen;
  return { ...draft, meant, keyed: false, moved, spot, metresPerPixel: at.metresPerPixel, trouble: null };
}

/** A place that nothing was snapped to. */
export const bare = (point: Vec2): Snapped => ({
  point,
  order: null,
  key: null,
  name: null,
  edge: null,
  lines: [],
  marks: [],
  plates: [],
});

/** The draft with another corner; the first gives the working axes where it lies on an edge. */
export function withCorner(
  draft: Draft,
  { point, edge }: Pick<Snapped, 'point' | 'edge'>,
  typed: boolean,
): Draft {
  const isFirst = draft.corners.length === 0;
  const axes = isFirst && edge ? axesAlong(edge.heading, edge.of) : draft.axes;
  return {
    ...draft,
    corners: [...draft.corners, point],
    axes,
    meant: null,
    keyed: false,
    moved: false,
    length: null,
    typed: draft.typed && (isFirst || typed),
    trouble: null,
  };
}
