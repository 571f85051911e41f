import { thingAt } from '../../editor/tools/rest/thingAt.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import type { Model } from '../Model.ts';
import type { Spot } from '../sheet.ts';
import { standAt } from './stays.ts';

const DOUBLE = { time: 300, reach: 6 } as const;
/** A click as near as this to the last, later than a double click, means what is behind, px. */
const SAME_SPOT = 8;

/** Presses that were no drags: one, two, and one again later at the same spot. */
export class Clicks {
  private last: { readonly time: number; readonly spot: Spot } | null = null;
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  /** @param time ms */
  press(spot: Spot, at: Pointed, time: number): void {
    const { model, last } = this;
    const soon = last !== null && time - last.time < DOUBLE.time;
    const off = last ? Math.hypot(spot.x - last.spot.x, spot.y - last.spot.y) : Infinity;
    const twice = soon && off <= DOUBLE.reach;
    const again = !soon && off <= SAME_SPOT;
    const resting = model.editor.store.getState().tool === 'rest';
    if (resting && this.walked(at)) return;
    this.last = twice ? null : { time, spot };
    if (model.hands.takeBase()) {
      // Only the place from which the next number is taken.
      model.toolbox.hover(at);
      return;
    }
    if (twice && resting) {
      model.fit(thingAt(model.editor, at));
      return;
    }
    if (twice) model.toolbox.double(at);
    else model.toolbox.click(again && resting ? model.behind(at) : at);
    // A camera just fixed looks straight out until the pointer moves on; a finger does not hover.
    const { name } = model.toolbox.store.getState().state;
    const follows = name !== 'camera aiming' && (at.by !== 'touch' || resting);
    if (follows) model.hands.hover(at);
  }

  /** Standing, a press on the ground goes there. */
  private walked({ struck, camera }: Pointed): boolean {
    const { view } = this.model;
    if (view.stay?.kind !== 'stand' || camera !== null || struck?.structure !== null) return false;
    view.ease(standAt(struck.point, view.goal.bearing));
    return true;
  }
}
