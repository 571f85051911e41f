import type { Nudge } from '../../editor/tools/chart.ts';
import type { Model } from '../Model.ts';
import type { Pointers } from './Pointers.ts';
import { slideByPixels, turnBy, zoomBy } from './moves.ts';
import { askForFace, leaveFace } from './faceOf.ts';
import { compassOf } from './compass.ts';
import { squareOn } from './squareOn.ts';
import { lookAbout, walk } from './stays.ts';
import { lookThrough, stand } from './ways.ts';

const SLIDE = 64;
const TURN = 15;
const RISE = 10;
const ZOOM = 1.25;
/** m. */
const PACE = 0.5;

const ARROWS: Readonly<Record<string, Nudge>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** Keys while the Model has the focus. Returns whether the key was of use. */
export function keyPressed(event: KeyboardEvent, model: Model, pointers: Pointers): boolean {
  const { key, shiftKey } = event;
  if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return false;
  const { view, toolbox, editor } = model;
  const about = model.pivotFor(null);
  const arrow = ARROWS[key];
  if (arrow && view.stay?.kind === 'stand') {
    stroll(model, arrow);
    return true;
  }
  if (arrow) {
    const { selected, tool } = editor.store.getState();
    const used = toolbox.nudge(arrow, shiftKey, compassOf(view));
    if (!used || (tool === 'rest' && selected?.kind !== 'camera' && selected?.kind !== 'lamp'))
      slide(model, arrow);
    return true;
  }
  switch (key.length === 1 ? key.toLowerCase() : key) {
    case 'Escape':
      return (
        pointers.escape() || model.here.release() || leaveFace(model) || backOut(model) || toolbox.escape()
      );
    case 'Enter':
      return toolbox.enter();
    case 'PageUp':
      if (shiftKey) turnBy(view, about, 0, RISE);
      else zoomBy(view, about, ZOOM, true);
      return true;
    case 'PageDown':
      if (shiftKey) turnBy(view, about, 0, -RISE);
      else zoomBy(view, about, 1 / ZOOM, true);
      return true;
    case ',':
      turnBy(view, about, -TURN, 0);
      return true;
    case '.':
      turnBy(view, about, TURN, 0);
      return true;
    case 'Home':
      view.home();
      return true;
    case 'z':
      model.fit(editor.store.getState().selected);
      return true;
    case 'p':
      view.togglePlan(about);
      return true;
    case 'e':
      return squareOn(model);
    case 'q':
      model.here.pin();
      return true;
    case 's':
      return stand(model);
    case 'i':
      return lookThrough(model);
    case 'c':
      if (editor.store.getState().tool === 'camera') toolbox.again();
      else editor.hold('camera');
      return true;
    case 'w':
      askForFace(model);
      return true;
    case 'u':
      editor.hold('lamp');
      return true;
    default:
      return false;
  }
}

/** One step back: out of a stay before the selection goes, to the view before once nothing else is left. */
function backOut({ view, editor }: Model): boolean {
  const { tool, selected } = editor.store.getState();
  if (tool !== 'rest' || (!view.stay && selected !== null)) return false;
  return view.leave();
}

function stroll({ view }: Model, way: Nudge): void {
  if (way === 'left' || way === 'right') view.ease(lookAbout(view.goal, way === 'left' ? -TURN : TURN, 0));
  else view.ease(walk(view.goal, way === 'up' ? PACE : -PACE));
}

function slide({ view }: Model, way: Nudge): void {
  const x = way === 'right' ? SLIDE : way === 'left' ? -SLIDE : 0;
  const y = way === 'down' ? SLIDE : way === 'up' ? -SLIDE : 0;
  slideByPixels(view, x, y, true);
}
