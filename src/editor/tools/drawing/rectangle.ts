import { groundHeight } from '../../../model/ground.ts';
import type { Compass, ToolState, Typed, TypedBy } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { EDGE_ON } from '../snapping/workingPoint.ts';
import { isStill, pointedTo, type Draft } from './draft.ts';
import type { Drawing } from './drawSpec.ts';
import { meansRectangle, typedRectangle, typedSide } from './headed.ts';
import { rectangleFrom, rectangleMeant } from './rectangleRing.ts';
import { ringSketch } from './sketch.ts';

const SMALL = 'Both sides must be 0.01 m or more.';
const HINT = 'Pick the opposite corner, or type 3.2x6 and Enter.';

/** A rectangle from its first corner to the pointer, on the working axes; Shift makes it square. */
export function rectangle(
  drawing: Drawing,
  draft: Draft,
  square = false,
  across: string | null = null,
): ToolState {
  const { editor, spec } = drawing;
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const level = groundHeight(plan.ground);
  // Its own first corner is no corner to close on, and no side stands yet that a guide could follow.
  const follow = (at: Pointed): Draft =>
    draft.keyed && isStill(draft, at)
      ? draft
      : {
          ...pointedTo(editor, { ...draft, corners: [] }, { ...at, shift: false }, false),
          corners: draft.corners,
        };
  const go = (next: Draft, isSquare: boolean): ToolState => rectangle(drawing, next, isSquare, across);
  const refused = (trouble: string): ToolState => go({ ...draft, trouble }, square);
  const take = (next: Draft, isSquare: boolean): ToolState => {
    const ring = rectangleMeant(next, isSquare);
    if (ring) return drawing.finish({ corners: ring, closed: true, typed: false }, refused);
    return go({ ...next, trouble: next.meant ? SMALL : EDGE_ON }, isSquare);
  };
  const typed = (key: string, text: string, by: TypedBy, compass: Compass): Typed => {
    if (by !== 'enter' && by !== 'tab') return no('End a rectangle with Enter.');
    if (key === 'across' && !meansRectangle(text)) {
      const side = typedSide(text, units);
      if (!side.ok) return side;
      if (by === 'tab') return { ok: true, state: rectangle(drawing, draft, square, text) };
      return no('Write both sides: 3.2x6.');
    }
    const whole = key === 'across' ? text : `${across ?? ''}x${text}`;
    const sides = typedRectangle(whole, units);
    if (!sides.ok) return sides;
    const corners = rectangleFrom(draft, sides.across, sides.up, compass);
    return { ok: true, state: drawing.finish({ corners, closed: true, typed: true }, refused) };
  };
  const ring = rectangleMeant(draft, square);
  const side = (from: number): number => {
    const [a, b] = [ring?.[from], ring?.[from + 1]];
    return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0;
  };
  return {
    name: `${spec.tool} rectangle`,
    strip: {
      text: draft.trouble ?? draft.meant?.name ?? HINT,
      fields: [
        { key: 'across', label: 'Across', value: side(0), measure: 'length' },
        { key: 'up', label: 'Up', value: side(1), measure: 'length' },
      ],
      trouble: draft.trouble !== null,
    },
    ghost: ringSketch(ring ?? draft.corners, level, units, draft),
    cursor: 'crosshair',
    hover: (at) => go(follow(at), at.shift),
    takes: () => true,
    drag: (_, to) => go(follow(to), to.shift),
    release: () => take(draft, square),
    click: (at) => take(follow(at), at.shift),
    enter: () => take(draft, square),
    escape: () => drawing.armed(),
    back: () => drawing.armed(),
    typed,
  };
}

const no = (trouble: string): Typed => ({ ok: false, trouble });
