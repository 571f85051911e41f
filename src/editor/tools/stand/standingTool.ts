import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import type { Editor } from '../../editor.ts';
import { words, type Nudge, type Sketch, type ToolState } from '../chart.ts';
import { placeWords } from '../placeWords.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';

const START = 'Pick where somebody shall stand. Arrows move the mark, Enter takes it.';
const STEP = 0.1;
const LARGE = 1;

/** Picks the place at which somebody stands; a press takes it, Esc leaves the former. */
export const standingTool = (editor: Editor): ToolState => state(editor, null);

function state(editor: Editor, meant: Vec2 | null): ToolState {
  const { plan, standing } = editor.store.getState();
  const take = (at: Vec2): ToolState => {
    editor.stand({ at });
    return resting(editor);
  };
  const moved = (at: Pointed): ToolState => state(editor, placeOf(at) ?? meant);
  return {
    name: 'stand picking',
    strip: words(meant === null ? START : placeWords(meant, plan.settings.units)),
    ghost: meant === null ? null : markAt(meant, groundHeight(plan.ground)),
    cursor: 'crosshair',
    hover: moved,
    click: (at) => {
      const place = placeOf(at);
      return place === null ? state(editor, meant) : take(place);
    },
    nudge: (way, large) => state(editor, nudged(meant ?? standing.at ?? [0, 0], way, large)),
    enter: () => (meant === null ? resting(editor) : take(meant)),
    escape: () => resting(editor),
  };
}

const cm = (value: number): number => Math.round(value * 100) / 100;

const placeOf = ({ struck }: Pointed): Vec2 | null =>
  struck === null ? null : [cm(struck.point[0]), cm(struck.point[1])];

const markAt = ([x, y]: Vec2, z: number): Sketch => ({
  kind: 'sketch',
  lines: [],
  marks: [{ at: [x, y, z], sign: 'cursor' }],
  plates: [],
});

function nudged([x, y]: Vec2, way: Nudge, large: boolean): Vec2 {
  const size = large ? LARGE : STEP;
  const east = way === 'right' ? size : way === 'left' ? -size : 0;
  const north = way === 'up' ? size : way === 'down' ? -size : 0;
  return [cm(x + east), cm(y + north)];
}
