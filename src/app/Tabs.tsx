import { useStore } from 'zustand';
import type { DeskStore } from './desk.ts';
import styles from './app.module.css';

const TABS = [
  { tab: 'site', label: 'Site' },
  { tab: 'setting', label: 'Settings' },
  { tab: 'section', label: 'Section' },
] as const;

/** On a phone: which part lies under the Model. */
export function Tabs({ desk, covered }: { desk: DeskStore; covered: boolean }) {
  const shown = useStore(desk, (state) => state.tab);
  return (
    <nav className={styles.tabs} aria-label="Parts" inert={covered}>
      {TABS.map(({ tab, label }) => (
        <button key={tab} type="button" aria-pressed={shown === tab} onClick={() => desk.setState({ tab })}>
          {label}
        </button>
      ))}
    </nav>
  );
}
