import type { Mark, Stroke, Words } from '../../draw/section/marks.ts';
import { colourOf, PATTERN_LINES, type Paint, type Pattern } from '../../draw/section/paint.ts';
import type { Sheet } from '../../draw/sum/sumSheet.ts';

/** Pixels of the picture for one of the sheet, so that it stays sharp where it is pasted. */
const SHARP = 2;
const FONT = '"National Park", "Helvetica Neue", Arial, sans-serif';
const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

/** Paints a sheet in paper's inks. */
export function paintSheet(canvas: HTMLCanvasElement, { width, height, marks, drawing, at }: Sheet): void {
  canvas.width = width * SHARP;
  canvas.height = height * SHARP;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser has no canvas');
  const brush = brushOf(context, drawing.levels);
  context.scale(SHARP, SHARP);
  context.fillStyle = brush.colour('paper');
  context.fillRect(0, 0, width, height);
  for (const mark of marks) brush.mark(mark);
  context.translate(at[0], at[1]);
  const { left, right, foot } = drawing.scene;
  const clip = new Path2D();
  clip.rect(Math.max(0, left), 0, Math.min(drawing.view.width, right) - Math.max(0, left), foot);
  for (const mark of drawing.marks) {
    context.save();
    if (mark.kind === 'stroke' && mark.clipped) context.clip(clip);
    brush.mark(mark);
    context.restore();
  }
}

interface Brush {
  colour(paint: Paint): string;
  mark(mark: Mark): void;
}

function brushOf(context: CanvasRenderingContext2D, levels: number): Brush {
  const colour = (paint: Paint): string => colourOf(paint, 'light', levels);
  const fillOf = (paint: Paint): string | CanvasPattern =>
    typeof paint === 'object' && 'pattern' in paint
      ? (hatch(context, paint.pattern, colour(paint)) ?? colour(paint))
      : colour(paint);
  return {
    colour,
    mark: (mark) => {
      context.save();
      if (mark.kind === 'words') writeWords(context, mark, colour);
      else drawStroke(context, mark, colour, fillOf);
      context.restore();
    },
  };
}

function drawStroke(
  context: CanvasRenderingContext2D,
  { d, fill, line, width, dash, opacity }: Stroke,
  colour: Brush['colour'],
  fillOf: (paint: Paint) => string | CanvasPattern,
): void {
  const path = new Path2D(d);
  context.globalAlpha = opacity;
  if (fill !== null) {
    context.fillStyle = fillOf(fill);
    context.fill(path, 'evenodd');
  }
  if (line === null) return;
  context.strokeStyle = colour(line);
  context.lineWidth = width;
  context.lineJoin = 'round';
  if (dash !== null) context.setLineDash(dash.split(' ').map(Number));
  context.stroke(path);
}

function writeWords(
  context: CanvasRenderingContext2D,
  { x, y, text, size, weight, anchor, fill, halo, turn }: Words,
  colour: Brush['colour'],
): void {
  context.translate(x, y);
  context.rotate((turn * Math.PI) / 180);
  context.font = `${weight} ${size}px ${FONT}`;
  context.textAlign = ALIGN[anchor];
  if (halo) {
    context.strokeStyle = colour('paper');
    context.lineWidth = 3.5;
    context.lineJoin = 'round';
    context.strokeText(text, 0, 0);
  }
  context.fillStyle = colour(fill);
  context.fillText(text, 0, 0);
}

/** The lines of a pattern as a tile; null where the browser makes none. */
function hatch(context: CanvasRenderingContext2D, pattern: Pattern, colour: string): CanvasPattern | null {
  const { side, d, width, dash } = PATTERN_LINES[pattern];
  const tile = document.createElement('canvas');
  const fine = 4;
  tile.width = tile.height = Math.round(side * fine);
  const brush = tile.getContext('2d');
  if (brush === null) return null;
  brush.scale(fine, fine);
  brush.strokeStyle = colour;
  brush.lineWidth = width;
  if (dash !== undefined) brush.setLineDash(dash.split(' ').map(Number));
  brush.stroke(new Path2D(d));
  const made = context.createPattern(tile, 'repeat');
  made?.setTransform(new DOMMatrix().scale(1 / fine));
  return made;
}
