import { useState, useSyncExternalStore } from 'react';
import type { Model } from '../Model.ts';
import { turnBy, zoomBy } from '../navigate/moves.ts';
import { squareOn } from '../navigate/squareOn.ts';
import { lookThrough, stand } from '../navigate/ways.ts';
import { turnTo } from '../orbit.ts';
import styles from './parts.module.css';

interface NorthMarkProps {
  readonly model: Model;
}

/** Which way north is; opens a panel that turns, zooms and fits with buttons alone. */
export function NorthMark({ model }: NorthMarkProps) {
  const { view } = model;
  const orbit = useSyncExternalStore(view.subscribe, view.current);
  const [open, setOpen] = useState(false);
  const about = () => model.pivotFor(null);
  const look = (bearing: number, elevation: number) =>
    view.ease(turnTo(view.outer, about(), bearing, elevation));
  // Within the site the arrows walk and Esc returns, once the Model has the focus.
  const within = (go: () => void) => {
    go();
    model.focus();
  };
  const acts: readonly (readonly [label: string, sign: string, act: () => void])[] = [
    ['Turn left', '↺', () => turnBy(view, about(), -15, 0)],
    ['Turn right', '↻', () => turnBy(view, about(), 15, 0)],
    ['Higher', '▲', () => turnBy(view, about(), 0, 10)],
    ['Lower', '▼', () => turnBy(view, about(), 0, -10)],
    ['Nearer', '+', () => zoomBy(view, about(), 1.25, true)],
    ['Farther', '−', () => zoomBy(view, about(), 1 / 1.25, true)],
    ['Plan, from above', 'Plan', () => view.togglePlan(about())],
    ['All, the whole site', 'All', () => view.home()],
    ['From the north', 'N', () => look(180, 0)],
    ['From the east', 'E', () => look(270, 0)],
    ['From the south', 'S', () => look(0, 0)],
    ['From the west', 'W', () => look(90, 0)],
    ['Wall, square on', 'Wall', () => squareOn(model)],
    ['Stand here', 'Stand', () => within(() => stand(model))],
    ['Lens of the selected camera', 'Lens', () => within(() => lookThrough(model))],
    ['Back to the view before', 'Back', () => view.leave()],
  ];
  return (
    <div className={styles['north']} data-over>
      {open && (
        <div className={styles['views']} role="group" aria-label="View">
          {acts.map(([label, sign, act]) => (
            <button key={label} type="button" aria-label={label} title={label} onClick={act}>
              {sign}
            </button>
          ))}
        </div>
      )}
      <button
        type="button"
        className={styles['compass']}
        aria-label="North, and views"
        aria-expanded={open}
        onClick={() => setOpen(!open)}
      >
        <svg viewBox="-18 -18 36 36" aria-hidden="true">
          <g transform={`rotate(${-orbit.bearing})`}>
            <path d="M0,-10 L6,12 L0,8 Z" className={styles['needleDark']} />
            <path d="M0,-10 L-6,12 L0,8 Z" className={styles['needleLight']} />
            <text y="-11.5" textAnchor="middle" transform={`rotate(${orbit.bearing} 0 -15)`}>
              N
            </text>
          </g>
        </svg>
      </button>
    </div>
  );
}
