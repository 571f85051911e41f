import { groundHeight } from '../../../model/ground.ts';
import type { Vec3 } from '../../../base/vector.ts';
import type { ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { pixelsOff } from '../snapping/candidate.ts';
import type { Snapped } from '../snapping/snapAt.ts';
import { typedLength } from '../typing/typedNumber.ts';
import { axesAlong, fourOf, walked } from './axes.ts';
import { isStill, pointedTo, type Draft } from './draft.ts';
import type { Drawing } from './drawSpec.ts';
import { dimension } from './sketch.ts';

interface Off {
  /** What it stands off from. */
  readonly base: Snapped;
  /** Legs from there, each by its bearing (°) and length (m). */
  readonly legs: readonly { readonly heading: number; readonly metres: number }[];
  begin(draft: Draft): ToolState;
  back(): ToolState;
}

/** A press so near to the place that stands off means it, px. */
const ON_IT = 4;

/** The first corner stands off from a corner that is there, by legs typed with arrows; Space or a press on it begins. */
export function offset(drawing: Drawing, draft: Draft, off: Off): ToolState {
  const { editor, spec } = drawing;
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const level = groundHeight(plan.ground);
  const { base, legs } = off;
  const axes = base.edge ? axesAlong(base.edge.heading, base.edge.of) : draft.axes;
  const points = legs.reduce(
    (way, { heading, metres }) => [...way, walked(way.at(-1) ?? base.point, heading, metres)],
    [base.point],
  );
  const end = points.at(-1) ?? base.point;
  const lift = (z: number): Vec3[] => points.map(([x, y]) => [x, y, z]);
  const here = (at: Pointed): boolean => isStill(draft, at) || pixelsOff(at, end, level) <= ON_IT;
  const begin = (): ToolState => off.begin({ ...draft, meant: { ...base, point: end, key: null } });
  const state: ToolState = {
    name: `${spec.tool} offset`,
    strip: {
      text: `Off ${base.name ?? 'the corner'}. Space puts the first corner there.`,
      fields: [{ key: 'length', label: 'And so far', value: 0, measure: 'length' }],
      trouble: false,
    },
    ghost: {
      kind: 'sketch',
      lines: [{ points: lift(level), closed: false, style: 'guide' }],
      marks: [...base.marks, { at: [end[0], end[1], level], sign: 'cursor' }],
      plates: points.slice(1).map((to, index) => dimension(points[index] ?? to, to, level, units)),
    },
    cursor: 'crosshair',
    hover: () => state,
    takes: () => true,
    drag: () => state,
    release: begin,
    click: (at) => (here(at) ? begin() : off.begin(pointedTo(editor, draft, at, false))),
    enter: begin,
    escape: off.back,
    back: () => (legs.length > 1 ? offset(drawing, draft, { ...off, legs: legs.slice(0, -1) }) : off.back()),
    typed: (_, text, by, compass) => {
      if (by === 'enter' || by === 'tab') return { ok: false, trouble: 'End the number with an arrow.' };
      const length = typedLength(text, units);
      if (!length.ok) return length;
      const leg = { heading: compass(by, fourOf(axes)), metres: length.value };
      return { ok: true, state: offset(drawing, draft, { ...off, legs: [...legs, leg] }) };
    },
  };
  return state;
}
