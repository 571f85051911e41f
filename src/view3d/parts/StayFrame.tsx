import { useSyncExternalStore } from 'react';
import { tan } from '../../base/angle.ts';
import type { View } from '../navigate/View.ts';
import styles from './parts.module.css';

/** While one looks from within: a foot of paper under the scale; through a lens, the edge of what it records, the rest veiled. */
export function StayFrame({ view }: { readonly view: View }) {
  const orbit = useSyncExternalStore(view.subscribe, view.current);
  const { stay } = orbit;
  if (!stay) return null;
  const foot = <div className={styles['foot']} aria-hidden="true" />;
  if (!stay.frame || view.goal !== orbit) return foot;
  const height = (view.height * tan(stay.frame.vertical / 2)) / tan(stay.field / 2);
  return (
    <>
      <div className={styles['lens']} style={{ width: height * stay.frame.aspect, height }} aria-hidden="true" />
      {foot}
    </>
  );
}
