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
    fromAbove: () => {
      if (!model.view.isPlan) model.view.togglePlan(model.pivotFor(null));
      // A picture just laid is not drawn yet: the frame that takes it up comes first.
      requestAnimationFrame(() => {
        const { selected } = model.editor.store.getState();
        if (selected?.kind === 'picture') model.fit(selected);
      });
      model.focus();
    },
  };
}
