import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageInk, PageItem, PagePath, PageText } from '../../exchange/paper/page.ts';
import { ink } from '../ink.ts';
import { printable, textWidth } from './letters.ts';

const { ink: INK_COLOUR, ink2, saffron, cardSouth, cardEast } = ink.light;

/** Inks of paper: one colour, saffron, which also reads in grey. */
export const INK: PageInk = INK_COLOUR;
export const GREY: PageInk = ink2;
export const SAFFRON: PageInk = saffron;
export const WHITE: PageInk = '#FFFFFF';
/** A wall, an opening in it, a roof. */
export const WALL: PageInk = '#FBF8F1';
export const OPENING: PageInk = cardSouth;
export const ROOF: PageInk = cardEast;

/** Sizes of letters, mm. */
export const SIZE = { small: 2.3, body: 2.7, head: 3.5, title: 6.4 } as const;

const mm = (value: number): string => String(Math.round(value * 1000) / 1000);

/** A path through places. */
export const through = (places: readonly Vec2[], closed = false): string =>
  places.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('') + (closed ? 'Z' : '');

/** A circle as a path. */
export const circle = ([x, y]: Vec2, radius: number): string =>
  `M${mm(x - radius)} ${mm(y)}A${mm(radius)} ${mm(radius)} 0 1 0 ${mm(x + radius)} ${mm(y)}` +
  `A${mm(radius)} ${mm(radius)} 0 1 0 ${mm(x - radius)} ${mm(y)}Z`;

/** An arc of a circle, from one bearing on the page to another, ° clockwise from straight right. */
export function arc([x, y]: Vec2, radius: number, from: number, to: number): string {
  const at = (angle: number): Vec2 => {
    const angleRad = (angle * Math.PI) / 180;
    return [x + radius * Math.cos(angleRad), y + radius * Math.sin(angleRad)];
  };
  const [a, b] = [at(from), at(to)];
  const isLarge = Math.abs(to - from) > 180 ? 1 : 0;
  return `M${mm(a[0])} ${mm(a[1])}A${mm(radius)} ${mm(radius)} 0 ${isLarge} ${to > from ? 1 : 0} ${mm(b[0])} ${mm(b[1])}`;
}

export const path = (d: string, rest: Partial<Omit<PagePath, 'kind' | 'd'>>): PagePath => ({
  kind: 'path',
  d,
  fill: null,
  line: null,
  width: 0.2,
  dash: null,
  clip: null,
  ...rest,
});

export const rect = (
  { x, y, width, height }: PageBox,
  rest: Partial<Omit<PagePath, 'kind' | 'd'>>,
): PagePath =>
  path(
    through(
      [
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ],
      true,
    ),
    rest,
  );

/** A line of text; letters that paper lacks are replaced. */
export const text = (
  x: number,
  y: number,
  words: string,
  rest: Partial<Omit<PageText, 'kind' | 'x' | 'y' | 'text' | 'long'>> = {},
): PageText => {
  const plain = printable(words);
  const { size = SIZE.body, bold = false } = rest;
  return {
    kind: 'text',
    x,
    y,
    text: plain,
    long: textWidth(plain, size, bold),
    size,
    bold,
    anchor: 'start',
    ink: INK,
    turn: 0,
    ...rest,
  };
};

/** How far letters reach above their baseline and below, as shares of the size: those of the standard fonts. */
const ASCENT = 0.74;
const DESCENT = 0.21;

/** The box around a line of text, for turns by quarters. */
export function boxOfText({ x, y, long, size, anchor, turn }: PageText): PageBox {
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? long / 2 : long;
  const [up, down] = [ASCENT * size, DESCENT * size];
  if (turn === 0) return { x: x - back, y: y - up, width: long, height: up + down };
  // Read upwards: the baseline runs up the page.
  if (turn === -90) return { x: x - up, y: y + back - long, width: up + down, height: long };
  if (turn === 90) return { x: x - down, y: y - back, width: up + down, height: long };
  const radius = long;
  return { x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius };
}

/** Text on a plate of paper, so that it reads over lines. */
export function plated(words: PageText): readonly PageItem[] {
  const { x, y, width, height } = boxOfText(words);
  return [rect({ x: x - 0.4, y: y - 0.2, width: width + 0.8, height: height + 0.4 }, { fill: WHITE }), words];
}

/** The tick that ends a dimension: 45°. */
export const tick = ([x, y]: Vec2): PagePath =>
  path(
    through([
      [x - 0.9, y + 0.9],
      [x + 0.9, y - 0.9],
    ]),
    { line: INK, width: 0.4 },
  );

/** Lines at 45° within a box, as a cut wall has them. */
export function hatch({ x, y, width, height }: PageBox, pitch = 1.6): PagePath {
  const lines: string[] = [];
  for (let at = pitch; at < width + height; at += pitch) {
    const a: Vec2 = at <= width ? [x + at, y] : [x + width, y + at - width];
    const b: Vec2 = at <= height ? [x, y + at] : [x + at - height, y + height];
    lines.push(through([a, b]));
  }
  return path(lines.join(''), { line: GREY, width: 0.15 });
}

/** Whether two boxes overlap by more than a hair. */
export const boxesMeet = (a: PageBox, b: PageBox, gap = 0): boolean =>
  a.x < b.x + b.width + gap &&
  b.x < a.x + a.width + gap &&
  a.y < b.y + b.height + gap &&
  b.y < a.y + a.height + gap;
