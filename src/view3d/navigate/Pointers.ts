import type { Vec3 } from '../../base/vector.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { Clicks } from './Clicks.ts';
import { settle, slideFrom, turnByDrag } from './moves.ts';
import { PenRule } from './PenRule.ts';
import { TwoFingers } from './TwoFingers.ts';

/** How far a press moves before it is a drag, px. */
const THRESHOLD = { mouse: 4, pen: 6, touch: 10 } as const;
/** A second finger so soon and so near drops the press; a later one freezes it: ms, px. */
const SECOND = { time: 150, reach: 10 } as const;
/** A finger that rests so long opens the menu; with a tool in hand it gets the loupe, ms. */
const LONG = { rest: 500, tool: 300 } as const;
const LEFT = 0;
const MIDDLE = 1;
const RIGHT = 2;

interface Press {
  readonly id: number;
  readonly button: number;
  readonly by: keyof typeof THRESHOLD;
  readonly time: number;
  readonly spot: Spot;
  readonly at: Pointed;
  /** The point that stays put while the view turns or slides. */
  readonly about: Vec3;
  last: Spot;
  /** `loupe` places where it is let go; `spent` has had its effect. */
  way: 'undecided' | 'tool' | 'turn' | 'slide' | 'loupe' | 'spent';
  /** Two fingers move the view meanwhile. */
  frozen: boolean;
}

/** Mouse, pen and fingers on the Model: to the tool in hand what is the tool's, to the view the rest. */
export class Pointers {
  readonly pen = new PenRule();
  private press: Press | null = null;
  private timer = 0;
  private readonly clicks: Clicks;
  private readonly fingers: TwoFingers;
  private readonly element: HTMLElement;
  private readonly model: Model;
  private readonly listening = new AbortController();

  constructor(element: HTMLElement, model: Model) {
    this.element = element;
    this.model = model;
    this.fingers = new TwoFingers(model);
    this.clicks = new Clicks(model);
    const { signal } = this.listening;
    const on = <K extends keyof HTMLElementEventMap>(
      name: K,
      act: (event: HTMLElementEventMap[K]) => void,
    ): void => element.addEventListener(name, act, { signal });
    on('pointerdown', this.down);
    on('pointermove', this.move);
    on('pointerup', this.up);
    on('pointercancel', this.cancel);
    on('lostpointercapture', (event) => this.lost(event.pointerId));
    on('pointerleave', this.leave);
    on('touchend', this.lifted);
    on('contextmenu', (event) => event.preventDefault());
    window.addEventListener('blur', () => this.lost(this.press?.id), { signal });
  }

  private spotOf(event: PointerEvent): Spot {
    const { left, top } = this.element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  }

  private down = (event: PointerEvent): void => {
    const { model } = this;
    const spot = this.spotOf(event);
    const by = kindOf(event);
    if (by === 'pen') this.pen.seen(event.timeStamp);
    if (by === 'touch' && this.pen.isPalm(event.timeStamp)) return;
    this.element.setPointerCapture(event.pointerId);
    // As a mouse's press does by itself: what is typed in the strip is taken before the strip asks something else.
    if (by !== 'mouse') this.element.focus({ preventScroll: true });
    model.hands.menu.setState({ open: null });
    model.cursor.leave();
    if (by === 'touch' && this.fingers.down(event.pointerId, spot)) {
      this.second(event);
      return;
    }
    if (this.press) {
      // Another button in mid-drag calls the drag off.
      if (event.button !== this.press.button) this.drop();
      return;
    }
    model.pointer.setState({ spot, by });
    const at = model.pointed(spot, event);
    const about = model.pivotFor(at.struck?.point ?? null);
    const { button, pointerId: id, timeStamp: time } = event;
    this.press = { id, button, by, time, spot, at, about, last: spot, way: 'undecided', frozen: false };
    if (by === 'touch') this.timer = window.setTimeout(this.held, this.drawing ? LONG.tool : LONG.rest);
  };

  /** A tool is in hand, and fingers may use it. */
  private get drawing(): boolean {
    return this.model.editor.store.getState().tool !== 'rest' && !this.pen.onlyMoves;
  }

  /** A second finger: at once, both mean the view; later, the drag waits where it is until both are lifted. */
  private second({ timeStamp }: PointerEvent): void {
    const { press } = this;
    clearTimeout(this.timer);
    if (!press) return;
    const soon = timeStamp - press.time < SECOND.time;
    const near = Math.hypot(press.last.x - press.spot.x, press.last.y - press.spot.y) < SECOND.reach;
    if (press.way === 'tool' && !(soon && near)) press.frozen = true;
    else this.drop();
  }

  /** A finger rests where it was put. */
  private held = (): void => {
    const { press, model } = this;
    if (press?.way !== 'undecided') return;
    if (this.drawing) {
      press.way = 'loupe';
      model.hands.hover(model.pointed(press.last, NO_KEYS));
      model.hands.loupe.show(press.last);
      return;
    }
    press.way = 'spent';
    model.hands.openMenu(press.spot, press.at);
  };

  private move = (event: PointerEvent): void => {
    const spot = this.spotOf(event);
    const by = kindOf(event);
    if (by === 'pen') this.pen.seen(event.timeStamp);
    if (by === 'touch' && this.fingers.move(event.pointerId, spot)) return;
    const { press, model } = this;
    const moved = model.pointer.getState().spot;
    if (moved?.x !== spot.x || moved.y !== spot.y) model.cursor.leave();
    model.pointer.setState({ spot, by });
    if (!press) {
      if (event.buttons === 0) model.hands.hover(model.pointed(spot, event));
      return;
    }
    if (event.pointerId !== press.id || press.frozen) return;
    if (event.buttons === 0 && by === 'mouse') {
      this.lost(press.id);
      return;
    }
    if (press.way === 'undecided') {
      if (Math.hypot(spot.x - press.spot.x, spot.y - press.spot.y) < THRESHOLD[press.by]) return;
      clearTimeout(this.timer);
      press.way = this.wayOf(press);
      if (press.way === 'tool') model.drawing.held = press.at.grip;
    }
    this.drag(press, spot, event);
    press.last = spot;
  };

  private drag(press: Press, spot: Spot, event: PointerEvent): void {
    const { model } = this;
    if (press.way === 'tool') model.toolbox.drag(press.at, model.pointed(spot, event));
    else if (press.way === 'turn')
      turnByDrag(model.view, press.about, spot.x - press.last.x, spot.y - press.last.y);
    else if (press.way === 'slide') slideFrom(model.view, press.about, press.last, spot);
    else if (press.way === 'loupe') {
      model.hands.hover(model.pointed(spot, event));
      model.hands.loupe.show(spot);
    }
  }

  /** Whose the drag is. */
  private wayOf({ button, at, by }: Press): Press['way'] {
    const { view, toolbox } = this.model;
    // Through a lens, a drag of that very camera would run away from itself.
    if (view.stay?.kind === 'lens') return 'turn';
    if (button === MIDDLE) return 'slide';
    if (button === RIGHT) return view.isPlan ? 'slide' : 'turn';
    const onlyMoves = by === 'touch' && this.pen.onlyMoves;
    if (!onlyMoves && toolbox.takes(at)) return 'tool';
    return view.isPlan && by === 'touch' ? 'slide' : 'turn';
  }

  private up = (event: PointerEvent): void => {
    if (kindOf(event) === 'touch' && this.fingers.up(event.pointerId)) {
      if (this.press?.frozen === true && this.fingers.isNone) this.end(event);
      return;
    }
    if (this.press && event.pointerId === this.press.id) this.end(event);
  };

  /**
   * What browsers make of a tap for pages that know only a mouse would press what has come up under the finger since: a field of
   * the strip, and with it the system's keyboard.
   */
  private lifted = (event: TouchEvent): void => {
    const { target } = event;
    if (!event.cancelable || !(target instanceof Element)) return;
    if (target.closest('button, input, select, a, label')) return;
    event.preventDefault();
  };

  private end(event: PointerEvent): void {
    const { press, model } = this;
    clearTimeout(this.timer);
    this.press = null;
    if (!press) return;
    if (press.way === 'tool') model.toolbox.release();
    else if (press.way === 'turn') settle(model.view, press.about);
    else if (press.way === 'loupe') model.toolbox.click(model.pointed(press.last, event));
    else if (press.way === 'undecided' && press.button === RIGHT) model.hands.openMenu(press.spot, press.at);
    else if (
      press.way === 'undecided' &&
      press.button === LEFT &&
      !(press.by === 'touch' && this.pen.onlyMoves)
    )
      this.clicks.press(press.spot, press.at, event.timeStamp);
    this.letGo();
  }

  private letGo(): void {
    this.model.drawing.held = null;
    this.model.hands.loupe.hide();
    this.model.redraw();
  }

  private leave = (event: PointerEvent): void => {
    if (this.press) return;
    // A finger that is lifted has not gone elsewhere: the pad's Space presses where it was.
    if (kindOf(event) !== 'touch') this.model.pointer.setState({ spot: null });
    this.model.editor.hover(null);
    this.model.here.follow(null);
  };

  private drop(): void {
    clearTimeout(this.timer);
    if (this.press?.way === 'tool') this.model.toolbox.escape();
    this.press = null;
    this.letGo();
  }

  /** Called off by the system: back to the press. */
  private cancel = (event: PointerEvent): void => {
    this.fingers.up(event.pointerId);
    if (event.pointerId === this.press?.id) this.drop();
  };

  /** A release that was never seen: the last place holds. */
  private lost(id: number | undefined): void {
    const { press } = this;
    if (!press || id !== press.id || press.frozen) return;
    clearTimeout(this.timer);
    this.press = null;
    if (press.way === 'tool') this.model.toolbox.release();
    this.letGo();
  }

  /** Esc while dragging: the tool's drag goes back; a turn of the view simply ends. */
  escape(): boolean {
    if (!this.press || this.press.way === 'undecided') return false;
    this.drop();
    return true;
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.listening.abort();
  }
}

const NO_KEYS = { shiftKey: false, ctrlKey: false, metaKey: false, pointerType: 'touch' };

const kindOf = ({ pointerType }: PointerEvent): keyof typeof THRESHOLD =>
  pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse';
