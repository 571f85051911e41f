import { useStore } from 'zustand';
import type { Editor } from '../editor/editor.ts';
import styles from './densityScale.module.css';

/** Whom to thank for what was imported: always in view while the plan holds it. */
export function Credits({ editor }: { editor: Editor }) {
  const credits = useStore(editor.store, ({ plan }) => plan.credits);
  return credits.length === 0 ? null : <p className={styles.credits}>{credits.join(' · ')}</p>;
}
