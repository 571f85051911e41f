import type { Theme } from '../draw/ink.ts';

const dark = (): MediaQueryList => matchMedia('(prefers-color-scheme: dark)');

/** The theme that the page shows: what its root element says, else what the system prefers. */
export function themeNow(): Theme {
  const said = document.documentElement.dataset['theme'];
  if (said === 'dark' || said === 'light') return said;
  return dark().matches ? 'dark' : 'light';
}

/** Tells of a change of theme; returns how to stop. */
export function watchTheme(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  const query = dark();
  query.addEventListener('change', changed);
  return () => {
    observer.disconnect();
    query.removeEventListener('change', changed);
  };
}
