import type { Sketch, SketchPlate } from '../../editor/tools/chart.ts';
import type { Sheet, Spot } from '../sheet.ts';

/** How far a dimension stands off what it measures, and how far its tick reaches, px. */
const OFF = 22;
const TICK = 4;
/** A line shorter than this has no dimension beside it: its plate alone stands there, px. */
const SHORT = 30;

export type SizeOf = (text: string) => { readonly width: number; readonly height: number };

export interface DimensionLines {
  /** `d` of the lines with their witnesses, and of the 45° ticks at their ends. */
  readonly lines: string;
  readonly ticks: string;
  /** Where the plate of each dimension stands. */
  readonly middles: ReadonlyMap<SketchPlate, Spot>;
}

/**
 * The dimensions of a sketch, drawn beside what they measure: on the side on which their plate was asked, else away from
 * the middle of what is drawn.
 */
export function dimensionLines(
  sheet: Sheet,
  sketch: Pick<Sketch, 'lines' | 'plates'> | null,
): DimensionLines {
  const middles = new Map<SketchPlate, Spot>();
  let [lines, ticks] = ['', ''];
  const spots = (sketch?.lines ?? []).flatMap(({ points }) =>
    points.flatMap((point) => sheet.spotFromSite(point) ?? []),
  );
  const middle = middleOf(spots);
  for (const plate of sketch?.plates ?? []) {
    const [a, b] = (plate.between ?? []).map((point) => sheet.spotFromSite(point));
    if (!a || !b) continue;
    const run = Math.hypot(b.x - a.x, b.y - a.y);
    const half = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    if (run < SHORT) {
      middles.set(plate, { x: half.x, y: half.y - OFF });
      continue;
    }
    const asked = sheet.spotFromSite(plate.at);
    const away = asked && Math.hypot(asked.x - half.x, asked.y - half.y) > 2 ? asked : null;
    const side = { x: -(b.y - a.y) / run, y: (b.x - a.x) / run };
    const towards = away
      ? (away.x - half.x) * side.x + (away.y - half.y) * side.y
      : middle
        ? (half.x - middle.x) * side.x + (half.y - middle.y) * side.y
        : 1;
    const sign = towards < 0 ? -OFF : OFF;
    const off = { x: side.x * sign, y: side.y * sign };
    const [c, d] = [
      { x: a.x + off.x, y: a.y + off.y },
      { x: b.x + off.x, y: b.y + off.y },
    ];
    lines += `M${at(a)}L${at(c)}L${at(d)}L${at(b)}`;
    const along = { x: ((b.x - a.x) / run) * TICK, y: ((b.y - a.y) / run) * TICK };
    for (const end of [c, d])
      ticks += `M${at({ x: end.x - along.x + along.y, y: end.y - along.y - along.x })}L${at({ x: end.x + along.x - along.y, y: end.y + along.y + along.x })}`;
    middles.set(plate, { x: half.x + off.x, y: half.y + off.y });
  }
  return { lines, ticks, middles };
}

const at = ({ x, y }: Spot): string => `${x.toFixed(1)},${y.toFixed(1)}`;

const middleOf = (spots: readonly Spot[]): Spot | null =>
  spots.length === 0
    ? null
    : {
        x: spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
        y: spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
      };

interface Placed {
  readonly plate: SketchPlate;
  /** Its middle, px. */
  readonly x: number;
  readonly y: number;
}

/** From the spot that a word is said of, px. */
const BESIDE = 14;
const GAP = 3;

/** Where the plates of a sketch stand: dimensions at their middles, words beside their spots; none over another, as far as there is room. */
export function platePlaces(
  sheet: Sheet,
  { plates }: Pick<Sketch, 'plates'>,
  middles: ReadonlyMap<SketchPlate, Spot>,
  sizeOf: SizeOf,
): Placed[] {
  const placed: (Placed & { readonly width: number; readonly height: number })[] = [];
  const inOrder = plates.toSorted((a, b) => Number(middles.has(b)) - Number(middles.has(a)));
  for (const plate of inOrder) {
    const { width, height } = sizeOf(plate.text);
    const fixed = middles.get(plate);
    const spot = fixed ?? sheet.spotFromSite(plate.at);
    if (!spot) continue;
    const [w, h] = [width / 2 + BESIDE, height / 2 + BESIDE];
    const tries: Spot[] = fixed
      ? [fixed]
      : [
          { x: spot.x - w, y: spot.y - h },
          { x: spot.x - w, y: spot.y + h },
          { x: spot.x + w, y: spot.y - h },
          { x: spot.x - w, y: spot.y - h - height - GAP },
          { x: spot.x + w, y: spot.y - h - height - GAP },
          { x: spot.x + w, y: spot.y + h + 16 },
        ];
    const clear = ({ x, y }: Spot): boolean =>
      x > width / 2 &&
      x < sheet.width - width / 2 &&
      y > height / 2 &&
      y < sheet.height - height / 2 &&
      placed.every(
        (other) =>
          Math.abs(other.x - x) > (other.width + width) / 2 + GAP - 1 ||
          Math.abs(other.y - y) > (other.height + height) / 2 + GAP - 1,
      );
    const free = tries.find(clear);
    // What has no room is left out rather than laid over another; the strip says it too.
    if (free) placed.push({ plate, ...free, width, height });
  }
  return placed;
}
