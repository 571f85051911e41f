import type { Vec2 } from '../base/vector.ts';
import { chainSegments } from './chain.ts';
import { crossingOf, refineCurve, settleOn, type Field } from './curve.ts';

/** The part of a plane in which contours are sought: a sector about the point below the lens. Plane coordinates, m; bearings °. */
export interface Sector {
  readonly foot: Vec2;
  /** From the plane's u axis, towards its v axis; a span of 360 goes all the way round. */
  readonly start: number;
  readonly span: number;
  readonly least: number;
  readonly greatest: number;
}

export interface Contour {
  /** Index into the thresholds. */
  readonly band: number;
  /** a, b of each point in order; a closed line repeats its first. */
  readonly points: Float64Array;
}

/** How finely lines are sought. */
export interface Grain {
  /** ° between the bearings of the grid. */
  readonly bearing: number;
  /** From one radius of the grid to the next. */
  readonly ratio: number;
  /** How far a chord may lie off the curve, m. */
  readonly sagitta: number;
}

export interface Sought {
  readonly sector: Sector;
  /** px/m at plane coordinates; null where there is no image. */
  readonly density: Field;
  /** Whether a point counts as seen. */
  readonly seen: (a: number, b: number) => boolean;
  /** px/m. */
  readonly thresholds: readonly number[];
  readonly grain: Grain;
}

/**
 * The lines on a plane along which density equals a threshold, inside what is seen.
 * Marches triangles of a polar grid about the foot, moves each point onto the curve, and halves chords until they lie
 * within the sagitta. Points are on the curve to 1e-6 of the threshold.
 */
export function contours({ sector, density, seen, thresholds, grain }: Sought): Contour[] {
  const grid = polarGrid(sector, density, grain);
  return thresholds.flatMap((threshold, band) =>
    marched(grid, density, threshold).flatMap((line) => {
      const curve = refineCurve(line, density, threshold, grain.sagitta);
      return clipped(curve, seen, density, threshold).map((points) => ({
        band,
        points: Float64Array.from(points),
      }));
    }),
  );
}

interface PolarGrid {
  readonly columns: number;
  readonly rows: number;
  readonly places: Float64Array;
  /** NaN where there is no image. */
  readonly values: Float64Array;
}

function polarGrid({ foot, start, span, least, greatest }: Sector, density: Field, grain: Grain): PolarGrid {
  const columns = Math.max(2, Math.ceil(span / grain.bearing)) + 1;
  const rows = Math.max(2, Math.ceil(Math.log(greatest / least) / Math.log(grain.ratio))) + 1;
  const places = new Float64Array(columns * rows * 2);
  const values = new Float64Array(columns * rows);
  for (let i = 0; i < columns; i += 1) {
    const angleRad = ((start + (span * i) / (columns - 1)) * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
    for (let j = 0; j < rows; j += 1) {
      const radius = least * (greatest / least) ** (j / (rows - 1));
      const at = j * columns + i;
      places[at * 2] = foot[0] + radius * cos;
      places[at * 2 + 1] = foot[1] + radius * sin;
      values[at] = density(places[at * 2] ?? 0, places[at * 2 + 1] ?? 0) ?? Number.NaN;
    }
  }
  return { columns, rows, places, values };
}

/** Lines of points on the grid's edges, each moved onto the curve. */
function marched(grid: PolarGrid, density: Field, threshold: number): Vec2[][] {
  const { columns, rows, values, places } = grid;
  const points = new Map<number, Vec2>();
  const segments: [number, number][] = [];
  // An edge is named by its lower node and where it leads: along, outwards or across.
  const crossing = (edge: number, from: number, to: number): number | null => {
    const [v, w] = [(values[from] ?? 0) - threshold, (values[to] ?? 0) - threshold];
    if (v >= 0 === w >= 0) return null;
    if (!points.has(edge)) {
      const a: Vec2 = [places[from * 2] ?? 0, places[from * 2 + 1] ?? 0];
      const b: Vec2 = [places[to * 2] ?? 0, places[to * 2 + 1] ?? 0];
      points.set(edge, crossingOf(a, b, v, w, density, threshold));
    }
    return edge;
  };
  const triangle = (edges: readonly (number | null)[]): void => {
    const [a, b] = edges.filter((edge) => edge !== null);
    if (a !== undefined && b !== undefined) segments.push([a, b]);
  };
  for (let j = 0; j + 1 < rows; j += 1) {
    for (let i = 0; i + 1 < columns; i += 1) {
      const [p, q] = [j * columns + i, j * columns + i + 1];
      const [r, s] = [p + columns, q + columns];
      if (Number.isNaN((values[p] ?? 0) + (values[q] ?? 0) + (values[r] ?? 0) + (values[s] ?? 0))) continue;
      const across = crossing(p * 3 + 2, p, s);
      triangle([crossing(p * 3, p, q), crossing(q * 3 + 1, q, s), across]);
      triangle([across, crossing(r * 3, r, s), crossing(p * 3 + 1, p, r)]);
    }
  }
  return chainSegments(segments).map((chain) =>
    chain.flatMap((edge): Vec2[] => {
      const point = points.get(edge);
      return point ? [point] : [];
    }),
  );
}

/** The stretches of a curve that are seen, their ends found to a tenth of a millimetre. */
function clipped(
  curve: readonly Vec2[],
  seen: (a: number, b: number) => boolean,
  density: Field,
  threshold: number,
): number[][] {
  const parts: number[][] = [];
  let part: number[] | null = null;
  curve.forEach((point, i) => {
    const before = curve[i - 1];
    const inside = seen(point[0], point[1]);
    if (before && inside !== (part !== null)) {
      const [x, y] = inside ? edgeOf(point, before, seen) : edgeOf(before, point, seen);
      const end = settleOn([x, y], [before[1] - point[1], point[0] - before[0]], density, threshold);
      if (part) part.push(...end);
      else {
        part = [...end];
        parts.push(part);
      }
    }
    if (!inside) part = null;
    else if (part) part.push(...point);
    else {
      part = [...point];
      parts.push(part);
    }
  });
  return parts.filter((points) => points.length >= 4);
}

/** The last seen place on the way from a seen point to an unseen one. */
function edgeOf(from: Vec2, to: Vec2, seen: (a: number, b: number) => boolean): Vec2 {
  let [low, high] = [0, 1];
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  while ((high - low) * size > 1e-4) {
    const middle = (low + high) / 2;
    if (seen(from[0] + (to[0] - from[0]) * middle, from[1] + (to[1] - from[1]) * middle)) low = middle;
    else high = middle;
  }
  return [from[0] + (to[0] - from[0]) * low, from[1] + (to[1] - from[1]) * low];
}
