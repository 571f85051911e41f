import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { copyThings } from '../../../plan/commands/copyThings.ts';
import type { Editor, Selected } from '../../editor.ts';
import { middleOf } from '../../grips/shapeOf.ts';
import { bodySnap } from '../../shaping/bodySnap.ts';
import { thingsOf, wordsFor } from '../../shaping/selection.ts';
import type { Sketch, Strip, ToolState, Typed } from '../chart.ts';
import { ahead, fourOf, headingOf } from '../drawing/axes.ts';
import { placeWords } from '../placeWords.ts';
import type { Pointed } from '../pointed.ts';
import { groundPoint } from '../snapping/workingPoint.ts';
import { typedField } from '../typing/typedNumber.ts';
import { bodyOf, movedBody } from './bodyOf.ts';
import { alongAxis, ownAxes } from './moving.ts';

/** The most copies that one step makes. */
const MOST = 200;

interface InHand {
  /** Where the first copy goes, from what is copied. */
  readonly by: Vec2;
  readonly times: number;
  readonly snapped: string | null;
}

/** A copy of the selection is in hand: it follows the pointer, or a number and an arrow. */
export function copying(
  editor: Editor,
  selection: readonly Selected[],
  rest: () => ToolState,
  { by, times, snapped }: InHand = { by: [0, 0], times: 1, snapped: null },
): ToolState {
  const { plan, snapping } = editor.store.getState();
  const body = bodyOf(plan, selection);
  const middle = middleOf(body.corners);
  const axes = ownAxes(body.edges);
  const level = groundHeight(plan.ground);
  const go = (next: Partial<InHand>): ToolState =>
    copying(editor, selection, rest, { by, times, snapped, ...next });

  const follow = (at: Pointed): ToolState => {
    const point = groundPoint(plan, at);
    if (!point) return here;
    const run: Vec2 = [point[0] - middle[0], point[1] - middle[1]];
    if (at.shift) return go({ by: alongAxis(run, axes), snapped: null });
    const { by: next, name } = bodySnap(plan, body, run, at, at.free || !snapping, level);
    return go({ by: next, snapped: name });
  };
  const place = (): ToolState => {
    if (Math.hypot(...by) < 0.01) return { ...here, strip: stripOf('Point to where the copy goes.', true) };
    const copied = copyThings(plan, thingsOf(plan, selection), by, times);
    if (!copied.ok) return { ...here, strip: stripOf('The copy does not fit here.', true) };
    editor.run(`Copy ${wordsFor(plan, selection)}`, () => copied.value.plan);
    // A plan that only reads takes no copy; the editor has said so.
    if (editor.store.getState().plan === copied.value.plan) editor.selectAll(copied.value.things);
    return rest();
  };
  const stripOf = (text: string, trouble = false): Strip => ({
    text,
    fields: [
      { key: 'distance', label: 'Distance', value: Math.hypot(...by), measure: 'length' },
      { key: 'copies', label: 'Copies', value: times, measure: 'count' },
    ],
    trouble,
  });
  const typed: ToolState['typed'] = (key, text, how, compass): Typed => {
    const read = typedField(text, key === 'copies' ? 'count' : 'length', plan.settings.units);
    if (!read.ok) return read;
    if (key === 'copies') {
      if (read.value < 1 || read.value > MOST) return { ok: false, trouble: `Make it 1 to ${MOST} copies.` };
      const next = go({ times: read.value });
      return { ok: true, state: how === 'enter' ? (next.enter?.() ?? next) : next };
    }
    const isArrow = how !== 'enter' && how !== 'tab';
    if (!isArrow && Math.hypot(...by) < 0.01)
      return { ok: false, trouble: 'End it with an arrow, for its direction.' };
    const heading = isArrow ? compass(how, fourOf(axes)) : headingOf([0, 0], by);
    const [east, north] = ahead(heading);
    const next = go({ by: [nano(east * read.value), nano(north * read.value)], snapped: null });
    return { ok: true, state: how === 'enter' ? (next.enter?.() ?? next) : next };
  };
  const here: ToolState = {
    name: 'rest copying',
    strip: stripOf([placeWords(by, plan.settings.units), snapped].filter(Boolean).join(' · ')),
    ghost: sketchOf(),
    cursor: 'crosshair',
    hover: follow,
    takes: () => true,
    drag: (_, to) => follow(to),
    release: () => place(),
    click: (at) => {
      const next = follow(at);
      return next.enter?.() ?? next;
    },
    enter: place,
    escape: rest,
    takesDigits: true,
    type: (key, value) =>
      key === 'copies' ? go({ times: Math.min(MOST, Math.max(1, Math.round(value))) }) : here,
    typed,
  };

  function sketchOf(): Sketch {
    const lines = Array.from({ length: Math.min(times, MOST) }, (_, k): Vec2 => [
      by[0] * (k + 1),
      by[1] * (k + 1),
    ])
      .flatMap((run) => movedBody(body, run).edges)
      .map((points) => ({
        points: points.map(([x, y]): Vec3 => [x, y, level]),
        closed: false,
        style: 'live' as const,
      }));
    return { kind: 'sketch', lines, marks: [], plates: [] };
  }
  return here;
}

const nano = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
