import type { Vec2 } from '../../base/vector.ts';
import type { Editor } from '../editor.ts';
import { lookTo, placeLookedTo } from '../settings/looks.ts';
import { words, type Nudge, type ToolState } from './chart.ts';
import { placeWords } from './placeWords.ts';
import type { Pointed } from './pointed.ts';
import { resting } from './rest/resting.ts';

const START = 'Point at the place that faces look to. Arrows move it, Enter takes it.';
const STEP = 0.1;
const LARGE = 1;

/** The place that faces look to is pointed at: it follows, and a press leaves it there. Esc puts the former back. */
export function pointingPlace(editor: Editor): ToolState {
  const { target: former, plan } = editor.store.getState();
  const { units } = plan.settings;
  const state = (text: string): ToolState => ({
    name: 'place pointing',
    strip: words(text),
    ghost: null,
    cursor: 'crosshair',
    hover: (at) => follow(at, text),
    click: (at) => {
      follow(at, text);
      return resting(editor);
    },
    nudge: (way, large) => went(moved(placeLookedTo(editor), way, large)),
    enter: () => resting(editor),
    escape: () => {
      editor.ask(former);
      return resting(editor);
    },
  });
  const went = (at: Vec2): ToolState => {
    lookTo(editor, { kind: 'place', at });
    return state(placeWords(at, units));
  };
  const follow = ({ struck }: Pointed, text: string): ToolState =>
    struck ? went([cm(struck.point[0]), cm(struck.point[1])]) : state(text);
  return state(START);
}

const cm = (value: number): number => Math.round(value * 100) / 100;

function moved([x, y]: Vec2, way: Nudge, large: boolean): Vec2 {
  const size = large ? LARGE : STEP;
  const east = way === 'right' ? size : way === 'left' ? -size : 0;
  const north = way === 'up' ? size : way === 'down' ? -size : 0;
  return [cm(x + east), cm(y + north)];
}
