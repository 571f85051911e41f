import type { Page, PageItem } from './page.ts';

/** The family whose widths pages are laid out by, and those that are as wide. */
const PAGE_FAMILY = "Helvetica, Arial, 'Liberation Sans', 'Nimbus Sans', sans-serif";

/** A page as a file of its own: SVG 1.1 in millimetres, true to scale, with text that can be selected. */
export function pageSvg({ width, height, title, sentence, items }: Page): string {
  const clips = clipsOf(items);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="${PAGE_FAMILY}">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(sentence)}</desc>`,
    `<defs>${[...clips].map(([box, id]) => `<clipPath id="${id}">${box}</clipPath>`).join('')}</defs>`,
    `<rect width="${width}" height="${height}" fill="#FFFFFF"/>`,
    ...items.map((item) => itemText(item, clips)),
    '</svg>',
    '',
  ].join('\n');
}

/** Each clipping box once, as its rectangle, with an id. */
function clipsOf(items: readonly PageItem[]): ReadonlyMap<string, string> {
  const clips = new Map<string, string>();
  for (const item of items) {
    const box = boxOf(item);
    if (box !== null && !clips.has(box)) clips.set(box, `clip${clips.size}`);
  }
  return clips;
}

function boxOf(item: PageItem): string | null {
  if (item.kind === 'text' || item.clip === null) return null;
  const { x, y, width, height } = item.clip;
  return `<rect x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}"/>`;
}

function itemText(item: PageItem, clips: ReadonlyMap<string, string>): string {
  if (item.kind === 'text') {
    const { x, y, text, long, size, bold, anchor, ink, turn } = item;
    if (text === '') return '';
    const turned = turn === 0 ? '' : ` transform="rotate(${turn} ${round(x)} ${round(y)})"`;
    return `<text x="${round(x)}" y="${round(y)}" font-size="${round(size)}"${bold ? ' font-weight="700"' : ''} text-anchor="${anchor}" textLength="${round(long)}" lengthAdjust="spacingAndGlyphs" fill="${ink}"${turned}>${escaped(text)}</text>`;
  }
  const { d, fill, line, width, dash } = item;
  const box = boxOf(item);
  return [
    `<path d="${d}" fill="${fill ?? 'none'}" fill-rule="evenodd"`,
    line === null ? '' : ` stroke="${line}" stroke-width="${round(width)}" stroke-linejoin="round"`,
    dash === null ? '' : ` stroke-dasharray="${dash.map(round).join(' ')}"`,
    box === null ? '' : ` clip-path="url(#${clips.get(box) ?? ''})"`,
    '/>',
  ].join('');
}

const round = (value: number): number => Math.round(value * 1000) / 1000;

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
