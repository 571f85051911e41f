import { useStore } from 'zustand';
import type { DeskStore, Page } from './desk.ts';
import styles from './pages.module.css';

const PAGES: readonly { readonly page: Page; readonly label: string }[] = [
  { page: 'model', label: 'Model' },
  { page: 'trial', label: 'Lens trial' },
  { page: 'cards', label: 'Drill cards' },
  { page: 'sum', label: 'Quick sum' },
];

/** The pages of the window, in its bar. */
export function PageTabs({ desk }: { desk: DeskStore }) {
  const shown = useStore(desk, (state) => state.page);
  return (
    <nav className={styles.tabs} aria-label="Pages">
      {PAGES.map(({ page, label }) => (
        <button
          key={page}
          type="button"
          aria-current={shown === page ? 'page' : undefined}
          onClick={() => desk.setState({ page })}
        >
          {label}
        </button>
      ))}
    </nav>
  );
}
