import { createStore } from 'zustand/vanilla';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { Loupe } from '../touch/Loupe.ts';

/** What was asked for with a long press or the right button. */
export interface OpenMenu {
  readonly spot: Spot;
  readonly at: Pointed;
}

/** What hands do over the Model besides drawing: hover, ask for the menu, look closer, take a base for an offset. */
export class Hands {
  readonly menu = createStore<{ readonly open: OpenMenu | null }>(() => ({ open: null }));
  /** The next tap only says from where the next number counts. */
  readonly base = createStore<{ readonly asked: boolean }>(() => ({ asked: false }));
  readonly loupe: Loupe;
  private readonly model: Model;

  constructor(model: Model, layer: HTMLElement, canvas: HTMLCanvasElement) {
    this.model = model;
    this.loupe = new Loupe(model, layer, canvas);
  }

  hover(at: Pointed): void {
    const { toolbox, here, drawing } = this.model;
    drawing.hovered = at.grip;
    toolbox.hover(at);
    here.follow(at);
    this.model.redraw();
  }

  openMenu(spot: Spot, at: Pointed): void {
    this.menu.setState({ open: { spot, at } });
  }

  /** Whether this tap is a base; it is asked for anew each time. */
  takeBase(): boolean {
    const { asked } = this.base.getState();
    if (asked) this.base.setState({ asked: false });
    return asked;
  }

  /** How the pointer looks: over a handle by the way that it goes, else as the tool says. */
  get cursor(): string {
    const { drawing, editor, toolbox } = this.model;
    const { cursor } = toolbox.store.getState().state;
    if (editor.store.getState().tool !== 'rest') return cursor;
    if (drawing.held) return drawing.cursorOf(drawing.held, true);
    return drawing.hovered ? drawing.cursorOf(drawing.hovered, false) : cursor;
  }
}
