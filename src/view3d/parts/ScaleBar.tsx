import { useSyncExternalStore } from 'react';
import { lengthText, type LengthUnit } from '../../base/length.ts';
import type { View } from '../navigate/View.ts';
import styles from './parts.module.css';

interface ScaleBarProps {
  readonly view: View;
  readonly unit: LengthUnit;
}

const LEAST = 60;

/** A round length at the middle of the window. Across the sheet only: depth is foreshortened. */
export function ScaleBar({ view, unit }: ScaleBarProps) {
  const orbit = useSyncExternalStore(view.subscribe, view.current);
  // Within the site nothing has one scale.
  if (orbit.stay) return null;
  const size = view.sheet.metresPerPixel(orbit.pivot);
  const foot = unit === 'feet' ? 0.3048 : 1;
  const least = (LEAST * size) / foot;
  const ten = 10 ** Math.floor(Math.log10(least));
  const length = ([1, 2, 5, 10].find((step) => step * ten >= least) ?? 10) * ten * foot;
  const width = length / size;
  const text = lengthText(length, unit);
  const label =
    unit === 'feet'
      ? text.text
      : `${Number((unit === 'metres' ? length : length * 1000).toPrecision(3))} ${text.unit}`;
  return (
    <div className={styles['scale']} role="img" aria-label={`The bar is ${label} long`}>
      <span className={styles['scaleEnds']} style={{ width }}>
        <span>0</span>
        <span>{label}</span>
      </span>
      <span className={styles['bar']} style={{ width }} />
    </div>
  );
}
