/** A point of a contour on the window, px, and whether a label may cover it: in plain sight and away from the edge. */
export interface SheetPoint {
  readonly x: number;
  readonly y: number;
  readonly open: boolean;
}

/** Where a label fits on a line: its middle, the turn that keeps it upright (°, clockwise on the window), how far the line bends below it. */
export interface Anchor {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly bend: number;
}

/** Room on either side of the text, px. */
const MARGIN = 6;
const STEP = 10;

/**
 * Places along a line where a label of some width fits, the straightest first.
 * @param width of the label, px
 * @param most  the greatest bend, px: how far the line may leave the chord under the label
 */
export function contourAnchors(line: readonly SheetPoint[], width: number, most: number): Anchor[] {
  const lengths = [0];
  line.forEach((point, i) => {
    const before = line[i - 1];
    if (before) lengths.push((lengths[i - 1] ?? 0) + Math.hypot(point.x - before.x, point.y - before.y));
  });
  const total = lengths.at(-1) ?? 0;
  const span = width + 2 * MARGIN;
  const anchors: Anchor[] = [];
  let first = 0;
  for (let start = 0; start + span <= total; start += STEP) {
    while ((lengths[first + 1] ?? Infinity) <= start) first += 1;
    const anchor = anchorAt(line, lengths, first, start, span);
    if (anchor && anchor.bend <= most) anchors.push(anchor);
  }
  return anchors.sort((a, b) => a.bend - b.bend);
}

function anchorAt(
  line: readonly SheetPoint[],
  lengths: readonly number[],
  first: number,
  start: number,
  span: number,
): Anchor | null {
  const from = pointAt(line, lengths, first, start);
  let last = first;
  while ((lengths[last + 1] ?? Infinity) < start + span) last += 1;
  const to = pointAt(line, lengths, last, start + span);
  if (!from || !to || !from.open || !to.open) return null;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  if (chord < span * 0.8) return null;
  let [low, high] = [0, 0];
  for (let i = first + 1; i <= last; i += 1) {
    const point = line[i];
    if (!point || !point.open) return null;
    const off = ((point.x - from.x) * dy - (point.y - from.y) * dx) / chord;
    [low, high] = [Math.min(low, off), Math.max(high, off)];
  }
  const aside = (low + high) / 2;
  const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  return {
    x: (from.x + to.x) / 2 + (dy / chord) * aside,
    y: (from.y + to.y) / 2 - (dx / chord) * aside,
    angle: turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn,
    bend: high - low,
  };
}

/** The point at a length along a line, on the piece that begins at `index`. */
function pointAt(
  line: readonly SheetPoint[],
  lengths: readonly number[],
  index: number,
  at: number,
): SheetPoint | null {
  const [a, b] = [line[index], line[index + 1]];
  if (!a) return null;
  if (!b) return a;
  const [start, end] = [lengths[index] ?? 0, lengths[index + 1] ?? 0];
  const t = end > start ? (at - start) / (end - start) : 0;
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, open: a.open && b.open };
}
