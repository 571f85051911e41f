import { HIT_TOLERANCE, TARGET_CUT } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import type { FacetGroup, Facets } from '../sight/facets.ts';
import type { Nearest } from '../sight/raster.ts';
import type { UnevenGround } from './unevenGround.ts';
import { FOLD, TILE } from './unevenTiles.ts';

/** Rounding of a half-space at a target, per size of its terms. */
const ROUNDING = 1e-14;

/**
 * Throws the shadows of faces on targets that are on no plane. For a target X from the lens each shadow is four half-spaces:
 * three E·X ≥ 0 through the edges of the face and one for the depth s = N·X / D > 1. Tiles whose box lies outside one of them
 * are left, those within all are taken whole, and the rest is asked cell by cell.
 * Source: DEVELOPERS.md, "Shadows".
 */
export class UnevenShadows {
  private readonly ground: UnevenGround;
  private readonly eye: Vec3;
  /** 1 a cell that is asked for, and how many of them each tile of each level holds. */
  private readonly wanted: Uint8Array;
  private readonly counts: readonly Int32Array[];
  /** Four numbers a half-space: along x, y, z, and more. */
  private readonly halves = new Float64Array(16);
  /** First and last column and row that the shadow of the face can reach. */
  private readonly reach = new Int32Array(4);
  /** Least and greatest height of a target above the lens, m. */
  private readonly low: number;
  private readonly high: number;
  private nearLens = false;
  private into: Nearest | null = null;
  private solid = -1;
  private readonly sheet = new Float64Array(4);
  private closedOnly = false;

  /** @param wanted 1 a cell to be asked for; cells found hidden by `hide` become 0 */
  constructor(ground: UnevenGround, eye: Vec3, wanted: Uint8Array) {
    this.ground = ground;
    this.eye = eye;
    this.wanted = wanted;
    const tops = ground.levels[ground.levels.length - 1]?.boxes ?? new Float64Array(0);
    let [low, high] = [Infinity, -Infinity];
    for (let at = 0; at < tops.length; at += 6) {
      const [middle, half] = [tops[at + 2] ?? 0, tops[at + 5] ?? 0];
      low = Math.min(low, middle - half);
      high = Math.max(high, middle + half);
    }
    [this.low, this.high] = [low - eye[2], high - eye[2]];
    this.counts = ground.levels.map(({ columns, rows }) => new Int32Array(columns * rows));
    const { columns, rows } = ground.grid;
    for (let row = 0, at = 0; row < rows; row += 1)
      for (let column = 0; column < columns; column += 1, at += 1)
        if (wanted[at] === 1) this.count(column, row, 1);
  }

  /**
   * Keeps the nearest of the faces of a group over each wanted cell. On equal depth the lower index stays.
   * @param away   those that are turned from the lens, where ways leave the solid; else those turned to it
   * @param closed only those of a screen that are seen at so low an angle to their sheet that it closes up
   */
  nearest(facets: Facets, group: FacetGroup, into: Nearest, away = false, closed = false): void {
    if (!closed || facets.sheets !== null) this.cast(facets, group, into, away, closed);
  }

  /**
   * Takes from the wanted cells those behind a solid that holds neither lens nor target, by its faces that are turned away:
   * a way that enters it must leave it again. There are fewer of them in ground, and none of them holds a target that is seen.
   */
  hide(facets: Facets, group: FacetGroup): void {
    this.cast(facets, group, null, true, false);
  }

  private cast(
    facets: Facets,
    { from, to, solid }: FacetGroup,
    into: Nearest | null,
    away: boolean,
    closedOnly: boolean,
  ): void {
    this.into = into;
    this.solid = solid;
    this.closedOnly = closedOnly;
    const top = this.counts.length - 1;
    for (let facet = from; facet < to; facet += 1) if (this.take(facets, facet, away)) this.below(top, 15);
  }

  /** Makes the half-spaces of a face; false where it is turned the other way. */
  private take({ corners, normals, sheets, closing }: Facets, facet: number, away: boolean): boolean {
    const { eye, halves, sheet } = this;
    const at = facet * 9;
    const [nx, ny, nz] = [normals[facet * 3] ?? 0, normals[facet * 3 + 1] ?? 0, normals[facet * 3 + 2] ?? 0];
    const ax = (corners[at] ?? 0) - eye[0];
    const ay = (corners[at + 1] ?? 0) - eye[1];
    const az = (corners[at + 2] ?? 0) - eye[2];
    const d = nx * ax + ny * ay + nz * az;
    if (away ? !(d > 0) : !(d < 0)) return false;
    this.nearLens = Math.abs(d) <= HIT_TOLERANCE * Math.sqrt(nx * nx + ny * ny + nz * nz);
    // Of a face from inside that the lens touches, all ways lead away.
    if (away && this.nearLens) return false;
    if (this.closedOnly && sheets !== null) {
      for (let axis = 0; axis < 3; axis += 1) sheet[axis] = sheets[facet * 3 + axis] ?? 0;
      if (sheet[0] === 0 && sheet[1] === 0 && sheet[2] === 0) return false;
      sheet[3] = closing * closing;
    }
    const bx = (corners[at + 3] ?? 0) - eye[0];
    const by = (corners[at + 4] ?? 0) - eye[1];
    const bz = (corners[at + 5] ?? 0) - eye[2];
    const cx = (corners[at + 6] ?? 0) - eye[0];
    const cy = (corners[at + 7] ?? 0) - eye[1];
    const cz = (corners[at + 8] ?? 0) - eye[2];
    if (!this.bound(ax, ay, az, bx, by, bz, cx, cy, cz)) return false;
    const sign = away ? 1 : -1;
    halves[0] = sign * (ay * bz - az * by);
    halves[1] = sign * (az * bx - ax * bz);
    halves[2] = sign * (ax * by - ay * bx);
    halves[4] = sign * (by * cz - bz * cy);
    halves[5] = sign * (bz * cx - bx * cz);
    halves[6] = sign * (bx * cy - by * cx);
    halves[8] = sign * (cy * az - cz * ay);
    halves[9] = sign * (cz * ax - cx * az);
    halves[10] = sign * (cx * ay - cy * ax);
    halves[12] = nx / d;
    halves[13] = ny / d;
    halves[14] = nz / d;
    halves[15] = -(1 + TARGET_CUT);
    return true;
  }

  /** Finds what cells the shadow of a face with these corners from the lens can reach, by the heights of targets; false: none. */
  private bound(
    ax: number,
    ay: number,
    az: number,
    bx: number,
    by: number,
    bz: number,
    cx: number,
    cy: number,
    cz: number,
  ): boolean {
    const { low, high, eye, reach } = this;
    const { grid } = this.ground;
    const [least, most] = [Math.min(az, bz, cz), Math.max(az, bz, cz)];
    // How far ways through the corners go on, as a multiple, before they are below or above all targets.
    const end = most < 0 ? low : least > 0 ? high : null;
    const far = (z: number) => (end === null ? Infinity : end / z);
    const [fa, fb, fc] = [far(az), far(bz), far(cz)];
    if (fa < 1 && fb < 1 && fc < 1) return false;
    const west = Math.min(ax, bx, cx, onto(ax, fa), onto(bx, fb), onto(cx, fc));
    const east = Math.max(ax, bx, cx, onto(ax, fa), onto(bx, fb), onto(cx, fc));
    const south = Math.min(ay, by, cy, onto(ay, fa), onto(by, fb), onto(cy, fc));
    const north = Math.max(ay, by, cy, onto(ay, fa), onto(by, fb), onto(cy, fc));
    const [x, y] = [eye[0] - grid.left, eye[1] - grid.bottom];
    // A cell more on either side for rounding.
    reach[0] = columnAt((x + west) / grid.cell - 1.5, grid.columns);
    reach[1] = columnAt((x + east) / grid.cell + 1.5, grid.columns);
    reach[2] = columnAt((y + south) / grid.cell - 1.5, grid.rows);
    reach[3] = columnAt((y + north) / grid.cell + 1.5, grid.rows);
    return true;
  }

  /** Goes down into all tiles of a level that lie in one of the next and in reach. */
  private below(level: number, open: number, column = 0, row = 0, fold = Infinity): void {
    const tiles = this.ground.levels[level];
    if (tiles === undefined) return;
    const { size } = tiles;
    const { reach } = this;
    const firstColumn = Math.max(column, Math.floor((reach[0] ?? 0) / size));
    const lastColumn = Math.min(column + fold - 1, tiles.columns - 1, Math.floor((reach[1] ?? 0) / size));
    const firstRow = Math.max(row, Math.floor((reach[2] ?? 0) / size));
    const lastRow = Math.min(row + fold - 1, tiles.rows - 1, Math.floor((reach[3] ?? 0) / size));
    for (let j = firstRow; j <= lastRow; j += 1)
      for (let i = firstColumn; i <= lastColumn; i += 1) this.descend(level, j * tiles.columns + i, open);
  }

  /** @param open bits of the half-spaces that are not known to hold the whole tile */
  private descend(level: number, tile: number, open: number): void {
    if ((this.counts[level]?.[tile] ?? 0) === 0) return;
    const tiles = this.ground.levels[level];
    if (tiles === undefined) return;
    const { halves, eye } = this;
    const { boxes } = tiles;
    const at = tile * 6;
    const x = (boxes[at] ?? 0) - eye[0];
    const y = (boxes[at + 1] ?? 0) - eye[1];
    const z = (boxes[at + 2] ?? 0) - eye[2];
    const hx = boxes[at + 3] ?? 0;
    const hy = boxes[at + 4] ?? 0;
    const hz = boxes[at + 5] ?? 0;
    let left = 0;
    for (let k = 0; k < 4; k += 1) {
      if ((open & (1 << k)) === 0) continue;
      const a = halves[k * 4] ?? 0;
      const b = halves[k * 4 + 1] ?? 0;
      const c = halves[k * 4 + 2] ?? 0;
      const [ax, by, cz] = [a * x, b * y, c * z];
      const value = ax + by + cz + (halves[k * 4 + 3] ?? 0);
      const reach =
        Math.abs(a) * hx +
        Math.abs(b) * hy +
        Math.abs(c) * hz +
        ROUNDING * (Math.abs(ax) + Math.abs(by) + Math.abs(cz) + 1);
      if (value + reach < 0) return;
      if (value - reach < 0) left |= 1 << k;
    }
    const column = tile % tiles.columns;
    const row = (tile - column) / tiles.columns;
    if (level === 0) this.cells(column * TILE, row * TILE, left);
    else this.below(level - 1, left, column * FOLD, row * FOLD, FOLD);
  }

  /** Asks the cells of one tile. */
  private cells(fromColumn: number, fromRow: number, open: number): void {
    const { halves, eye, wanted, into } = this;
    const [ax = 0, ay = 0, az = 0, , bx = 0, by = 0, bz = 0, , cx = 0, cy = 0, cz = 0] = halves;
    const [sx, sy, sz, cut] = [halves[12] ?? 0, halves[13] ?? 0, halves[14] ?? 0, halves[15] ?? 0];
    const { grid, targets } = this.ground;
    const toColumn = Math.min(grid.columns, fromColumn + TILE);
    const toRow = Math.min(grid.rows, fromRow + TILE);
    for (let row = fromRow; row < toRow; row += 1) {
      const y = grid.bottom + (row + 0.5) * grid.cell - eye[1];
      for (let column = fromColumn; column < toColumn; column += 1) {
        const cell = row * grid.columns + column;
        if (wanted[cell] !== 1) continue;
        const x = grid.left + (column + 0.5) * grid.cell - eye[0];
        const z = (targets[cell] ?? 0) - eye[2];
        if ((open & 1) !== 0 && ax * x + ay * y + az * z < 0) continue;
        if ((open & 2) !== 0 && bx * x + by * y + bz * z < 0) continue;
        if ((open & 4) !== 0 && cx * x + cy * y + cz * z < 0) continue;
        const depth = sx * x + sy * y + sz * z;
        if (!(depth + cut > 0) || this.passes(depth, x, y, z)) continue;
        if (into === null) {
          wanted[cell] = 0;
          this.count(column, row, -1);
        } else this.keep(into, cell, Math.fround(depth));
      }
    }
  }

  private keep({ depth, solid }: Nearest, cell: number, met: number): void {
    const known = depth[cell] ?? 0;
    if (met < known || (met === known && this.solid >= (solid[cell] ?? -1))) return;
    depth[cell] = met;
    solid[cell] = this.solid;
  }

  /** Whether a face does not count after all: it is met within the tolerance at the lens, or its sheet stays open. */
  private passes(depth: number, x: number, y: number, z: number): boolean {
    if (!this.nearLens && !this.closedOnly) return false;
    const far2 = x * x + y * y + z * z;
    if (this.nearLens && depth * HIT_TOLERANCE >= Math.sqrt(far2)) return true;
    if (!this.closedOnly) return false;
    const [nx = 0, ny = 0, nz = 0, most = 0] = this.sheet;
    const along = nx * x + ny * y + nz * z;
    return along * along >= most * far2;
  }

  private count(column: number, row: number, change: 1 | -1): void {
    const { levels } = this.ground;
    for (let level = 0; level < levels.length; level += 1) {
      const tiles = levels[level];
      const counts = this.counts[level];
      if (tiles === undefined || counts === undefined) return;
      const tile = Math.floor(row / tiles.size) * tiles.columns + Math.floor(column / tiles.size);
      counts[tile] = (counts[tile] ?? 0) + change;
    }
  }
}

/** A part of a way gone on so many times as far, perhaps without end. */
const onto = (along: number, times: number): number => (along === 0 ? 0 : along * times);

/** A column within a grid, from a number that may lie beyond it or be infinite. */
const columnAt = (at: number, count: number): number => Math.max(0, Math.min(count - 1, Math.floor(at)));
