import { bearing, turn } from '../../../base/angle.ts';
import { LEAST_SIZE } from '../../../base/tolerance.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Compass, Strip, ToolState, Typed, TypedBy } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { EDGE_ON } from '../snapping/workingPoint.ts';
import { typedAngle } from '../typing/typedNumber.ts';
import { fourOf, headingOf, walked } from './axes.ts';
import { closed, ended } from './closing.ts';
import { crossingOf, type Crossing } from './crossingWords.ts';
import { bare, isStill, pointedTo, withCorner, type Draft } from './draft.ts';
import type { Drawing } from './drawSpec.ts';
import { meansRectangle, typedEdge, typedRectangle } from './headed.ts';
import { rectangleFrom } from './rectangleRing.ts';
import { chainSketch, edgeWords } from './sketch.ts';

/** One corner or more stands; each press puts the next, each typed number an edge. */
export function chaining(drawing: Drawing, draft: Draft): ToolState {
  const { editor, spec } = drawing;
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const { corners, meant } = draft;
  const closes = corners.length >= 3;
  // A press on the first corner is answered, also where it cannot close yet.
  const closable = corners.length >= 2;
  const go = (next: Draft): ToolState => chaining(drawing, next);
  const refused = (trouble: string): ToolState => go({ ...draft, trouble });
  const crossing = meant && meant.key !== 'close' ? crossingAt(draft, meant.point) : null;

  /** The corner put there; or why not, in words. */
  const placed = (point: Vec2, from: Draft, isTyped = false): Draft | string => {
    if (isRepeat(from, point)) return from;
    const wrong = crossingAt(from, point);
    return wrong ? wrong.text : withCorner(from, { point, edge: null }, isTyped);
  };
  const place = (next: Draft): ToolState => {
    if (!next.meant) return go({ ...next, trouble: EDGE_ON });
    if (next.meant.key === 'close') return close(next);
    const result = placed(next.meant.point, next);
    return typeof result === 'string' ? go({ ...next, trouble: result }) : go(result);
  };
  const close = (from: Draft): ToolState => {
    const end = closed(from);
    return end.ok ? drawing.finish(end.drawn, refused) : go({ ...from, trouble: end.trouble });
  };
  const end = (from: Draft): ToolState => {
    if (spec.ends === 'ring') return close(from);
    const stop = ended(from);
    return stop.ok ? drawing.finish(stop.drawn, refused) : go({ ...from, trouble: stop.trouble });
  };
  const meaning = (at: Pointed): Draft =>
    draft.keyed && isStill(draft, at) ? draft : pointedTo(editor, draft, at, closable);
  const run = (heading: number, length: number): Typed => {
    const last = corners.at(-1);
    if (!last) return no('Pick the first corner.');
    const result = placed(walked(last, heading, length), draft, true);
    return typeof result === 'string' ? no(result) : yes(go(result));
  };
  const typedLength = (text: string, by: TypedBy, compass: Compass): Typed => {
    if (spec.rectangle && meansRectangle(text)) return rectangle(text, by, compass);
    const edge = typedEdge(text, units);
    if (!edge.ok) return edge;
    if (by === 'tab' && edge.turn === null) return yes(go({ ...draft, length: edge.length, trouble: null }));
    if (by !== 'enter' && by !== 'tab')
      return run(bearing(compass(by, fourOf(draft.axes)) + (edge.turn ?? 0)), edge.length);
    if (edge.turn !== null) return run(bearing(lastHeading(draft) + edge.turn), edge.length);
    const heading = pointedHeading(draft);
    return heading === null
      ? no('Which way? Point there and press Enter, or end the number with an arrow.')
      : run(heading, edge.length);
  };
  const rectangle = (text: string, by: TypedBy, compass: Compass): Typed => {
    const [first] = corners;
    if (!first || corners.length > 1) return no('A rectangle begins from one corner.');
    if (by !== 'enter' && by !== 'tab') return no('End a rectangle with Enter.');
    const sides = typedRectangle(text, units);
    if (!sides.ok) return sides;
    const ring = rectangleFrom(draft, sides.across, sides.up, compass);
    return yes(drawing.finish({ corners: ring, closed: true, typed: true }, refused));
  };
  const typedTurn = (text: string): Typed => {
    const angle = typedAngle(text);
    if (!angle.ok) return angle;
    const length = draft.length ?? pointedLength(draft);
    return length < LEAST_SIZE
      ? no('Write a length first, then Tab, then the turn.')
      : run(bearing(lastHeading(draft) + angle.value), length);
  };

  return {
    name: `${spec.tool} chaining`,
    chain: { tool: spec.tool, kind: drawing.kind.key, corners, axes: draft.axes, typed: draft.typed },
    strip: stripOf(drawing, draft, crossing),
    ghost: chainSketch(draft, groundHeight(plan.ground), units, closes, crossing),
    cursor: 'crosshair',
    hover: (at) => go(pointedTo(editor, draft, at, closable)),
    takes: () => true,
    drag: (_, to) => go(pointedTo(editor, draft, to, closable)),
    release: () => place(draft),
    click: (at) => place(meaning(at)),
    double: (at) => {
      const next = meaning(at);
      if (!next.meant) return go({ ...next, trouble: EDGE_ON });
      if (next.meant.key === 'close') return close(next);
      const result = placed(next.meant.point, next);
      return typeof result === 'string' ? go({ ...next, trouble: result }) : end(result);
    },
    enter: () => end(draft),
    escape: drawing.armed,
    back: () => {
      const rest = corners.slice(0, -1);
      return rest.length === 0
        ? drawing.armed()
        : go({ ...draft, corners: rest, length: null, trouble: null });
    },
    typed: (key, text, by, compass) => (key === 'turn' ? typedTurn(text) : typedLength(text, by, compass)),
    type: (key, value) => {
      const last = corners.at(-1);
      if (!last || (key === 'length' && value < LEAST_SIZE)) return refused('Length must be 0.01 m or more.');
      const heading =
        key === 'turn' ? bearing(lastHeading(draft) + value) : (pointedHeading(draft) ?? lastHeading(draft));
      const length = key === 'turn' ? (draft.length ?? pointedLength(draft)) : value;
      return go({ ...draft, meant: bare(walked(last, heading, length)), keyed: true, moved: true });
    },
  };
}

const yes = (state: ToolState): Typed => ({ ok: true, state });
const no = (trouble: string): Typed => ({ ok: false, trouble });

/** Whether a point is the last corner again, to 10 mm. */
function isRepeat({ corners }: Draft, point: Vec2): boolean {
  const last = corners.at(-1);
  return last !== undefined && Math.hypot(point[0] - last[0], point[1] - last[1]) < LEAST_SIZE;
}

const crossingAt = (draft: Draft, point: Vec2): Crossing | null =>
  isRepeat(draft, point) ? null : crossingOf([...draft.corners, point], false);

/** The way that the last edge runs; before there is one, the working axis nearest to north, °. */
function lastHeading({ corners, axes }: Draft): number {
  const last = corners.at(-1);
  const before = corners.at(-2);
  return last && before ? headingOf(before, last) : bearing(axes.up);
}

const pointedLength = ({ corners, meant }: Draft): number => {
  const last = corners.at(-1);
  return last && meant ? Math.hypot(meant.point[0] - last[0], meant.point[1] - last[1]) : 0;
};

/** The way that the pointer is from the last corner, °; null where it has not moved away. */
function pointedHeading(draft: Draft): number | null {
  const last = draft.corners.at(-1);
  return last && draft.meant && draft.moved && pointedLength(draft) >= LEAST_SIZE
    ? headingOf(last, draft.meant.point)
    : null;
}

function stripOf({ editor, spec }: Drawing, draft: Draft, crossing: Crossing | null): Strip {
  const { units } = editor.store.getState().plan.settings;
  const { corners, trouble, meant } = draft;
  const say = edgeWords(draft, units) || hint(spec.ends, corners.length);
  const heading = pointedHeading(draft);
  return {
    text:
      trouble ?? crossing?.text ?? (meant?.key === 'close' && corners.length >= 3 ? 'Press to close.' : say),
    fields: [
      { key: 'length', label: 'Length', value: draft.length ?? pointedLength(draft), measure: 'length' },
      {
        key: 'turn',
        label: 'Turn',
        value: heading === null ? 0 : Math.round(turn(lastHeading(draft), heading) * 10) / 10,
        measure: 'angle',
      },
    ],
    trouble: trouble !== null || crossing !== null,
  };
}

function hint(ends: 'ring' | 'line', count: number): string {
  if (count < (ends === 'ring' ? 3 : 2))
    return 'Type a length, then an arrow for its direction. Or pick the next corner.';
  return ends === 'ring'
    ? 'Pick the first corner, or press Enter, to close.'
    : 'Press Enter to end it, or pick the first corner to close it.';
}
