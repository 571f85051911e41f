import type { Theme } from '../ink.ts';
import { colourOf, PATTERNS, type Paint } from '../section/paint.ts';
import { CAUTION, escaped, markText, patternText, type SheetWords } from '../section/sectionSvg.ts';
import type { PictureDrawing } from './pictureDrawing.ts';

/** Room around the drawing: at its sides, above for the title, below for what it rests on, px. */
const [SIDE, HEAD, TAIL] = [16, 48, 44];

/** A picture as a file of its own: SVG 1.1 with selectable text, in the inks of a theme. */
export function pictureSvg(
  { width, height, marks, levels, sentence }: PictureDrawing,
  sheet: SheetWords,
  theme: Theme,
): string {
  const colour = (paint: Paint) => colourOf(paint, theme, levels);
  const [wide, high] = [Math.ceil(width + 2 * SIDE), Math.ceil(height + HEAD + TAIL)];
  const text = (y: number, size: number, paint: Paint, words: string, weight = 400) =>
    `<text x="${SIDE}" y="${y}" font-size="${size}" font-weight="${weight}" fill="${colour(paint)}">${escaped(words)}</text>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" viewBox="0 0 ${wide} ${high}" role="img" font-family="'National Park', 'Helvetica Neue', Arial, sans-serif">`,
    `<title>${escaped(`${sheet.title}. ${sheet.plan}`)}</title>`,
    `<desc>${escaped(sentence)}</desc>`,
    `<defs>${PATTERNS.map((pattern) => patternText(pattern, colour)).join('')}<clipPath id="scene"><rect width="${width}" height="${height}"/></clipPath></defs>`,
    `<rect width="${wide}" height="${high}" fill="${colour('paper')}"/>`,
    text(21, 15, 'ink', sheet.title, 650),
    text(38, 12, 'ink2', `${sheet.plan}. Asked: ${sheet.asked}. Bands: ${sheet.edition}.`),
    `<g transform="translate(${SIDE} ${HEAD})">`,
    ...marks.map((mark) => markText(mark, colour)),
    '</g>',
    text(
      high - 24,
      11,
      'ink2',
      'Drawn with the lens’s own projection. Distances in it are not to scale; px/m are.',
    ),
    text(high - 9, 11, 'ink2', CAUTION),
    '</svg>',
    '',
  ].join('\n');
}
