import type { GridGround } from './ground.ts';
import { modelFault } from './modelFault.ts';
import type { MadeTerrain, TerrainBoard } from './terrain.ts';
import { filledHeights } from './terrainFill.ts';
import { heightsOf, solidBelow } from './terrainSolid.ts';

/**
 * The ground of a grid: two triangles between each four centres of cells, parted from south-west to north-east. Beyond the
 * outermost centres it goes on level. Cells without height get that of the nearest one with it, and a note says how many.
 * Cost: linear in cells.
 */
export function terrainOfGrid(
  grid: Pick<GridGround, 'left' | 'bottom' | 'cell' | 'columns' | 'rows' | 'heights'>,
  board: TerrainBoard,
): MadeTerrain {
  const { columns, rows, cell } = grid;
  const filled = filledHeights(grid.heights, columns, rows);
  const xs = linesAcross(grid.left, cell, columns, board.left, board.right);
  const ys = linesAcross(grid.bottom, cell, rows, board.bottom, board.top);
  const [across, up] = [xs.places.length, ys.places.length];
  const positions = new Float64Array(across * up * 3);
  for (let j = 0; j < up; j += 1) {
    for (let i = 0; i < across; i += 1) {
      const height = filled.heights[(ys.of[j] ?? 0) * columns + (xs.of[i] ?? 0)] ?? 0;
      positions.set([xs.places[i] ?? 0, ys.places[j] ?? 0, height], (j * across + i) * 3);
    }
  }
  const triangles = new Uint32Array((across - 1) * (up - 1) * 6);
  for (let j = 0, to = 0; j + 1 < up; j += 1) {
    for (let i = 0; i + 1 < across; i += 1, to += 6) {
      const a = j * across + i;
      triangles.set([a, a + 1, a + across + 1, a, a + across + 1, a + across], to);
    }
  }
  const surface = { positions, triangles, ring: ringAround(across, up) };
  const z = (i: number, j: number) => positions[(j * across + i) * 3 + 2] ?? 0;
  return {
    terrain: {
      ...heightsOf(positions),
      solid: solidBelow(surface),
      surface: triangles.length / 3,
      heightAt(x, y) {
        const [i, j] = [xs.before(x), ys.before(y)];
        const [s, t] = [xs.share(x, i), ys.share(y, j)];
        const [near, far] = [z(i, j), z(i + 1, j + 1)];
        // Straight across the half of the cell that holds the place.
        return s >= t
          ? (1 - s) * near + (s - t) * z(i + 1, j) + t * far
          : (1 - t) * near + (t - s) * z(i, j + 1) + s * far;
      },
    },
    faults:
      filled.unknown === 0
        ? []
        : [
            modelFault(
              filled.unknown === columns * rows ? 'ground.unknown' : 'ground.filled',
              'the ground',
              ['heights'],
              {
                given: filled.unknown,
              },
            ),
          ],
  };
}

/** Where corners stand along one axis, and which line of cells each has its height from. */
interface Lines {
  readonly places: Float64Array;
  readonly of: Int32Array;
  /** The last place at or before x, with one after it. */
  before(x: number): number;
  /** How far x is from one place to the next, 0 to 1. */
  share(x: number, from: number): number;
}

/** The centres of cells, with one place more at either end where the board goes on, or where one centre is all there is. */
function linesAcross(start: number, cell: number, count: number, low: number, high: number): Lines {
  const [first, last] = [start + cell / 2, start + (count - 0.5) * cell];
  const ahead = low < first || count === 1 ? 1 : 0;
  const after = high > last || count === 1 ? 1 : 0;
  const places = new Float64Array(count + ahead + after);
  const of = new Int32Array(places.length);
  places.forEach((_, at) => {
    const line = Math.min(count - 1, Math.max(0, at - ahead));
    of[at] = line;
    places[at] = start + (line + 0.5) * cell;
  });
  if (ahead === 1) places[0] = Math.min(low, first - cell / 2);
  if (after === 1) places[places.length - 1] = Math.max(high, last + cell / 2);
  const end = places.length - 2;
  return {
    places,
    of,
    before(x) {
      let at = Math.min(end, Math.max(0, Math.floor((x - first) / cell) + ahead));
      // The division may be a bit off at a place itself.
      if (at < end && x >= (places[at + 1] ?? 0)) at += 1;
      if (at > 0 && x < (places[at] ?? 0)) at -= 1;
      return at;
    },
    share(x, from) {
      const [a, b] = [places[from] ?? 0, places[from + 1] ?? 1];
      return Math.min(1, Math.max(0, (x - a) / (b - a)));
    },
  };
}

/** Ids of the corners around a grid of them, counter-clockwise. */
function ringAround(across: number, up: number): number[] {
  const ring: number[] = [];
  for (let i = 0; i + 1 < across; i += 1) ring.push(i);
  for (let j = 0; j + 1 < up; j += 1) ring.push(j * across + across - 1);
  for (let i = across - 1; i > 0; i -= 1) ring.push((up - 1) * across + i);
  for (let j = up - 1; j > 0; j -= 1) ring.push(j * across);
  return ring;
}
