import type { Theme } from '../ink.ts';
import type { Mark } from './marks.ts';
import { colourOf, PATTERN_LINES, PATTERNS, type Paint } from './paint.ts';
import type { SectionDrawing } from './sectionDrawing.ts';

/** What stands on a section's sheet besides the drawing. */
export interface SheetWords {
  /** "Section through C1, along 225°, one scale both ways". */
  readonly title: string;
  readonly plan: string;
  /** Edition of the standard by which bands are named. */
  readonly edition: string;
  /** What was asked: "face, 1.60 m, Night". */
  readonly asked: string;
}

/** Room above the drawing for its title, and below it for what it rests on, px. */
const HEAD = 44;
const TAIL = 40;

/** What pixels do not promise; stands under every drawing that goes out. */
export const CAUTION =
  'Enough pixels, by geometry alone: light, movement, focus and compression are not in it. No promise that anyone is known.';

/** A section as a file of its own: SVG 1.1 with selectable text, in the inks of a theme. */
export function sectionSvg(drawing: SectionDrawing, sheet: SheetWords, theme: Theme): string {
  const { view, marks, scene, levels, sentence } = drawing;
  const colour = (paint: Paint) => colourOf(paint, theme, levels);
  const [width, height] = [view.width, view.height + HEAD + TAIL];
  const tail = height - TAIL;
  const text = (x: number, y: number, size: number, paint: Paint, words: string, weight = 400) =>
    `<text x="${x}" y="${y}" font-size="${size}" font-weight="${weight}" fill="${colour(paint)}">${escaped(words)}</text>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" font-family="'National Park', 'Helvetica Neue', Arial, sans-serif">`,
    `<title>${escaped(`${sheet.title}. ${sheet.plan}`)}</title>`,
    `<desc>${escaped(sentence)}</desc>`,
    `<defs>${PATTERNS.map((pattern) => patternText(pattern, colour)).join('')}<clipPath id="scene"><rect x="${round(scene.left)}" width="${round(scene.right - scene.left)}" height="${round(scene.foot)}"/></clipPath></defs>`,
    `<rect width="${width}" height="${height}" fill="${colour('paper')}"/>`,
    text(16, 20, 15, 'ink', sheet.title, 650),
    text(16, 36, 12, 'ink2', `${sheet.plan}. Asked: ${sheet.asked}. Bands: ${sheet.edition}.`),
    `<g transform="translate(0 ${HEAD})">`,
    ...marks.map((mark) => markText(mark, colour)),
    '</g>',
    text(16, tail + 18, 11, 'ink2', CAUTION),
    text(
      16,
      tail + 33,
      11,
      'ink2',
      `One scale both ways, ${view.scale.toFixed(1)} px a metre. Distances from the point below the lens.`,
    ),
    '</svg>',
    '',
  ].join('\n');
}

const fillOf = (paint: Paint | null, colour: (paint: Paint) => string): string =>
  paint === null
    ? 'none'
    : typeof paint === 'object' && 'pattern' in paint
      ? `url(#${paint.pattern})`
      : colour(paint);

/** A mark as an element of SVG. */
export function markText(mark: Mark, colour: (paint: Paint) => string): string {
  if (mark.kind === 'words') {
    const { x, y, text, size, weight, anchor, fill, halo, turn } = mark;
    const at = `x="${round(x)}" y="${round(y)}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}"`;
    const around = halo
      ? ` stroke="${colour('paper')}" stroke-width="3.5" stroke-linejoin="round" paint-order="stroke"`
      : '';
    const turned = turn === 0 ? '' : ` transform="rotate(${turn} ${round(x)} ${round(y)})"`;
    return `<text ${at} fill="${colour(fill)}"${around}${turned}>${escaped(text)}</text>`;
  }
  const { d, fill, line, width, dash, opacity, clipped } = mark;
  return [
    `<path d="${d}" fill="${fillOf(fill, colour)}" fill-rule="evenodd"`,
    line === null ? '' : ` stroke="${colour(line)}" stroke-width="${width}" stroke-linejoin="round"`,
    dash === null ? '' : ` stroke-dasharray="${dash}"`,
    opacity === 1 ? '' : ` opacity="${opacity}"`,
    clipped ? ' clip-path="url(#scene)"' : '',
    '/>',
  ].join('');
}

/** The lines of a pattern as an element of SVG. */
export function patternText(pattern: (typeof PATTERNS)[number], colour: (paint: Paint) => string): string {
  const { side, d, width, dash } = PATTERN_LINES[pattern];
  const broken = dash === undefined ? '' : ` stroke-dasharray="${dash}"`;
  return `<pattern id="${pattern}" width="${side}" height="${side}" patternUnits="userSpaceOnUse"><path d="${d}" fill="none" stroke="${colour({ pattern })}" stroke-width="${width}"${broken}/></pattern>`;
}

const round = (value: number): number => Math.round(value * 100) / 100;

/** A text as an element's content. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
