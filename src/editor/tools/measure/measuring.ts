import { distance, type Vec2, type Vec3 } from '../../../base/vector.ts';
import { fourOf, EAST_NORTH, walked } from '../drawing/axes.ts';
import type { Editor } from '../../editor.ts';
import type { Strip, StripChoice, ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { typedLength } from '../typing/typedNumber.ts';
import { measurePoint, type MeasurePoint } from './measurePoint.ts';
import { measureSketch } from './measureSketch.ts';
import { measureWords } from './measureWords.ts';

const START = 'Pick where to measure from.';
/** A press this near to the first point closes a ring, px. */
const CLOSES = { mouse: 12, pen: 12, touch: 22 } as const;
/** Nearer points are one, m. */
const SAME = 0.01;

interface Chain {
  readonly points: readonly Vec3[];
  readonly closed: boolean;
  /** Nothing follows the pointer any more until the next press. */
  readonly done: boolean;
}

const NONE: Chain = { points: [], closed: false, done: false };

/** The measure tool: two points make a line, more a path, the first again an area. */
export function measuring(editor: Editor, chain: Chain = NONE, live: MeasurePoint | null = null): ToolState {
  const { plan, measured } = editor.store.getState();
  const { units } = plan.settings;
  const { points, closed, done } = chain;
  const shown = live && !done && !isSame(points.at(-1), live.at) ? [...points, live.at] : points;
  const [a, b] = shown;
  const sight = shown.length === 2 && a && b ? editor.sightLine(a, b) : null;
  const go = (next: Chain, at: MeasurePoint | null = null): ToolState => measuring(editor, next, at);

  const press = (at: Pointed): ToolState => {
    const found = measurePoint(plan, at);
    if (!found) return here;
    if (done) return go({ ...NONE, points: [found.at] });
    if (isSame(points.at(-1), found.at)) return here;
    if (points.length > 2 && isFirst(points[0], at)) return go({ points, closed: true, done: true });
    return go({ ...chain, points: [...points, found.at] });
  };

  const here: ToolState = {
    name: points.length === 0 ? 'measure armed' : 'measure chaining',
    strip: stripOf(),
    ghost:
      shown.length + measured.length > 0 || live
        ? measureSketch(shown, closed, sight, live?.corner && !done ? live.at : null, measured, units)
        : null,
    cursor: 'crosshair',
    hover: (at) => (done ? here : go(chain, measurePoint(plan, at))),
    takes: () => true,
    drag: (from, to) => {
      const start = measurePoint(plan, from);
      const end = measurePoint(plan, to);
      if (!start || !end) return here;
      return dragged(start, end);
    },
    release: () => here,
    click: press,
    double: (at) => {
      const next = press(at);
      return next.enter?.() ?? next;
    },
    enter: () => (points.length > 1 ? go({ ...chain, done: true }) : here),
    escape: () => (points.length > 0 ? measuring(editor) : resting(editor)),
    choose: (key) => {
      if (key === 'wipe') editor.measured([]);
      else if (points.length > 1) editor.measured([...measured, { points, closed }]);
      return measuring(editor);
    },
    typed: (_, text, by, compass) => {
      const last = points.at(-1);
      const read = typedLength(text, units);
      if (!read.ok) return read;
      if (!last || done) return { ok: false, trouble: 'Pick where to measure from first.' };
      const heading =
        by === 'enter' || by === 'tab' ? headingTo(last, live?.at) : compass(by, fourOf(EAST_NORTH));
      if (heading === null) return { ok: false, trouble: 'End it with an arrow, for its direction.' };
      const [x, y] = walked([last[0], last[1]], heading, read.value);
      return { ok: true, state: go({ ...chain, points: [...points, [x, y, last[2]]] }) };
    },
    ...(points.length > 0 && !done
      ? { back: () => go({ ...chain, points: points.slice(0, -1) }, live) }
      : {}),
  };

  /** A drag from one point to another; it measures anew with each move. */
  function dragged(start: MeasurePoint, end: MeasurePoint): ToolState {
    const two: Chain = { points: [start.at, end.at], closed: false, done: true };
    return {
      ...go(isSame(start.at, end.at) ? { ...NONE, points: [start.at] } : two),
      name: 'measure chaining',
    };
  }

  function stripOf(): Strip {
    if (shown.length === 0) return { text: START, fields: [], trouble: false, ...choicesOf(wipe) };
    const last = points.at(-1);
    const length = last && live && !done ? distance(last, live.at) : 0;
    return {
      text: shown.length < 2 ? 'Pick where it ends.' : measureWords(shown, closed, sight, units),
      fields: done ? [] : [{ key: 'length', label: 'Length', value: length, measure: 'length' }],
      trouble: false,
      ...choicesOf(points.length > 1 ? keep : null),
    };
  }

  function choicesOf(choice: StripChoice | null): Pick<Strip, 'choices'> {
    return choice === null || (choice === wipe && measured.length === 0) ? {} : { choices: [choice] };
  }
  return here;
}

const keep: StripChoice = {
  key: 'keep',
  label: 'Measured',
  options: [{ key: 'keep', label: 'Keep' }],
  chosen: '',
};

const wipe: StripChoice = {
  key: 'wipe',
  label: 'Kept',
  options: [{ key: 'wipe', label: 'Wipe what was kept' }],
  chosen: '',
};

const isSame = (a: Vec3 | undefined, b: Vec3): boolean => a !== undefined && distance(a, b) < SAME;

function isFirst(first: Vec3 | undefined, { screen, by }: Pointed): boolean {
  const spot = first && screen.place(first);
  return spot !== undefined && spot !== null && near(spot, screen.spot, CLOSES[by]);
}

const near = (a: Vec2, b: Vec2, reach: number): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= reach;

function headingTo([x, y]: Vec3, to: Vec3 | undefined): number | null {
  if (!to || Math.hypot(to[0] - x, to[1] - y) < SAME) return null;
  return (Math.atan2(to[0] - x, to[1] - y) * 180) / Math.PI;
}
