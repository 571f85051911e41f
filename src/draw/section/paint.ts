import { bandColours, inkOnBand } from '../bandInk.ts';
import { ink, type Theme } from '../ink.ts';

/** Lines that fill a shape: what is hidden, screened, too dark; a cut wall; earth below the ground line. */
export const PATTERNS = ['hidden', 'screened', 'dark', 'wall', 'earth'] as const;
export type Pattern = (typeof PATTERNS)[number];

type Token =
  | 'paper'
  | 'ink'
  | 'ink2'
  | 'rule2'
  | 'coralText'
  | 'coralLine'
  | 'saffron'
  | 'casing'
  | 'cardTop';

/** What a shape is painted with: an ink of the sheet, a band (index + 1), what reads on that band, or a pattern. */
export type Paint =
  | Token
  | { readonly band: number }
  | { readonly onBand: number }
  | { readonly pattern: Pattern };

/** The colour of a paint in a theme, #RRGGBB; a pattern by the colour of its lines. */
export function colourOf(paint: Paint, theme: Theme, levels: number): string {
  if (typeof paint === 'string') return ink[theme][paint];
  if ('pattern' in paint) return ink[theme][PATTERN_INK[paint.pattern]];
  const number = 'band' in paint ? paint.band : paint.onBand;
  const band = bandColours(levels, theme)[number - 1] ?? ink[theme].ink;
  return 'band' in paint ? band : inkOnBand(band, theme);
}

const PATTERN_INK: Readonly<Record<Pattern, Token>> = {
  hidden: 'coralLine',
  screened: 'coralLine',
  dark: 'coralLine',
  wall: 'rule2',
  earth: 'rule2',
};

/** The lines of a pattern in its own square: its side, px, and lines as a path; `dark` runs the other way, broken. */
export const PATTERN_LINES: Readonly<
  Record<
    Pattern,
    { readonly side: number; readonly d: string; readonly width: number; readonly dash?: string }
  >
> = {
  hidden: { side: 8.5, d: 'M-1 9.5L9.5 -1M-1 1L1 -1M7.5 9.5L9.5 7.5', width: 1.2 },
  screened: { side: 8.5, d: 'M-1 9.5L9.5 -1M-1 1L1 -1M7.5 9.5L9.5 7.5', width: 1.2, dash: '1.5 2.5' },
  dark: { side: 9.9, d: 'M-1 -1L10.9 10.9M8.9 -1L10.9 1M-1 8.9L1 10.9', width: 1.2, dash: '4.4 2.6' },
  wall: { side: 8.5, d: 'M-1 9.5L9.5 -1M-1 1L1 -1M7.5 9.5L9.5 7.5', width: 0.9 },
  earth: { side: 8.5, d: 'M-1 9.5L9.5 -1M-1 1L1 -1M7.5 9.5L9.5 7.5', width: 0.9 },
};
