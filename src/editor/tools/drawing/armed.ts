import { groundHeight } from '../../../model/ground.ts';
import type { Compass, Strip, ToolState, Typed, TypedBy } from '../chart.ts';
import { EDGE_ON } from '../snapping/workingPoint.ts';
import { chaining } from './chaining.ts';
import { isStill, pointedTo, withCorner, type Draft } from './draft.ts';
import type { Drawing } from './drawSpec.ts';
import { offset } from './offset.ts';
import { rectangle } from './rectangle.ts';
import { chainSketch } from './sketch.ts';

/** Where an armed tool may go besides its first corner. */
export interface Ways {
  /** Its next kind. */
  again(): ToolState;
  leave(): ToolState;
}

/** Nothing drawn yet: a press puts the first corner, a number and an arrow stand off from the corner pointed at. */
export function armed(drawing: Drawing, draft: Draft, ways: Ways): ToolState {
  const { editor, spec } = drawing;
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const go = (next: Draft): ToolState => armed(drawing, next, ways);
  const begin = (next: Draft): ToolState => {
    if (!next.meant) return go({ ...next, trouble: EDGE_ON });
    const begun = withCorner(next, next.meant, false);
    return spec.rectangleOnly ? rectangle(drawing, begun) : chaining(drawing, begun);
  };
  const typed = (text: string, by: TypedBy, compass: Compass): Typed => {
    const { meant } = draft;
    if (by === 'enter' || by === 'tab')
      return { ok: false, trouble: 'End the number with an arrow: so far from the corner pointed at.' };
    if (!meant || meant.order === null || meant.order > 5)
      return { ok: false, trouble: 'Point at a corner first, then type how far off and an arrow.' };
    const state = offset(drawing, draft, { base: meant, legs: [], begin, back: () => go(draft) });
    return state.typed?.('length', text, by, compass) ?? { ok: false, trouble: EDGE_ON };
  };
  return {
    name: `${spec.tool} armed`,
    strip: stripOf(drawing, draft),
    ghost: chainSketch(draft, groundHeight(plan.ground), units, false, null),
    cursor: 'crosshair',
    hover: (at) => go(pointedTo(editor, draft, at, false)),
    takes: () => true,
    drag: (from, to) => {
      const begun = begin(pointedTo(editor, draft, from, false));
      if (begun.name === `${spec.tool} armed`) return begun;
      const pressed = pointedTo(editor, draft, from, false).meant;
      const next = pressed && spec.rectangle ? rectangle(drawing, withCorner(draft, pressed, false)) : begun;
      return next.drag?.(from, to) ?? next;
    },
    click: (at) => begin(draft.keyed && isStill(draft, at) ? draft : pointedTo(editor, draft, at, false)),
    enter: () => (draft.keyed ? begin(draft) : go({ ...draft, trouble: 'Pick the first corner.' })),
    escape: ways.leave,
    again: ways.again,
    choose: (_, key) => {
      const isThis = drawing.kind.key === key;
      return isThis ? go(draft) : chosenKind(ways, key, spec.kinds.length);
    },
    typed: (_, text, by, compass) => typed(text, by, compass),
  };
}

/** The kind that was chosen, by taking the next until it is in hand. */
function chosenKind(ways: Ways, key: string, count: number): ToolState {
  let state = ways.again();
  for (let turn = 1; turn < count && state.strip?.choices?.[0]?.chosen !== key; turn += 1)
    state = state.again?.() ?? state;
  return state;
}

function stripOf({ spec, kind }: Drawing, { meant, trouble }: Draft): Strip {
  const first = spec.rectangleOnly
    ? 'Pick a corner, or drag from corner to corner.'
    : 'Pick the first corner.';
  const choices =
    spec.kinds.length > 1
      ? [
          {
            key: 'kind',
            label: 'Draw',
            options: spec.kinds.map(({ key, label }) => ({ key, label })),
            chosen: kind.key,
          },
        ]
      : [];
  return {
    text: trouble ?? meant?.name ?? first,
    fields: [{ key: 'length', label: 'Away from it', value: 0, measure: 'length' }],
    choices,
    trouble: trouble !== null,
  };
}
