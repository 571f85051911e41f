import { useSyncExternalStore } from 'react';

/** As the window's own style sheet has it: below this all stands in one column, which scrolls. */
const QUERY = '(width < 800px)';

/** Whether the window is a phone's, so that the picture is as wide as it goes instead of as high. */
export const useNarrow = (): boolean => useSyncExternalStore(watch, isNarrow, () => false);

const isNarrow = (): boolean => matchMedia(QUERY).matches;

function watch(changed: () => void): () => void {
  const query = matchMedia(QUERY);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}
