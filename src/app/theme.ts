import { bandColours } from '../draw/bandInk.ts';
import { CORAL_STRENGTH, ink } from '../draw/ink.ts';
import type { Theme } from '../draw/ink.ts';
import { keepTheme, keptTheme } from '../editor/autosave.ts';
import type { DeskStore } from './desk.ts';

const dark = () => window.matchMedia('(prefers-color-scheme: dark)');

/** The theme chosen on this device, else the system's. */
export const firstTheme = (): Theme => keptTheme() ?? (dark().matches ? 'dark' : 'light');

const THEMES: readonly Theme[] = ['light', 'dark'];

/** The inks of both themes as custom properties of the page. */
function tokenSheet(): string {
  return THEMES.map((theme) => {
    const lines = Object.entries(ink[theme]).flatMap(([token, value]: [string, unknown]) =>
      typeof value === 'string' && value.startsWith('#') ? [`--${dashed(token)}: ${value};`] : [],
    );
    const coral = `--coral-line: color-mix(in srgb, ${ink[theme].coralLine} ${CORAL_STRENGTH * 100}%, transparent);`;
    // Fields stand out from the sheet: the lightest card in light, the sunk one in dark.
    const field = `--field: ${theme === 'light' ? ink.light.cardTop : ink.dark.sunk};`;
    return `:root[data-theme='${theme}'] { color-scheme: ${theme}; ${lines.join(' ')} ${coral} ${field} }`;
  }).join('\n');
}

// ink2 stays ink2; cardTop becomes card-top.
const dashed = (token: string): string => token.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Puts the inks on the page, and the theme of the desk with whatever it changes to. */
export function dressPage(desk: DeskStore): void {
  const sheet = document.createElement('style');
  sheet.textContent = tokenSheet();
  document.head.append(sheet);
  const show = (theme: Theme) => {
    document.documentElement.dataset['theme'] = theme;
  };
  show(desk.getState().theme);
  desk.subscribe(({ theme }) => show(theme));
  dark().addEventListener('change', ({ matches }) => {
    if (keptTheme() === null) desk.setState({ theme: matches ? 'dark' : 'light' });
  });
}

/** The person's own choice, kept on the device. */
export function chooseTheme(desk: DeskStore, theme: Theme): void {
  keepTheme(theme);
  desk.setState({ theme });
}

/** The tones of an edition's bands as custom properties, coarsest first. */
export const bandTokens = (levels: number, theme: Theme): Readonly<Record<`--${string}`, string>> =>
  Object.fromEntries(bandColours(levels, theme).map((colour, index) => [`--band-${index + 1}`, colour]));
