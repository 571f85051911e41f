import type { Page } from '../../exchange/paper/page.ts';
import type { PaperPort } from './paperPort.ts';

/** How long the frame with what is printed stays, ms: some browsers read it after `print` returns. */
const STAYS = 60_000;

/** Prints pages alone, true to scale, from a frame of their own, so that nothing of the window is printed with them. */
export async function printPages(paper: PaperPort, pages: readonly Page[]): Promise<void> {
  const [first] = pages;
  if (first === undefined) return;
  const drawings = await Promise.all(pages.map((page) => paper.svg(page)));
  document.querySelector('iframe[data-print-cards]')?.remove();
  const frame = document.createElement('iframe');
  frame.dataset['printCards'] = '';
  frame.title = 'Drill cards to print';
  frame.style.cssText = 'position:fixed;right:0;bottom:0;width:0;height:0;border:0';
  frame.srcdoc = printed(first, drawings);
  await new Promise((loaded) => {
    frame.addEventListener('load', loaded, { once: true });
    document.body.append(frame);
  });
  frame.contentWindow?.focus();
  frame.contentWindow?.print();
  window.setTimeout(() => frame.remove(), STAYS);
}

/** The pages as a document, one a sheet. */
const printed = ({ title, width, height }: Page, drawings: readonly string[]): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${title.replaceAll(/[<&]/gu, ' ')}</title>` +
  `<style>@page{size:${width}mm ${height}mm;margin:0}html,body{margin:0;background:#fff}` +
  `svg{display:block;break-after:page;break-inside:avoid}svg:last-child{break-after:auto}</style></head>` +
  `<body>${drawings.join('')}</body></html>`;
