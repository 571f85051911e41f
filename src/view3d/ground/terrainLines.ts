import type { Vec2, Vec3 } from '../../base/vector.ts';
import { BOARD_EDGE } from './board.ts';
import type { TerrainFaces } from './terrainFaces.ts';

/** Lines of height are so many at most. */
const MOST_LINES = 16;
/** Heights between them, m. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const;

/** The heights between lines of height over ground between two heights, m. */
export const heightStep = (least: number, most: number): number =>
  STEPS.find((step) => (most - least) / step <= MOST_LINES) ?? 200;

/** Lines of equal height: six numbers a segment, site frame. Level ground on a line has none. */
export function heightLines({ positions: p, triangles: t, least, most }: TerrainFaces): number[] {
  const step = heightStep(least, most);
  const lines: number[] = [];
  for (let i = 0; i + 2 < t.length; i += 3) {
    const corners = [0, 1, 2].map((k) => (t[i + k] ?? 0) * 3);
    const heights = corners.map((at) => p[at + 2] ?? 0);
    const [low, high] = [Math.min(...heights), Math.max(...heights)];
    // A corner on a line counts as just above it, so that each line is met once.
    for (let n = Math.floor(low / step) + 1; n * step <= high; n += 1) {
      const level = n * step;
      const ends: number[] = [];
      for (let k = 0; k < 3; k += 1) {
        const [a, b] = [corners[k] ?? 0, corners[(k + 1) % 3] ?? 0];
        const [za, zb] = [p[a + 2] ?? 0, p[b + 2] ?? 0];
        if (za >= level === zb >= level) continue;
        const s = (level - za) / (zb - za);
        for (const axis of [0, 1]) ends.push((p[a + axis] ?? 0) * (1 - s) + (p[b + axis] ?? 0) * s);
        ends.push(level);
      }
      if (ends.length === 6) lines.push(...ends);
    }
  }
  return lines;
}

/** Pieces shorter than this share of the line are left out. */
const LEAST_SHARE = 1e-9;

/** A straight line over the plan, laid on the ground: six numbers a piece, site frame. */
export function drapedLine({ positions: p, triangles: t }: TerrainFaces, from: Vec2, to: Vec2): number[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const [low, high] = [
    [Math.min(from[0], to[0]), Math.min(from[1], to[1])],
    [Math.max(from[0], to[0]), Math.max(from[1], to[1])],
  ] as const;
  const pieces: number[] = [];
  for (let i = 0; i + 2 < t.length; i += 3) {
    const [a, b, c] = [(t[i] ?? 0) * 3, (t[i + 1] ?? 0) * 3, (t[i + 2] ?? 0) * 3];
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [bx, by, bz] = [p[b] ?? 0, p[b + 1] ?? 0, p[b + 2] ?? 0];
    const [cx, cy, cz] = [p[c] ?? 0, p[c + 1] ?? 0, p[c + 2] ?? 0];
    if (Math.max(ax, bx, cx) < low[0] || Math.min(ax, bx, cx) > high[0]) continue;
    if (Math.max(ay, by, cy) < low[1] || Math.min(ay, by, cy) > high[1]) continue;
    let [enter, leave] = [0, 1];
    // Left of each side, which run counter-clockwise from above.
    const side = (px: number, py: number, qx: number, qy: number): void => {
      const start = (qx - px) * (from[1] - py) - (qy - py) * (from[0] - px);
      const run = (qx - px) * dy - (qy - py) * dx;
      if (run > 0) enter = Math.max(enter, -start / run);
      else if (run < 0) leave = Math.min(leave, -start / run);
      else if (start < 0) leave = -1;
    };
    side(ax, ay, bx, by);
    side(bx, by, cx, cy);
    side(cx, cy, ax, ay);
    if (leave - enter < LEAST_SHARE) continue;
    const whole = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    for (const s of [enter, leave]) {
      const [x, y] = [from[0] + s * dx, from[1] + s * dy];
      const toB = ((x - ax) * (cy - ay) - (y - ay) * (cx - ax)) / whole;
      const toC = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / whole;
      pieces.push(x, y, az + toB * (bz - az) + toC * (cz - az));
    }
  }
  return pieces;
}

/** A ring laid on the ground. */
export const drapedRing = (faces: TerrainFaces, ring: readonly (Vec2 | Vec3)[]): number[] =>
  ring.flatMap(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] ?? [x, y];
    return drapedLine(faces, [x, y], [nx, ny]);
  });

/** The edges of the board under uneven ground, or of what lies a height above it: its rim, its foot, and the uprights at its corners. */
export function boardEdges(
  { positions: p, rim, least, board }: TerrainFaces,
  lift: number,
): { readonly rim: number[]; readonly foot: number[]; readonly posts: number[] } {
  const [top, foot, posts]: [number[], number[], number[]] = [[], [], []];
  const low = least - BOARD_EDGE;
  for (let i = 0; i + 1 < rim.length; i += 2) {
    const [a, b] = [(rim[i] ?? 0) * 3, (rim[i + 1] ?? 0) * 3];
    const [ax, ay, az] = [p[a] ?? 0, p[a + 1] ?? 0, p[a + 2] ?? 0];
    const [bx, by, bz] = [p[b] ?? 0, p[b + 1] ?? 0, p[b + 2] ?? 0];
    top.push(ax, ay, az + lift, bx, by, bz + lift);
    foot.push(ax, ay, low, bx, by, low);
    const isCorner = (ax === board.left || ax === board.right) && (ay === board.bottom || ay === board.top);
    if (isCorner) posts.push(ax, ay, lift === 0 ? low : az, ax, ay, az + lift);
  }
  return { rim: top, foot, posts };
}
