import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { colourOf, type Paint } from '../section/paint.ts';
import type { Mark } from '../section/marks.ts';
import { INK, path, rect, text, WHITE } from './pen.ts';

/** A drawing of marks in pixels, such as the camera's picture. */
export interface Drawn {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly levels: number;
}

/** A drawing of pixels on the page: as large as fits the box, in its upper left corner, cut off at its own edge. */
export function drawnItems(
  drawn: Drawn,
  box: PageBox,
): { readonly items: readonly PageItem[]; readonly frame: PageBox } {
  const scale = Math.min(box.width / drawn.width, box.height / drawn.height);
  const frame: PageBox = { x: box.x, y: box.y, width: drawn.width * scale, height: drawn.height * scale };
  const inkOf = (paint: Paint, opacity: number) =>
    faded(isCoral(paint) ? INK : colourOf(paint, 'light', drawn.levels), opacity);
  const items = drawn.marks.map((mark): PageItem => {
    if (mark.kind === 'words')
      return text(frame.x + mark.x * scale, frame.y + mark.y * scale, mark.text, {
        size: Math.max(2.2, mark.size * scale),
        bold: mark.weight >= 600,
        anchor: mark.anchor,
        ink: inkOf(mark.fill, 1),
        turn: mark.turn,
      });
    const { d, fill, line, width, dash, opacity } = mark;
    return path(movedPath(d, scale, frame.x, frame.y), {
      // Patterns of a screen are lines too fine for paper.
      fill: fill === null || (typeof fill === 'object' && 'pattern' in fill) ? null : inkOf(fill, opacity),
      line: line === null ? null : inkOf(line, opacity),
      width: Math.max(0.1, width * scale),
      dash: dash === null ? null : dash.split(/[\s,]+/u).map((one) => Number(one) * scale),
      clip: frame,
    });
  });
  return {
    items: [rect(frame, { fill: WHITE }), ...items, rect(frame, { line: INK, width: 0.35 })],
    frame,
  };
}

/** Paper has one ink. */
const isCoral = (paint: Paint): boolean => paint === 'coralText' || paint === 'coralLine';

/** A colour on white paper as strong as its opacity. */
function faded(colour: string, opacity: number): string {
  if (opacity >= 1) return colour;
  const part = (at: number): string => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16);
    return Math.round(255 + (value - 255) * opacity)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${part(1)}${part(3)}${part(5)}`;
}

/** How many numbers a command of the path language takes, and which of them are x or y; an arc has others first. */
const ARC = 7;

/** A path, scaled and moved. */
function movedPath(d: string, scale: number, dx: number, dy: number): string {
  const round = (value: number): string => String(Math.round(value * 1000) / 1000);
  return d.replaceAll(/([MLQCAHVZ])([^MLQCAHVZ]*)/giu, (_, command: string, rest: string) => {
    // Small letters go on from where the pen is: only their size changes.
    const isFrom = command === command.toLowerCase();
    const [x, y] = isFrom ? [0, 0] : [dx, dy];
    const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/giu) ?? []).map(Number);
    const kind = command.toUpperCase();
    const moved = numbers.map((value, at) => {
      if (kind === 'H') return value * scale + x;
      if (kind === 'V') return value * scale + y;
      if (kind !== 'A') return value * scale + (at % 2 === 0 ? x : y);
      const turn = at % ARC;
      if (turn < 2) return value * scale;
      if (turn < 5) return value;
      return value * scale + (turn === 5 ? x : y);
    });
    return `${command}${moved.map(round).join(' ')}`;
  });
}
