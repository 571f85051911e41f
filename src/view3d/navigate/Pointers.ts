import type { Vec3 } from '../../base/vector.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import { thingAt } from '../../editor/tools/rest/resting.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { settle, slideFrom, turnByDrag } from './moves.ts';
import { standAt } from './stays.ts';
import { TwoFingers } from './TwoFingers.ts';

/** How far a press moves before it is a drag, px. */
const THRESHOLD = { mouse: 4, pen: 6, touch: 10 } as const;
const DOUBLE = { time: 300, reach: 6 } as const;
/** A click as near as this to the last, later than a double click, means what is behind, px. */
const SAME_SPOT = 8;
const LEFT = 0;
const MIDDLE = 1;
const RIGHT = 2;

interface Press {
  readonly id: number;
  readonly button: number;
  readonly spot: Spot;
  readonly at: Pointed;
  /** The point that stays put while the view turns or slides. */
  readonly about: Vec3;
  last: Spot;
  way: 'undecided' | 'tool' | 'turn' | 'slide';
}

/** Mouse, pen and fingers on the Model: to the tool in hand what is the tool's, to the view the rest. */
export class Pointers {
  private press: Press | null = null;
  private click: { readonly time: number; readonly spot: Spot } | null = null;
  private readonly fingers: TwoFingers;
  private readonly element: HTMLElement;
  private readonly model: Model;
  private readonly listening = new AbortController();

  constructor(element: HTMLElement, model: Model) {
    this.element = element;
    this.model = model;
    this.fingers = new TwoFingers(model);
    const on = <K extends keyof HTMLElementEventMap>(
      name: K,
      act: (event: HTMLElementEventMap[K]) => void,
    ): void => element.addEventListener(name, act, { signal: this.listening.signal });
    on('pointerdown', this.down);
    on('pointermove', this.move);
    on('pointerup', this.up);
    on('pointercancel', this.cancel);
    on('lostpointercapture', this.lost);
    on('pointerleave', this.leave);
    on('contextmenu', (event) => event.preventDefault());
  }

  private spotOf(event: PointerEvent): Spot {
    const { left, top } = this.element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  }

  private down = (event: PointerEvent): void => {
    const spot = this.spotOf(event);
    this.element.setPointerCapture(event.pointerId);
    if (event.pointerType === 'touch' && this.fingers.down(event.pointerId, spot)) {
      this.drop();
      return;
    }
    if (this.press) {
      // Another button in mid-drag calls the drag off.
      if (event.button !== this.press.button) this.drop();
      return;
    }
    const at = this.model.pointed(spot, event);
    const about = this.model.pivotFor(at.struck?.point ?? null);
    this.press = { id: event.pointerId, button: event.button, spot, at, about, last: spot, way: 'undecided' };
  };

  private move = (event: PointerEvent): void => {
    const spot = this.spotOf(event);
    if (event.pointerType === 'touch' && this.fingers.move(event.pointerId, spot)) return;
    const { press, model } = this;
    model.pointer.setState({ spot });
    if (!press) {
      if (event.buttons === 0) this.hover(model.pointed(spot, event));
      return;
    }
    if (event.pointerId !== press.id) return;
    if (press.way === 'undecided') {
      const kind = event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';
      if (Math.hypot(spot.x - press.spot.x, spot.y - press.spot.y) < THRESHOLD[kind]) return;
      press.way = this.wayOf(press, event);
    }
    if (press.way === 'tool') model.toolbox.drag(press.at, model.pointed(spot, event));
    else if (press.way === 'turn')
      turnByDrag(model.view, press.about, spot.x - press.last.x, spot.y - press.last.y);
    else slideFrom(model.view, press.about, press.last, spot);
    press.last = spot;
  };

  /** Whose the drag is. */
  private wayOf({ button, at }: Press, event: PointerEvent): Press['way'] {
    const { view, toolbox } = this.model;
    // Through a lens, a drag of that very camera would run away from itself.
    if (view.stay?.kind === 'lens') return 'turn';
    if (button === MIDDLE) return 'slide';
    if (button === RIGHT) return view.isPlan ? 'slide' : 'turn';
    if (toolbox.takes(at)) return 'tool';
    return view.isPlan && event.pointerType === 'touch' ? 'slide' : 'turn';
  }

  private up = (event: PointerEvent): void => {
    if (event.pointerType === 'touch' && this.fingers.up(event.pointerId)) return;
    const { press, model } = this;
    if (!press || event.pointerId !== press.id) return;
    this.press = null;
    if (press.way === 'tool') model.toolbox.release();
    else if (press.way === 'turn') settle(model.view, press.about);
    else if (press.way === 'undecided' && press.button === LEFT) this.clicked(press, event);
  };

  private clicked({ spot, at }: Press, event: PointerEvent): void {
    const { model } = this;
    const { click } = this;
    const soon = click !== null && event.timeStamp - click.time < DOUBLE.time;
    const off = click ? Math.hypot(spot.x - click.spot.x, spot.y - click.spot.y) : Infinity;
    const twice = soon && off <= DOUBLE.reach;
    const again = !soon && off <= SAME_SPOT;
    if (model.view.stay && model.editor.store.getState().tool === 'rest' && this.walked(at)) return;
    this.click = twice ? null : { time: event.timeStamp, spot };
    if (twice && model.editor.store.getState().tool === 'rest') {
      model.fit(thingAt(model.editor, at));
      return;
    }
    const resting = model.editor.store.getState().tool === 'rest';
    model.toolbox.click(again && resting ? model.behind(at) : at);
    // A camera just fixed looks straight out until the pointer moves on; a finger does not hover.
    if (model.toolbox.store.getState().state.name !== 'camera aiming') this.hover(at);
  }

  /** Standing, a press on the ground goes there. */
  private walked({ struck, camera }: Pointed): boolean {
    const { view } = this.model;
    if (view.stay?.kind !== 'stand' || camera !== null || struck?.structure !== null) return false;
    view.ease(standAt(struck.point, view.goal.bearing));
    return true;
  }

  private hover(at: Pointed): void {
    this.model.toolbox.hover(at);
    this.model.here.follow(at);
  }

  private drop(): void {
    if (this.press?.way === 'tool') this.model.toolbox.escape();
    this.press = null;
  }

  /** Called off by the system: back to the press. */
  private cancel = (event: PointerEvent): void => {
    this.fingers.up(event.pointerId);
    if (event.pointerId === this.press?.id) this.drop();
  };

  /** A release that was never seen: the last place holds. */
  private lost = (event: PointerEvent): void => {
    if (event.pointerId !== this.press?.id) return;
    if (this.press.way === 'tool') this.model.toolbox.release();
    this.press = null;
  };

  private leave = (): void => {
    if (this.press) return;
    this.model.pointer.setState({ spot: null });
    this.model.editor.hover(null);
    this.model.here.follow(null);
  };

  /** Esc while dragging: the tool's drag goes back; a turn of the view simply ends. */
  escape(): boolean {
    if (!this.press || this.press.way === 'undecided') return false;
    this.drop();
    return true;
  }

  dispose(): void {
    this.listening.abort();
  }
}
