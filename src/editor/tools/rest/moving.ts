import { dotOf } from '../../../model/segment.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { moveThings } from '../../../plan/commands/moveThings.ts';
import type { Editor, Selected } from '../../editor.ts';
import { attempt } from '../../shaping/attempt.ts';
import { bodySnap } from '../../shaping/bodySnap.ts';
import { gapOf } from '../../shaping/gap.ts';
import { thingsOf, wordsFor } from '../../shaping/selection.ts';
import type { Sketch, Strip, ToolState } from '../chart.ts';
import { ahead, axesAlong, EAST_NORTH, fourOf, headingOf, type Axes } from '../drawing/axes.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { placeWords } from '../placeWords.ts';
import type { Pointed } from '../pointed.ts';
import { EDGE_ON, pointAtLevel } from '../snapping/workingPoint.ts';
import { bodyOf, movedBody, plainWithout } from './bodyOf.ts';

/** The selected body is dragged over the ground. All of it is one step. */
export function moving(
  editor: Editor,
  selection: readonly Selected[],
  from: Pointed,
  rest: () => ToolState,
): ToolState {
  const { plan: atPress, snapping } = editor.store.getState();
  const things = thingsOf(atPress, selection);
  const gesture = editor.begin(`Move ${wordsFor(atPress, selection)}`);
  const others = plainWithout(atPress, selection);
  const body = bodyOf(atPress, selection);
  const axes = ownAxes(body.edges);
  const level = groundHeight(atPress.ground);
  const unit = atPress.settings.units;
  // The spot that was seized stays under the pointer.
  const height = from.struck?.point[2] ?? level;
  const start = pointAtLevel(from, height);

  const state = (strip: Strip, ghost: Sketch | null): ToolState => ({
    name: 'rest moving',
    strip,
    ghost,
    cursor: 'grabbing',
    drag: (_, to) => {
      const end = pointAtLevel(to, height);
      if (!start || !end) return state({ text: EDGE_ON, fields: [], trouble: true }, ghost);
      const run: Vec2 = [end[0] - start[0], end[1] - start[1]];
      const free = to.free || !snapping;
      const {
        by: next,
        name,
        marks,
      } = to.shift
        ? { by: alongAxis(run, axes), name: null, marks: [] }
        : bodySnap(others, body, run, to, free, level);
      const tried = attempt(atPress, (plan) => moveThings(plan, things, next));
      if (!tried.ok) return state({ text: tried.words, fields: [], trouble: true }, ghost);
      gesture.change(() => tried.plan);
      const gap = gapOf(others, movedBody(body, next));
      const words = [
        placeWords(next, unit),
        gap && gap.gap > 0 ? `${lengthWords(gap.gap, unit)} from ${gap.to}` : null,
        name,
      ];
      const text = words.filter(Boolean).join(' · ');
      const lines = body.edges.map((points) => ({
        points: points.map(lifted),
        closed: false,
        style: 'was' as const,
      }));
      return state(
        { text, fields: fieldsOf(next), trouble: false },
        { kind: 'sketch', lines, marks, plates: [] },
      );
    },
    release: () => {
      gesture.commit();
      return rest();
    },
    escape: () => {
      gesture.cancel();
      return rest();
    },
  });
  const lifted = ([x, y]: Vec2): [number, number, number] => [x, y, level];
  return state({ text: placeWords([0, 0], unit), fields: fieldsOf([0, 0]), trouble: false }, null);
}

const fieldsOf = ([dx, dy]: Vec2): Strip['fields'] => [
  { key: 'dx', label: 'East', value: dx, measure: 'length' },
  { key: 'dy', label: 'North', value: dy, measure: 'length' },
];

/** The working axes of a body: along its longest edge. */
export function ownAxes(edges: readonly (readonly [Vec2, Vec2])[]): Axes {
  const length = ([a, b]: readonly [Vec2, Vec2]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [longest] = edges.toSorted((a, b) => length(b) - length(a));
  return longest && length(longest) > 0 ? axesAlong(headingOf(...longest), '') : EAST_NORTH;
}

/** A movement kept to the working axis that it follows most, in centimetres. */
export function alongAxis(run: Vec2, axes: Axes): Vec2 {
  const [best] = fourOf(axes)
    .map((heading) => ({ way: ahead(heading), size: dotOf(run, ahead(heading)) }))
    .toSorted((a, b) => b.size - a.size);
  if (!best) return [0, 0];
  const size = Math.round(best.size * 100) / 100;
  return [nano(best.way[0] * size), nano(best.way[1] * size)];
}

const nano = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
