import type { Nudge } from '../../editor/tools/chart.ts';
import type { Model } from '../Model.ts';
import { arrowOf, beginsNumber } from '../typing/Typing.ts';
import { compassOf } from './compass.ts';
import { askForFace, leaveFace } from './faceOf.ts';
import { actOfKey } from './actKeys.ts';
import { takesCursor } from './KeyCursor.ts';
import { slideByPixels, turnBy, zoomBy } from './moves.ts';
import type { Pointers } from './Pointers.ts';
import { squareOn } from './squareOn.ts';
import { lookAbout, walk } from './stays.ts';
import { takeTool, toolOfKey } from './toolKeys.ts';
import { lookThrough, stand } from './ways.ts';

const SLIDE = 64;
const TURN = 15;
const RISE = 10;
const ZOOM = 1.25;
/** m. */
const PACE = 0.5;

/** Keys while the Model has the focus. Returns whether the key was of use. */
export function keyPressed(event: KeyboardEvent, model: Model, pointers: Pointers): boolean {
  const { key, shiftKey } = event;
  if (event.isComposing || event.altKey || event.getModifierState('AltGraph')) return false;
  // In a chain the last corner goes, not the last step of history.
  if (event.ctrlKey || event.metaKey)
    return key.toLowerCase() === 'z' && !shiftKey && (pointers.escape() || model.toolbox.back());
  const arrow = arrowOf(key);
  if (arrow) {
    arrowPressed(model, arrow, shiftKey);
    return true;
  }
  if (key === 'F10' ? shiftKey : key === 'ContextMenu') return menuAsked(model);
  return (
    (beginsNumber(key) && model.typing.begin(key === '−' ? '-' : key)) ||
    handled(model, pointers, event) ||
    viewed(model, key, shiftKey) ||
    lettered(model, key, shiftKey)
  );
}

function arrowPressed(model: Model, way: Nudge, large: boolean): void {
  const { view, toolbox, editor, cursor } = model;
  const { tool, selected } = editor.store.getState();
  if (view.stay?.kind === 'stand') stroll(model, way);
  else if (tool !== 'rest' && takesCursor(toolbox.store.getState().state)) cursor.move(way, large);
  else if (tool === 'rest' && selected === null) slide(model, way);
  else if (!toolbox.nudge(way, large, compassOf(view))) slide(model, way);
}

/** What goes to the tool in hand. */
function handled(model: Model, pointers: Pointers, event: KeyboardEvent): boolean {
  const { toolbox, here } = model;
  switch (event.key) {
    case 'Escape':
      return pointers.escape() || here.release() || leaveFace(model) || backOut(model) || toolbox.escape();
    case 'Enter':
      return toolbox.enter();
    case ' ':
      toolbox.click(model.pointedNow(event));
      return true;
    case 'Backspace':
      return toolbox.back();
    case 'Tab':
      return toolbox.tab(event.shiftKey);
    case ';':
      return toolbox.swap();
    // Else the browser looks through the page for it.
    case "'":
    case '/':
      return true;
    default:
      return false;
  }
}

/** What changes the view. */
function viewed(model: Model, key: string, shift: boolean): boolean {
  const { view, editor } = model;
  const about = model.pivotFor(null);
  const resting = editor.store.getState().tool === 'rest';
  switch (key) {
    case 'PageUp':
    case 'PageDown': {
      const up = key === 'PageUp';
      if (shift) turnBy(view, about, 0, up ? RISE : -RISE);
      else zoomBy(view, model.cursor.at ?? about, up ? ZOOM : 1 / ZOOM, true);
      return true;
    }
    case ',':
    case '.':
      // With a tool in hand a point begins a number.
      if (resting) turnBy(view, about, key === ',' ? -TURN : TURN, 0);
      return true;
    case 'Home':
      view.home();
      return true;
    default:
      return false;
  }
}

function lettered(model: Model, key: string, shift: boolean): boolean {
  const { view, editor } = model;
  const letter = key.length === 1 ? key.toLowerCase() : '';
  const act = actOfKey(key, shift);
  if (act) return model.toolbox.act(act, model.pointedOver());
  if (shift) {
    if (letter === 'e') askForFace(model);
    return letter === 'e';
  }
  switch (letter) {
    case 'z':
      model.fit(editor.store.getState().selected);
      return true;
    case 'p':
      view.togglePlan(model.pivotFor(null));
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
    case 'n': {
      const { snapping } = editor.store.getState();
      editor.snap(!snapping);
      editor.say(snapping ? 'Snapping is off.' : 'Snapping is on.');
      return true;
    }
    default: {
      const tool = toolOfKey(letter);
      if (tool) takeTool(model, tool);
      return tool !== undefined;
    }
  }
}

function menuAsked(model: Model): boolean {
  const at = model.pointedNow();
  const [x, y] = at.screen.spot;
  model.hands.openMenu({ x, y }, at);
  return true;
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
