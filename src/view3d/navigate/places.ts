import type { Places } from '../../editor/commands.ts';
import type { Model } from '../Model.ts';

/** What the Model does when a place is named instead of pointed at. */
export function placesOf(model: Model): Places {
  const goTo: Places['goTo'] = (point) => {
    model.view.reveal(point);
    model.focus();
    model.cursor.goTo(point);
  };
  return {
    goTo,
    ask: (point) => {
      goTo(point);
      model.here.pin();
    },
    pointAt: (x, y) => {
      const box = document.querySelector('[data-model]')?.getBoundingClientRect();
      if (!box || x < box.left || x > box.right || y < box.top || y > box.bottom) return null;
      return model.pointed({ x: x - box.left, y: y - box.top }, NO_KEYS).struck?.point ?? null;
    },
    middle: () => {
      const { width, height, middle } = model.view;
      return model.pointed({ x: width / 2, y: height / 2 }, NO_KEYS).struck?.point ?? middle;
    },
    fromAbove: () => {
      if (!model.view.isPlan) model.view.togglePlan(model.pivotFor(null));
      // A picture just laid is not drawn yet, and the window may grow where the first steps make room: two frames later.
      requestAnimationFrame(() => requestAnimationFrame(() => fitPicture(model)));
      model.focus();
    },
  };
}

const NO_KEYS = { shiftKey: false, ctrlKey: false, metaKey: false };

/** Shows the picture that is to be given its scale. */
function fitPicture(model: Model): void {
  const { tool, plan } = model.editor.store.getState();
  const id = tool === 'scale' ? plan.pictureOrder.at(-1) : undefined;
  if (id !== undefined) model.fit({ kind: 'picture', id });
}
