import { nameOfSelected } from '../../editor/recordsOf.ts';
import type { Model } from '../Model.ts';

/** A thing is named once it has been pointed at for so long, ms. */
const WAIT = 400;
const ASIDE = { x: 14, y: 18 } as const;
const EDGE = 4;

/** The name of what the pointer rests on, beside it. */
export class HoverName {
  private readonly element = document.createElement('span');
  private readonly model: Model;
  private readonly stop: () => void;
  private timer = 0;

  constructor(layer: HTMLElement, model: Model) {
    this.model = model;
    this.element.className = 'hoverName';
    this.element.setAttribute('aria-hidden', 'true');
    this.element.hidden = true;
    layer.append(this.element);
    this.stop = model.editor.store.subscribe((now, before) => {
      if (now.hovered === before.hovered && now.gesturing === before.gesturing) return;
      clearTimeout(this.timer);
      this.element.hidden = true;
      if (now.hovered && !now.gesturing) this.timer = window.setTimeout(this.show, WAIT);
    });
  }

  private show = (): void => {
    const { editor, pointer, view } = this.model;
    const { hovered, plan } = editor.store.getState();
    const { spot } = pointer.getState();
    if (!hovered || hovered.kind === 'boundary' || !spot) return;
    const name = nameOfSelected(plan, hovered);
    if (name === undefined) return;
    const { element } = this;
    element.textContent = name;
    element.hidden = false;
    const { offsetWidth: width, offsetHeight: height } = element;
    const x = spot.x + ASIDE.x + width > view.width - EDGE ? spot.x - ASIDE.x - width : spot.x + ASIDE.x;
    const y = spot.y + ASIDE.y + height > view.height - EDGE ? spot.y - ASIDE.y - height : spot.y + ASIDE.y;
    element.style.transform = `translate(${x}px, ${y}px)`;
  };

  dispose(): void {
    clearTimeout(this.timer);
    this.stop();
    this.element.remove();
  }
}
