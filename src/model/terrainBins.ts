import type { TerrainBoard } from './terrain.ts';

/** Bins of a board, as many as triangles or so, each with the triangles that reach into it: finds the height at a place at once. */
export class TriangleBins {
  private readonly positions: Float64Array;
  private readonly triangles: Uint32Array;
  private readonly board: TerrainBoard;
  private readonly columns: number;
  private readonly rows: number;
  private readonly width: number;
  private readonly height: number;
  /** Where each bin's triangles begin in `members`. */
  private readonly starts: Int32Array;
  private readonly members: Int32Array;

  constructor(positions: Float64Array, triangles: Uint32Array, board: TerrainBoard) {
    this.positions = positions;
    this.triangles = triangles;
    this.board = board;
    const [width, height] = [
      Math.max(board.right - board.left, 1e-3),
      Math.max(board.top - board.bottom, 1e-3),
    ];
    const side = Math.sqrt((width * height) / Math.max(1, triangles.length / 3));
    this.columns = Math.min(1000, Math.max(1, Math.round(width / side)));
    this.rows = Math.min(1000, Math.max(1, Math.round(height / side)));
    this.width = width / this.columns;
    this.height = height / this.rows;
    this.starts = new Int32Array(this.columns * this.rows + 1);
    this.each((bin) => (this.starts[bin + 1] = (this.starts[bin + 1] ?? 0) + 1));
    for (let bin = 0; bin < this.columns * this.rows; bin += 1)
      this.starts[bin + 1] = (this.starts[bin + 1] ?? 0) + (this.starts[bin] ?? 0);
    this.members = new Int32Array(this.starts[this.columns * this.rows] ?? 0);
    const filled = this.starts.slice();
    this.each((bin, triangle) => {
      const to = filled[bin] ?? 0;
      this.members[to] = triangle;
      filled[bin] = to + 1;
    });
  }

  /** Height of the triangle that holds a place; of the nearest in its bin where rounding or the board's end leaves none. */
  heightAt(x: number, y: number): number {
    const column = inside(Math.floor((x - this.board.left) / this.width), this.columns);
    const row = inside(Math.floor((y - this.board.bottom) / this.height), this.rows);
    const bin = row * this.columns + column;
    const { positions, triangles, members } = this;
    let [best, height] = [-Infinity, 0];
    for (let at = this.starts[bin] ?? 0; at < (this.starts[bin + 1] ?? 0); at += 1) {
      const t = (members[at] ?? 0) * 3;
      const [a, b, c] = [(triangles[t] ?? 0) * 3, (triangles[t + 1] ?? 0) * 3, (triangles[t + 2] ?? 0) * 3];
      const [ax, ay] = [(positions[a] ?? 0) - x, (positions[a + 1] ?? 0) - y];
      const [bx, by] = [(positions[b] ?? 0) - x, (positions[b + 1] ?? 0) - y];
      const [cx, cy] = [(positions[c] ?? 0) - x, (positions[c + 1] ?? 0) - y];
      // Twice the areas between the place and each edge: how much each corner weighs.
      const [wa, wb, wc] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
      const all = wa + wb + wc;
      const least = Math.min(wa, wb, wc) / all;
      if (!(least > best)) continue;
      best = least;
      const [pa, pb, pc] = [Math.max(0, wa), Math.max(0, wb), Math.max(0, wc)];
      height =
        (pa * (positions[a + 2] ?? 0) + pb * (positions[b + 2] ?? 0) + pc * (positions[c + 2] ?? 0)) /
        (pa + pb + pc);
      if (least >= 0) break;
    }
    return height;
  }

  /** Every bin that a triangle reaches into. */
  private each(visit: (bin: number, triangle: number) => void): void {
    const { positions, triangles, board, columns, rows, width, height } = this;
    for (let t = 0; t < triangles.length / 3; t += 1) {
      const ids = [0, 1, 2].map((k) => (triangles[t * 3 + k] ?? 0) * 3);
      const xs = ids.map((at) => (positions[at] ?? 0) - board.left);
      const ys = ids.map((at) => (positions[at + 1] ?? 0) - board.bottom);
      const [left, right] = [Math.floor(Math.min(...xs) / width), Math.floor(Math.max(...xs) / width)];
      const [low, high] = [Math.floor(Math.min(...ys) / height), Math.floor(Math.max(...ys) / height)];
      for (let row = Math.max(0, low); row <= Math.min(rows - 1, high); row += 1)
        for (let column = Math.max(0, left); column <= Math.min(columns - 1, right); column += 1)
          if (touches(xs, ys, column * width, row * height, width, height)) visit(row * columns + column, t);
    }
  }
}

const inside = (at: number, count: number): number => Math.min(count - 1, Math.max(0, at));

/** Whether no edge of a counter-clockwise triangle has a whole rectangle on its right; what only might is let in. */
function touches(
  xs: readonly number[],
  ys: readonly number[],
  x: number,
  y: number,
  width: number,
  height: number,
): boolean {
  for (let k = 0; k < 3; k += 1) {
    const [ax, ay, bx, by] = [xs[k] ?? 0, ys[k] ?? 0, xs[(k + 1) % 3] ?? 0, ys[(k + 1) % 3] ?? 0];
    // The corner of the rectangle that lies farthest to the left of the edge.
    const px = by > ay ? x : x + width;
    const py = bx > ax ? y + height : y;
    if ((bx - ax) * (py - ay) - (by - ay) * (px - ax) < -1e-9 * (width + height)) return false;
  }
  return true;
}
