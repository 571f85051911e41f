import type { Solid } from '../../src/model/solid.ts';
import { plainTurn, type PlainCamera } from './plainCamera.ts';

/**
 * Sight along one line y = const of a level plane, by plane geometry in the plane through lens and line: there each triangle
 * is a stretch, and hides what lies behind it. Reads raw triangles, both sides of them; no half-planes, no products of
 * corners, no outline. Coordinates are relative to the lens, in metres.
 */
export interface RowWindow {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** What hides a stretch of the line: near is 1 over the share of the way from lens to line, linear between the ends. */
export interface Cut {
  readonly from: number;
  readonly to: number;
  readonly nearFrom: number;
  readonly nearTo: number;
  readonly solid: number;
  readonly rank: number;
}

/** Inside a solid goes before behind a solid, and that before behind a screen. */
const [THROUGH_SCREEN, BEHIND] = [1, 2];
export const INSIDE = 3;

/** a·x + b·y + c ≥ 0: one side of a rectilinear frame, or of the window. */
interface Side {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Triangles nearer to the target than this share of the way do not hide it: rounding. The engine's own figure, as documented. */
const AT_TARGET = 1 / (1 + 1e-9);
const AT_LENS = 1e-9;

export class RowScene {
  readonly eye: readonly number[];
  readonly window: RowWindow;
  /** From the lens up to the plane; a plane within a micrometre counts as one below or above, as documented. */
  readonly rise: number;
  readonly sides: readonly Side[];
  readonly solids: readonly Solid[];
  /** Nine numbers a triangle. */
  private readonly corners: Float64Array;
  private readonly solid: Int32Array;
  private readonly count: number;

  constructor(solids: readonly Solid[], camera: PlainCamera, z: number, window: RowWindow) {
    const [ex = 0, ey = 0, ez = 0] = camera.eye;
    this.eye = camera.eye;
    this.solids = solids;
    const rise = z - ez;
    this.rise = Math.abs(rise) < 1e-6 ? (rise > 0 ? 1e-6 : -1e-6) : rise;
    this.window = {
      left: window.left - ex,
      right: window.right - ex,
      bottom: window.bottom - ey,
      top: window.top - ey,
    };
    this.count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
    this.corners = new Float64Array(this.count * 9);
    this.solid = new Int32Array(this.count);
    let at = 0;
    solids.forEach(({ positions, triangles }, index) => {
      this.solid.fill(index, at / 9, at / 9 + triangles.length / 3);
      for (const corner of triangles)
        for (let axis = 0; axis < 3; axis += 1)
          this.corners[at++] = (positions[corner * 3 + axis] ?? 0) - (camera.eye[axis] ?? 0);
    });
    this.sides = [
      { a: 1, b: 0, c: -this.window.left },
      { a: -1, b: 0, c: this.window.right },
      ...(camera.k === 1 ? frameSides(camera, this.rise) : []),
    ];
  }

  /** What of the line lies in window and frame; from ≥ to where nothing does. */
  span(y: number): readonly [number, number] {
    let [from, to] = [-Infinity, Infinity];
    for (const { a, b, c } of this.sides) {
      const here = b * y + c;
      if (a > 0) from = Math.max(from, -here / a);
      else if (a < 0) to = Math.min(to, -here / a);
      else if (here < 0) return [0, 0];
    }
    return [from, to];
  }

  /** What hides, and what lies inside solids, along the line. */
  cuts(y: number): Cut[] {
    const { corners, rise } = this;
    const found: Cut[] = [];
    const far2 = y * y + rise * rise;
    for (let triangle = 0; triangle < this.count; triangle += 1) {
      const base = triangle * 9;
      let met = 0;
      let [x0, w0, x1, w1] = [0, 0, 0, 0];
      for (let k = 0; k < 3; k += 1) {
        const [i, j] = [base + k * 3, base + ((k + 1) % 3) * 3];
        const off = (corners[i + 1] ?? 0) * rise - (corners[i + 2] ?? 0) * y;
        const next = (corners[j + 1] ?? 0) * rise - (corners[j + 2] ?? 0) * y;
        if (off >= 0 === next >= 0) continue;
        const share = off / (off - next);
        const at = (axis: number) =>
          (corners[i + axis] ?? 0) + share * ((corners[j + axis] ?? 0) - (corners[i + axis] ?? 0));
        const w = (at(1) * y + at(2) * rise) / far2;
        if (met === 0) [x0, w0] = [at(0), w];
        else [x1, w1] = [at(0), w];
        met += 1;
      }
      if (met === 2) this.keep(found, triangle, x0, w0, x1, w1);
    }
    this.insides(y, found);
    return found;
  }

  private keep(found: Cut[], triangle: number, x0: number, w0: number, x1: number, w1: number): void {
    let [xa, wa, xb, wb] = w0 < w1 ? [x0, w0, x1, w1] : [x1, w1, x0, w0];
    if (wb <= AT_LENS || wa >= AT_TARGET) return;
    const at = (w: number) => xa + ((w - wa) / (wb - wa)) * (xb - xa);
    if (wa < AT_LENS) [xa, wa] = [at(AT_LENS), AT_LENS];
    if (wb > AT_TARGET) [xb, wb] = [at(AT_TARGET), AT_TARGET];
    const [pa, pb] = [xa / wa, xb / wb];
    const solid = this.solid[triangle] ?? 0;
    const rank = this.solids[solid]?.passage === 'screen' ? THROUGH_SCREEN : BEHIND;
    if (pa < pb) found.push({ from: pa, to: pb, nearFrom: 1 / wa, nearTo: 1 / wb, solid, rank });
    else if (pb < pa) found.push({ from: pb, to: pa, nearFrom: 1 / wb, nearTo: 1 / wa, solid, rank });
  }

  /** Stretches inside solids, by crossing each surface a hair above the plane. */
  private insides(y: number, found: Cut[]): void {
    const { corners, rise } = this;
    const crossings = new Map<number, number[]>();
    for (let triangle = 0; triangle < this.count; triangle += 1) {
      const ends: (readonly [number, number])[] = [];
      for (let k = 0; k < 3; k += 1) {
        const [i, j] = [triangle * 9 + k * 3, triangle * 9 + ((k + 1) % 3) * 3];
        const point = levelCrossing(corners, i, j, rise);
        if (point !== null) ends.push(point);
      }
      const [one, two] = ends;
      if (one === undefined || two === undefined || one[1] > y === two[1] > y) continue;
      const x = one[0] + ((y - one[1]) / (two[1] - one[1])) * (two[0] - one[0]);
      const solid = this.solid[triangle] ?? 0;
      const list = crossings.get(solid);
      if (list) list.push(x);
      else crossings.set(solid, [x]);
    }
    for (const [solid, xs] of crossings) {
      xs.sort((one, two) => one - two);
      for (let at = 0; at + 1 < xs.length; at += 2) {
        const [from, to] = [xs[at] ?? 0, xs[at + 1] ?? 0];
        if (from < to) found.push({ from, to, nearFrom: 1, nearTo: 1, solid, rank: INSIDE });
      }
    }
  }

  /** Every y in the window at which a corner of a triangle's shadow, of its cut or a level side of the frame lies; ascending. */
  corner(): number[] {
    const { corners, rise, window } = this;
    const found = [window.bottom, window.top];
    const put = (y: number) => {
      if (y > window.bottom && y < window.top) found.push(y);
    };
    for (let triangle = 0; triangle < this.count; triangle += 1)
      for (let k = 0; k < 3; k += 1) {
        const [i, j] = [triangle * 9 + k * 3, triangle * 9 + ((k + 1) % 3) * 3];
        const [yi, yj] = [corners[i + 1] ?? 0, corners[j + 1] ?? 0];
        const [wi, wj] = [(corners[i + 2] ?? 0) / rise, (corners[j + 2] ?? 0) / rise];
        if (wi > AT_LENS && wi < AT_TARGET) put(yi / wi);
        for (const w of [AT_LENS, AT_TARGET])
          if (wi < w !== wj < w) put((yi + ((w - wi) / (wj - wi)) * (yj - yi)) / w);
        const level = levelCrossing(corners, i, j, rise);
        if (level !== null) put(level[1]);
      }
    for (const { a, b, c } of this.sides) if (Math.abs(a) < 1e-9 * Math.abs(b)) put(-c / b);
    found.sort((one, two) => one - two);
    return found.filter((y, at) => at === 0 || y - (found[at - 1] ?? 0) > 1e-12);
  }
}

/** Where an edge passes a hair above the plane. */
function levelCrossing(
  corners: Float64Array,
  i: number,
  j: number,
  rise: number,
): readonly [number, number] | null {
  const [zi, zj] = [corners[i + 2] ?? 0, corners[j + 2] ?? 0];
  if (zi > rise === zj > rise) return null;
  const share = (rise - zi) / (zj - zi);
  const at = (axis: number) =>
    (corners[i + axis] ?? 0) + share * ((corners[j + axis] ?? 0) - (corners[i + axis] ?? 0));
  return [at(0), at(1)];
}

/** The four sides of a rectilinear picture, from the three turned directions of the site. */
function frameSides(camera: PlainCamera, rise: number): Side[] {
  const [east, north, up] = [
    plainTurn(camera, [1, 0, 0]),
    plainTurn(camera, [0, 1, 0]),
    plainTurn(camera, [0, 0, 1]),
  ];
  const side = (axis: 0 | 1, sense: number, half: number): Side => {
    const of = (d: readonly [number, number, number]) => (half / camera.focalLength) * d[2] + sense * d[axis];
    const clean = (n: number) => (Math.abs(n) < 1e-14 ? 0 : n);
    return { a: clean(of(east)), b: clean(of(north)), c: of(up) * rise };
  };
  const [across, down] = [camera.sensor.width / 2, camera.sensor.height / 2];
  return [side(0, 1, across), side(0, -1, across), side(1, 1, down), side(1, -1, down)];
}
