import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { createCardMaker } from '../../../src/draw/card/cardOf.ts';
import { printable, textWidth } from '../../../src/draw/card/letters.ts';
import { path, text, through } from '../../../src/draw/card/pen.ts';
import type { PaperName } from '../../../src/draw/card/sheets.ts';
import type { Page, PageText } from '../../../src/exchange/paper/page.ts';
import { pagesPdf } from '../../../src/exchange/paper/pagePdf.ts';
import { pageSvg } from '../../../src/exchange/paper/pageSvg.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';
import { houseTurned, siteOf } from '../../draw/card/cardSites.ts';
import { wordFaults } from '../../draw/card/wordFaults.ts';
import { closeTo } from '../../draw/card/near.ts';

/* Read back by pdfjs-dist, which shares nothing with the library that writes. */

const POINTS = 72 / 25.4;

interface ReadText {
  readonly text: string;
  /** Of the baseline's start, mm from the page's top left corner. */
  readonly x: number;
  readonly y: number;
  readonly long: number;
  /** Which way it runs, as bearings do: 90 to the right, 0 up the page. */
  readonly runs: number;
}

interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
}

/** A matrix of six numbers, which the reader does not promise. */
function placeOf(matrix: readonly unknown[]): readonly number[] {
  return matrix.map(Number);
}

async function read(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const page = await file.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a = 0, b = 0, , , x = 0, y = 0] = placeOf(item.transform);
      const runs = (Math.atan2(a, b) * 180) / Math.PI;
      return [{ text: item.str, x: x / POINTS, y: (height - y) / POINTS, long: item.width / POINTS, runs }];
    });
    pages.push({ width: width / POINTS, height: height / POINTS, texts });
  }
  await file.loadingTask.destroy();
  return pages;
}

const pageOf = (items: Page['items']): Page => ({
  width: 210,
  height: 297,
  title: 'T',
  sentence: 'S',
  items,
});

/** Cards of a camera on a post that looks at a house, so that its picture has landmarks. */
function cards(papers: readonly PaperName[]): readonly Page[] {
  const plan = siteOf(
    [houseTurned(0)],
    { kind: 'pole', at: [4, -6], height: 3, reach: 0.3, facing: 20, diameter: 0.114, limits: NO_LIMITS },
    { pan: 10 },
  );
  const question = {
    target: { kind: 'ground', height: 0 },
    alone: null,
    situation: null,
    causes: 'quick',
  } as const;
  const assessment = runSteps(createSession().steps(plan, question, 1));
  const maker = createCardMaker();
  return papers.map((paper) => {
    const asked = { paper, courses: false, date: '25 November 2026' };
    const made = runSteps(maker.steps(plan, assessment, 'C', asked));
    if (made.page === null) throw new Error(made.why);
    return made.page;
  });
}

describe('a card as PDF', () => {
  test('has its numbers as text, on its paper, within the margins', async () => {
    const pages = cards(['a4', 'letter']);
    expect(pages.flatMap(wordFaults)).toEqual([]);
    const [a4, letter] = await read(await pagesPdf(pages));
    expect([a4?.width, a4?.height]).toEqual([closeTo(210, 3), closeTo(297, 3)]);
    expect([letter?.width, letter?.height]).toEqual([closeTo(215.9, 3), closeTo(279.4, 3)]);
    for (const page of [a4, letter]) {
      if (!page) throw new Error('no page');
      const all = page.texts
        .map(({ text: one }) => one)
        .join(' ')
        .replaceAll(/\s+/gu, ' ');
      // The root of 52 to both corners; heights; aim; and signs that must not be lost.
      for (const words of ['7211 from south-west corner', '3000 above ground', '20° down', '2688 × 1520'])
        expect(all).toContain(words);
      expect(all).toMatch(/a Door, left jamb, foot: \d+ % across, \d+ % down/u);
      for (const { text: words, x, y, long } of page.texts) {
        const where = { words, isIn: x > 10 && y > 10 && y < page.height - 10 };
        expect(where).toEqual({ words, isIn: true });
        expect(x + (words.startsWith('3000') ? 0 : long)).toBeLessThan(page.width - 10);
      }
    }
  });

  test('the same pages are the same bytes, without the day on which they were written', async () => {
    const page = pageOf([text(20, 30, 'Once')]);
    const [one, two] = [await pagesPdf([page]), await pagesPdf([page])];
    expect(one).toEqual(two);
    expect(new TextDecoder('latin1').decode(one)).not.toMatch(/CreationDate|ModDate/u);
  });
});

describe('words on paper', () => {
  test('stand where the page has them, however they are anchored and turned', async () => {
    const words: readonly PageText[] = [
      text(20, 30, 'start'),
      text(100, 40, 'middle', { anchor: 'middle' }),
      text(190, 50, 'end', { anchor: 'end' }),
      text(60, 100, 'upwards', { anchor: 'middle', turn: -90 }),
    ];
    const [page] = await read(await pagesPdf([pageOf(words)]));
    const by = new Map(page?.texts.map((one) => [one.text, one]));
    const at = (name: string) => [by.get(name)?.x, by.get(name)?.y].map((one) => Number(one));
    const long = (name: string) => by.get(name)?.long ?? 0;
    expect(at('start')).toEqual([closeTo(20, 2), closeTo(30, 2)]);
    expect(at('middle')).toEqual([closeTo(100 - long('middle') / 2, 2), closeTo(40, 2)]);
    expect(at('end')).toEqual([closeTo(190 - long('end'), 2), closeTo(50, 2)]);
    expect(by.get('start')?.runs).toBeCloseTo(90, 6);
    expect(by.get('upwards')?.runs).toBeCloseTo(0, 6);
    expect(at('upwards')[0]).toBeCloseTo(60, 2);
    expect(at('upwards')[1]).toBeCloseTo(100 + textWidth('upwards', words[3]?.size ?? 0) / 2, 1);
  });

  test('are as wide as the layout takes them to be', async () => {
    const samples = [
      'Wall 2.70 m ± 0.05, 45° right – “jamb”',
      'The quick brown fox jumps over the lazy dog: 0123456789',
      'Ä ö ü ß é ñ × ½ ² · … ’ €',
    ];
    const items = samples.flatMap((words, row) => [
      text(20, 30 + row * 10, words, { size: 4 }),
      text(20, 100 + row * 10, words, { size: 4, bold: true }),
    ]);
    const [page] = await read(await pagesPdf([pageOf(items)]));
    for (const words of samples)
      for (const bold of [false, true]) {
        // A reader tells a line in pieces where blanks are wide: what counts is where it ends.
        const row = (bold ? 100 : 30) + samples.indexOf(words) * 10;
        const pieces = page?.texts.filter(({ y }) => Math.abs(y - row) < 0.1) ?? [];
        const end = Math.max(...pieces.map(({ x, long }) => x + long));
        expect(
          pieces
            .map(({ text: one }) => one)
            .join('')
            .replaceAll(/\s/gu, ''),
        ).toBe(words.replaceAll(/\s/gu, ''));
        expect(end - 20).toBeCloseTo(textWidth(words, 4, bold), 1);
      }
  });

  test('lose no sign that a plan can bring: what paper lacks is told by another or by a question mark', async () => {
    const odd = 'Łódź → 2.70 m − ≥ 5 ″ Ω 家 🏠\u00A0ﬁ';
    const [page] = await read(await pagesPdf([pageOf([text(20, 30, odd)])]));
    const [told] = page?.texts.map(({ text: one }) => one.replaceAll(/\s+/gu, ' ')) ?? [];
    expect(told).toBe('Lódz - 2.70 m – at least 5 " ? ? ? fi');
    expect(printable(odd)).toBe(printable(printable(odd)));
  });
});

test('as SVG the page has its size in millimetres, its words, and nothing that is not escaped', () => {
  const svg = pageSvg({
    ...pageOf([
      text(20, 30, 'Smith & <Sons> "×"'),
      path(
        through([
          [0, 0],
          [5, 5],
        ]),
        { line: '#000000', clip: { x: 1, y: 2, width: 3, height: 4 } },
      ),
    ]),
    title: 'A & B',
  });
  expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
  expect(svg).toContain('>Smith &#38; &#60;Sons&#62; &#34;×&#34;</text>');
  expect(svg).toContain('<title>A &#38; B</title>');
  expect(svg).toContain('<clipPath id="clip0"><rect x="1" y="2" width="3" height="4"/></clipPath>');
});
