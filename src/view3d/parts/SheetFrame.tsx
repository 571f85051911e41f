import { useSyncExternalStore } from 'react';
import { tan } from '../../base/angle.ts';
import type { View } from '../navigate/View.ts';
import styles from './parts.module.css';

/** How high the foot is, px, as its style says. */
const FOOT = 68;

/** Whether the board reaches under the scale, where it would take the ink of what is written there. */
function runsUnder({ sheet, site: { low, high } }: View): boolean {
  return [low[0], high[0]].some((x) =>
    [low[1], high[1]].some((y) => {
      const spot = sheet.spotFromSite([x, y, low[2]]);
      return spot === null || spot.y > sheet.height - FOOT;
    }),
  );
}

/** A foot of paper under the scale where the board would run there; through a lens, also the edge of what it records, the rest veiled. */
export function SheetFrame({ view }: { readonly view: View }) {
  const orbit = useSyncExternalStore(view.subscribe, view.current);
  const { stay } = orbit;
  if (!stay && !runsUnder(view)) return null;
  const foot = <div className={styles['foot']} aria-hidden="true" />;
  if (!stay?.frame || view.goal !== orbit) return foot;
  const height = (view.height * tan(stay.frame.vertical / 2)) / tan(stay.field / 2);
  return (
    <>
      <div
        className={styles['lens']}
        style={{ width: height * stay.frame.aspect, height }}
        aria-hidden="true"
      />
      {foot}
    </>
  );
}
