import {
  clip,
  degrees,
  endPath,
  FillRule,
  PDFDocument,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  StandardFonts,
  type Color,
  type PDFFont,
  type PDFPage,
} from '@cantoo/pdf-lib';
import type { Page, PageInk, PagePath, PageText } from './page.ts';

/** Points of 1/72 inch in a millimetre. */
const POINTS = 72 / 25.4;

/**
 * Pages as one PDF, true to scale, a page each, with text that can be selected. The same pages give the same bytes: no date
 * is written but what stands on a page. Letters are those of the standard fonts, which every reader has.
 * @throws Error on a character that `printable` would not have left
 */
export async function pagesPdf(pages: readonly Page[]): Promise<Uint8Array> {
  const file = await PDFDocument.create({ updateMetadata: false });
  file.setTitle(pages[0]?.title ?? '', { showInWindowTitleBar: true });
  file.setProducer('Soffit');
  file.setLanguage('en-GB');
  const fonts = {
    plain: await file.embedFont(StandardFonts.Helvetica),
    bold: await file.embedFont(StandardFonts.HelveticaBold),
  };
  for (const { width, height, items } of pages) {
    const page = file.addPage([width * POINTS, height * POINTS]);
    for (const item of items)
      if (item.kind === 'path') drawPath(page, item);
      else drawText(page, item, item.bold ? fonts.bold : fonts.plain);
  }
  return file.save();
}

function drawPath(page: PDFPage, { d, fill, line, width, dash, clip: box }: PagePath): void {
  if (box !== null)
    page.pushOperators(
      pushGraphicsState(),
      rectangle(
        box.x * POINTS,
        page.getHeight() - (box.y + box.height) * POINTS,
        box.width * POINTS,
        box.height * POINTS,
      ),
      clip(),
      endPath(),
    );
  page.drawSvgPath(d, {
    x: 0,
    y: page.getHeight(),
    scale: POINTS,
    fillRule: FillRule.EvenOdd,
    borderWidth: line === null ? 0 : width,
    ...(fill === null ? {} : { color: colourOf(fill) }),
    ...(line === null ? {} : { borderColor: colourOf(line) }),
    ...(dash === null ? {} : { borderDashArray: [...dash] }),
  });
  if (box !== null) page.pushOperators(popGraphicsState());
}

function drawText(page: PDFPage, { x, y, text, size, anchor, ink, turn }: PageText, font: PDFFont): void {
  const points = size * POINTS;
  const long = font.widthOfTextAtSize(text, points);
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? long / 2 : long;
  const turnRad = (turn * Math.PI) / 180;
  page.drawText(text, {
    x: x * POINTS - back * Math.cos(turnRad),
    y: page.getHeight() - y * POINTS + back * Math.sin(turnRad),
    size: points,
    font,
    color: colourOf(ink),
    rotate: degrees(-turn),
  });
}

function colourOf(ink: PageInk): Color {
  const part = (at: number) => Number.parseInt(ink.slice(at, at + 2), 16) / 255;
  return rgb(part(1), part(3), part(5));
}
