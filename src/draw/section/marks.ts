import type { Vec2 } from '../../base/vector.ts';
import type { Plate } from '../labelPlaces.ts';
import type { Paint } from './paint.ts';

/** A line or a filled shape; px from the drawing's top left corner. */
export interface Stroke {
  readonly kind: 'stroke';
  readonly d: string;
  readonly fill: Paint | null;
  readonly line: Paint | null;
  readonly width: number;
  readonly dash: string | null;
  readonly opacity: number;
  /** Whether it ends at the edge of the part above the rulers. */
  readonly clipped: boolean;
}

/** A line of text; y is its baseline. */
export interface Words {
  readonly kind: 'words';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly weight: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly fill: Paint;
  /** Whether paper stands around it, so that it reads over lines. */
  readonly halo: boolean;
  /** Turned about its place, clockwise, °. */
  readonly turn: number;
}

export type Mark = Stroke | Words;

/** A shape with what is not said left out. */
export const stroke = (d: string, rest: Partial<Omit<Stroke, 'kind' | 'd'>>): Stroke => ({
  kind: 'stroke',
  d,
  fill: null,
  line: null,
  width: 1,
  dash: null,
  opacity: 1,
  clipped: false,
  ...rest,
});

/** A line of text with what is not said left out. */
export const words = (
  x: number,
  y: number,
  text: string,
  rest: Partial<Omit<Words, 'kind' | 'x' | 'y' | 'text'>> = {},
): Words => ({
  kind: 'words',
  x,
  y,
  text,
  size: 12,
  weight: 400,
  anchor: 'start',
  fill: 'ink',
  halo: false,
  turn: 0,
  ...rest,
});

/** To a hundredth of a pixel, so that drawings are short and the same everywhere. */
export const px = (value: number): string => String(Math.round(value * 100) / 100);

/** A path through places; closed where it is said. */
export const pathOf = (places: readonly Vec2[], closed = false): string =>
  places.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('') + (closed ? 'Z' : '');

/** How wide a text is, px, a little on the wide side: no glyph is measured, so that paper and screen place alike. */
export const widthOf = (text: string, size: number, weight = 400): number =>
  text.length * size * (weight >= 600 ? 0.57 : 0.54);

/** The box of a line of text. */
export function plateOf({ x, y, text, size, weight, anchor, turn }: Words): Plate {
  const width = widthOf(text, size, weight);
  const shift = anchor === 'start' ? width / 2 : anchor === 'end' ? -width / 2 : 0;
  const rise = -size * 0.34;
  const turnRad = (turn * Math.PI) / 180;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return {
    x: x + shift * c - rise * s,
    y: y + shift * s + rise * c,
    width,
    height: size * 1.05,
    angle: turn,
  };
}
