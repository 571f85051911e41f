/*
 * A printed page as data: what screen, SVG and PDF all draw. Millimetres from the page's top left corner, x right, y down.
 */

/** A colour, #RRGGBB. */
export type PageInk = string;

export interface PageBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A line or a filled shape. */
export interface PagePath {
  readonly kind: 'path';
  /** In the path language of SVG, absolute commands, mm. */
  readonly d: string;
  readonly fill: PageInk | null;
  readonly line: PageInk | null;
  /** mm */
  readonly width: number;
  /** Lengths of dashes and gaps in turn, mm. */
  readonly dash: readonly number[] | null;
  /** What lies outside it is not drawn. */
  readonly clip: PageBox | null;
}

/** A line of text, of the characters that `printable` leaves. */
export interface PageText {
  readonly kind: 'text';
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly text: string;
  /** How long it is in the letters of Helvetica, mm: whoever has others squeezes them into it. */
  readonly long: number;
  /** Height of the letters' square, mm. */
  readonly size: number;
  readonly bold: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly ink: PageInk;
  /** Turned about its place, clockwise, °. */
  readonly turn: number;
}

export type PageItem = PagePath | PageText;

export interface Page {
  readonly width: number;
  readonly height: number;
  /** "Drill card C1, Kiln Cottage": the file's title. */
  readonly title: string;
  /** The whole in sentences, for those who do not see it. */
  readonly sentence: string;
  /** From the back. */
  readonly items: readonly PageItem[];
}
