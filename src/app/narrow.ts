import { useSyncExternalStore } from 'react';

const query = '(width < 800px)';

/** Whether the window is one column, as on a phone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const media = window.matchMedia(query);
      media.addEventListener('change', changed);
      return () => media.removeEventListener('change', changed);
    },
    () => window.matchMedia(query).matches,
  );
}
