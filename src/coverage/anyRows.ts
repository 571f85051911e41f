import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Grid } from '../sight/grid.ts';
import { codeOf } from './cellCode.ts';
import { isLit, type NightHere } from './night.ts';
import type { RowJudge } from './rowJudge.ts';
import type { RunWriter } from './rowRuns.ts';
import { KEPT, type BandRule } from './rule.ts';
import { COVERED, TOO_COARSE, TOO_DARK } from './state.ts';

/** Judges rows of any plane by any rule, by day or at night, cell by cell. */
export class AnyRows implements RowJudge {
  private readonly grid: Grid;
  private readonly rule: BandRule;
  private readonly field: PixelField;
  /** Whether the frame has to be asked for: to a rectilinear one rows are cut before. */
  private readonly bent: boolean;
  private readonly night: NightHere | null;
  private readonly glass: Int32Array | null;
  private readonly out: RunWriter;
  /** From the lens to the middle of the first cell, then a step along a row and one from row to row. */
  private readonly places: Float64Array;
  /** From the lens to the middle of the cell at hand. */
  private readonly here = new Float64Array(3);

  /** @param glass what glass is nearest over each cell, where it matters at night; null where there is none */
  constructor(
    camera: Camera,
    grid: Grid,
    rule: BandRule,
    night: NightHere | null,
    glass: Int32Array | null,
    out: RunWriter,
  ) {
    const { plane, cell, left, bottom } = grid;
    this.grid = grid;
    this.rule = rule;
    this.field = new PixelField(camera);
    this.bent = camera.k !== 1;
    this.night = night;
    this.glass = glass;
    this.out = out;
    const axes = [0, 1, 2] as const;
    const first = axes.map(
      (axis) =>
        plane.origin[axis] -
        camera.eye[axis] +
        (left + cell / 2) * plane.u[axis] +
        (bottom + cell / 2) * plane.v[axis],
    );
    this.places = Float64Array.from([
      ...first,
      ...axes.map((axis) => cell * plane.u[axis]),
      ...axes.map((axis) => cell * plane.v[axis]),
    ]);
  }

  place(row: number, from: number, to: number, code: number): void {
    const { out } = this;
    if (!this.bent) out.put(from, to, code);
    else
      for (let column = from; column <= to; column += 1)
        if (this.at(row, column)) out.put(column, column, code);
  }

  open(row: number, from: number, to: number): void {
    const { bent, field, rule, night, glass, here, out } = this;
    for (let column = from; column <= to; column += 1) {
      if (!this.at(row, column) && bent) continue;
      const [dx, dy, dz] = [here[0] ?? 0, here[1] ?? 0, here[2] ?? 0];
      const index = row * this.grid.columns + column;
      if (night !== null && !isLit(night, glass, index, dx, dy, dz)) {
        out.put(column, column, codeOf(TOO_DARK, KEPT, 0));
        continue;
      }
      rule.here[0] = field.density;
      rule.here[1] = dx;
      rule.here[2] = dy;
      rule.here[3] = -dz;
      const band = rule.bandHere();
      out.put(column, column, codeOf(band > 0 ? COVERED : TOO_COARSE, rule.lost, band));
    }
  }

  /** Whether a cell lies in the frame; leaves its place and its density behind. */
  private at(row: number, column: number): boolean {
    const { places, here } = this;
    for (let axis = 0; axis < 3; axis += 1)
      here[axis] = (places[axis] ?? 0) + column * (places[axis + 3] ?? 0) + row * (places[axis + 6] ?? 0);
    return this.field.at(here[0] ?? 0, here[1] ?? 0, here[2] ?? 0);
  }
}
