import { cos, sin } from '../../base/angle.ts';
import type { Compass, Nudge } from '../../editor/tools/chart.ts';
import type { View } from './View.ts';

const AWAY: Readonly<Record<Nudge, readonly [number, number]>> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
};

/** Which of some headings (°, bearings) an arrow key means: the one that runs nearest to it on the window. */
export const compassOf =
  (view: Pick<View, 'sheet' | 'middle'>): Compass =>
  (way, axes) => {
    const { sheet, middle } = view;
    const here = sheet.spotFromSite(middle);
    const [x, y] = AWAY[way];
    let best = axes[0] ?? 0;
    let most = -Infinity;
    for (const heading of axes) {
      const there = sheet.spotFromSite([middle[0] + sin(heading), middle[1] + cos(heading), middle[2]]);
      if (!here || !there) continue;
      const [dx, dy] = [there.x - here.x, there.y - here.y];
      const along = (dx * x + dy * y) / Math.hypot(dx, dy);
      if (along > most) [most, best] = [along, heading];
    }
    return best;
  };
