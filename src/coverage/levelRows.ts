import { SAME_POINT } from '../base/tolerance.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import { axesOf, pixelPitch } from '../optics/projection.ts';
import { RoundLaw } from '../optics/roundLaw.ts';
import type { Grid } from '../sight/grid.ts';
import { codeOf } from './cellCode.ts';
import { LevelLimits } from './levelLimits.ts';
import type { RowJudge } from './rowJudge.ts';
import type { RunWriter } from './rowRuns.ts';
import type { RowSpans } from '../sight/raster.ts';
import { KEPT, TOO_STEEP, type BandRule } from './rule.ts';
import { COVERED, TOO_COARSE } from './state.ts';
import type { SureRows } from './sureRows.ts';

/** Where the series of the law and its formula may differ over the frame's edge, as a share: there the formula is asked. */
const NEAR = 1e-9;

/**
 * Judges rows of a level plane, by day, where faces may look anywhere. Bands are told by comparing squares, without a root or
 * a division a cell; what range and steepness limit is an interval of each row.
 */
export class LevelRows implements RowJudge {
  private readonly grid: Grid;
  private readonly rule: BandRule;
  private readonly field: PixelField;
  private readonly limits: LevelLimits;
  private readonly law: RoundLaw | null;
  private readonly k: number;
  private readonly out: RunWriter;
  /** Right, down and forward in the site frame, pixels a unit across and down, half the frame in the same. */
  private readonly axes: Float64Array;
  /** Squared density from which each band is reached, after 0 for none and before infinity. */
  private readonly squares: Float64Array;
  /** The code of each band in the piece at hand. */
  private readonly codes: Int32Array;
  private readonly sure: RowSpans;
  private readonly ex: number;
  private readonly ey: number;
  private readonly dz: number;
  private dy = 0;
  private row = -1;

  /** @param sure what is sure to lie in a bent frame; null for a rectilinear one */
  constructor(camera: Camera, grid: Grid, rule: BandRule, sure: SureRows | null, out: RunWriter) {
    const { right, down, forward } = axesOf(camera);
    const pitch = pixelPitch(camera);
    this.grid = grid;
    this.rule = rule;
    this.field = new PixelField(camera);
    [this.ex, this.ey] = camera.eye;
    this.dz = grid.plane.origin[2] - camera.eye[2];
    this.limits = new LevelLimits(grid, rule, this.ex, this.dz);
    this.k = camera.k;
    this.law = sure === null ? null : new RoundLaw(camera.k, sure.angleRad);
    this.sure = sure?.spans ?? new Int32Array(0);
    this.out = out;
    this.axes = Float64Array.from([
      ...right,
      ...down,
      ...forward,
      camera.focalLength * pitch.across,
      camera.focalLength * pitch.down,
      camera.frame.width / 2,
      camera.frame.height / 2,
    ]);
    this.squares = Float64Array.from([0, ...Array.from(rule.densities, (one) => one * one), Infinity]);
    this.codes = new Int32Array(rule.densities.length + 1);
  }

  /** Whether rows of a grid run along x of a level plane, and the rule asks for no more than what is told here. */
  static suits({ plane: { u, v } }: Grid, rule: BandRule): boolean {
    const level = u[0] === 1 && u[1] === 0 && u[2] === 0 && v[0] === 0 && v[1] === 1 && v[2] === 0;
    return level && !rule.sided && rule.slopes.every((slope) => slope >= 0);
  }

  place(row: number, from: number, to: number, code: number): void {
    if (this.law === null) this.out.put(from, to, code);
    else this.framed(row, from, to, code);
  }

  open(row: number, from: number, to: number): void {
    const { limits } = this;
    this.toRow(row);
    let at = from;
    while (at <= to) {
      const end = Math.min(to, limits.until(at));
      if (limits.reached(at)) this.piece(row, at, end);
      else this.place(row, at, end, codeOf(TOO_COARSE, KEPT, 0));
      at = end + 1;
    }
  }

  private toRow(row: number): void {
    if (row === this.row) return;
    const { grid } = this;
    this.row = row;
    this.dy = grid.plane.origin[1] + grid.bottom + (row + 0.5) * grid.cell - this.ey;
    this.limits.toRow(this.dy);
  }

  /** A piece of a row along which the same limits from above are passed. */
  private piece(row: number, from: number, to: number): void {
    const { codes, rule, limits } = this;
    for (let reached = 0; reached < codes.length; reached += 1) {
      let band = reached;
      let lost = KEPT;
      for (let limit = 0; limit < rule.kept.length; limit += 1) {
        const cap = rule.kept[limit] ?? 0;
        if (band <= cap || band === 0 || !limits.isSteep(limit, from)) continue;
        band = cap;
        lost = TOO_STEEP;
      }
      codes[reached] = codeOf(band > 0 ? COVERED : TOO_COARSE, lost, band);
    }
    if (this.law === null) this.flat(from, to);
    else this.bent(row, from, to, this.law);
  }

  private flat(from: number, to: number): void {
    const { axes, grid, dy, dz, squares, codes, out } = this;
    const { cell } = grid;
    const start = grid.plane.origin[0] + grid.left + cell / 2 - this.ex;
    const [across, down] = [axes[9] ?? 0, axes[10] ?? 0];
    // With W = m × X and m square to the bearing: the columns of J·m are forward-distance⁻² times −down·W and right·W.
    const [a0, a1, a2] = [
      across * dz * (axes[4] ?? 0) * dy,
      across * dz * (axes[3] ?? 0),
      -across * (axes[5] ?? 0),
    ];
    const [b0, b1, b2] = [
      -down * dz * (axes[1] ?? 0) * dy,
      -down * dz * (axes[0] ?? 0),
      down * (axes[2] ?? 0),
    ];
    const z0 = (axes[7] ?? 0) * dy + (axes[8] ?? 0) * dz;
    const f0 = axes[6] ?? 0;
    const dy2 = dy * dy;
    let band = 0;
    let [low, high] = [0, squares[1] ?? Infinity];
    let since = from;
    for (let column = from; column <= to; column += 1) {
      const east = start + column * cell;
      const over2 = east * east + dy2;
      const z = z0 + f0 * east;
      const a = a0 + a1 * east + a2 * over2;
      const b = b0 + b1 * east + b2 * over2;
      let square = a * a + b * b;
      let unit = over2 * (z * z) * (z * z);
      if (over2 < SAME_POINT * SAME_POINT) {
        this.field.at(east, dy, dz);
        square = this.field.density * this.field.density;
        unit = 1;
      }
      if (square >= low * unit && square < high * unit) continue;
      if (column > since) out.put(since, column - 1, codes[band] ?? 0);
      since = column;
      band = this.bandOf(square, unit, band);
      low = squares[band] ?? 0;
      high = squares[band + 1] ?? Infinity;
    }
    out.put(since, to, codes[band] ?? 0);
  }

  /** The band of a squared density of so many squared units. @param near where to begin */
  private bandOf(square: number, unit: number, near: number): number {
    const { squares } = this;
    let band = near;
    while (band > 0 && !(square >= (squares[band] ?? 0) * unit)) band -= 1;
    while (band + 2 < squares.length && square >= (squares[band + 1] ?? 0) * unit) band += 1;
    return band;
  }

  private bent(row: number, from: number, to: number, law: RoundLaw): void {
    const { axes, grid, dy, dz, k, squares, codes, out, sure } = this;
    const { cell } = grid;
    const [sureFrom, sureTo] = [sure[row * 2] ?? 1, sure[row * 2 + 1] ?? 0];
    const start = grid.plane.origin[0] + grid.left + cell / 2 - this.ex;
    const [r0, d0, f0, across, down] = [
      axes[0] ?? 0,
      axes[3] ?? 0,
      axes[6] ?? 0,
      axes[9] ?? 0,
      axes[10] ?? 0,
    ];
    const [halfWidth, halfHeight] = [axes[11] ?? 0, axes[12] ?? 0];
    const x0 = (axes[1] ?? 0) * dy + (axes[2] ?? 0) * dz;
    const y0 = (axes[4] ?? 0) * dy + (axes[5] ?? 0) * dz;
    const z0 = (axes[7] ?? 0) * dy + (axes[8] ?? 0) * dz;
    const m0 = f0 * dy;
    const m1 = axes[7] ?? 0;
    // −forward · W.
    const [w0, w1, w2] = [(axes[7] ?? 0) * dy * dz, f0 * dz, -(axes[8] ?? 0)];
    const { even, odd, scale, shift, least } = law;
    const terms = even.length;
    const dy2 = dy * dy;
    const dz2 = dz * dz;
    const k2 = k * k;
    let band = 0;
    let [low, high] = [0, squares[1] ?? Infinity];
    let since = from;
    for (let column = from; column <= to; column += 1) {
      const east = start + column * cell;
      const over2 = east * east + dy2;
      const x = x0 + r0 * east;
      const y = y0 + d0 * east;
      const z = z0 + f0 * east;
      const off2 = x * x + y * y;
      const far = Math.sqrt(over2 + dz2);
      const cosine = z / far;
      let inFrame = true;
      let square = 0;
      let unit = 1;
      if (cosine < least || over2 < SAME_POINT * SAME_POINT || off2 < SAME_POINT * SAME_POINT) {
        inFrame = this.field.at(east, dy, dz);
        square = this.field.density * this.field.density;
      } else {
        const t = cosine * scale + shift;
        const t2 = t * t;
        let e = even[0] ?? 0;
        let o = odd[0] ?? 0;
        for (let term = 1; term < terms; term += 1) {
          e = e * t2 + (even[term] ?? 0);
          o = o * t2 + (odd[term] ?? 0);
        }
        const round = (e + t * o) / far;
        if (column < sureFrom || column > sureTo) {
          const beyond = Math.max(
            Math.abs(x) * round * across - halfWidth,
            Math.abs(y) * round * down - halfHeight,
          );
          inFrame = Math.abs(beyond) < NEAR * halfWidth ? this.field.at(east, dy, dz) : beyond < 0;
        }
        const bend = k2 * round * round * off2;
        const slope = k > 0 ? 1 + bend : Math.sqrt(1 - bend);
        const outwards = -slope * (m0 - m1 * east);
        const around = round * (w0 + w1 * east + w2 * over2);
        const du = across * (outwards * x - around * y);
        const dv = down * (outwards * y + around * x);
        square = du * du + dv * dv;
        unit = over2 * off2 * off2;
      }
      if (!inFrame) {
        if (column > since) out.put(since, column - 1, codes[band] ?? 0);
        since = column + 1;
        continue;
      }
      if (square >= low * unit && square < high * unit) continue;
      if (column > since) out.put(since, column - 1, codes[band] ?? 0);
      since = column;
      band = this.bandOf(square, unit, band);
      low = squares[band] ?? 0;
      high = squares[band + 1] ?? Infinity;
    }
    if (since <= to) out.put(since, to, codes[band] ?? 0);
  }

  /** Gives those cells of a piece a code that lie in a bent frame. */
  private framed(row: number, from: number, to: number, code: number): void {
    const { sure, out, field, dz, grid } = this;
    this.toRow(row);
    const [sureFrom, sureTo] = [sure[row * 2] ?? 1, sure[row * 2 + 1] ?? 0];
    const start = grid.plane.origin[0] + grid.left + grid.cell / 2 - this.ex;
    let since = from;
    for (let column = from; column <= to; column += 1) {
      if (column >= sureFrom && column <= sureTo) {
        column = Math.min(to, sureTo);
        continue;
      }
      if (field.at(start + column * grid.cell, this.dy, dz)) continue;
      if (column > since) out.put(since, column - 1, code);
      since = column + 1;
    }
    if (since <= to) out.put(since, to, code);
  }
}
