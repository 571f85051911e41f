import { scale, subtract } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { Grid } from '../sight/grid.ts';
import type { RowSpans } from '../sight/raster.ts';
import { bandIn, hiderIn, lostIn, stateIn } from './cellCode.ts';
import type { Cells } from './coverage.ts';
import { RUN, type RowRuns } from './rowRuns.ts';

/** A plane whose normal rises more than this is level, and has no horizontal of its own. */
const LEVEL = 1 - 1e-9;

/** Pixels per metre at each cell, whatever is in the way. */
export interface Fields {
  readonly density: Float32Array;
  readonly across: Float32Array | null;
}

/** What a camera makes of the cells of a plane as it goes from one session to another. */
export type SentCells = Pick<Cells, 'rows' | 'runs' | 'faces'>;

/** Cells by their runs: arrays with an entry a cell are made when they are first asked for, since a drag needs none of them. */
export class JudgedCells implements Cells {
  readonly grid: Grid;
  readonly rows: RowSpans;
  readonly runs: RowRuns;
  readonly faces: boolean;
  readonly #bare: Uint8Array;
  readonly #fields: Fields;
  #state: Uint8Array | null = null;
  #band: Uint8Array | null = null;
  #lost: Uint8Array | null = null;
  #hider: Int32Array | null = null;

  /** @param bare the state of each cell before any camera looks */
  constructor(grid: Grid, { rows, runs, faces }: SentCells, bare: Uint8Array, fields: Fields) {
    this.grid = grid;
    this.rows = rows;
    this.runs = runs;
    this.faces = faces;
    this.#bare = bare;
    this.#fields = fields;
  }

  /** The same camera's cells among other solids: densities are shared. */
  among(grid: Grid, bare: Uint8Array, runs: RowRuns): JudgedCells {
    const { rows, faces } = this;
    return new JudgedCells(grid, { rows, runs, faces }, bare, this.#fields);
  }

  get state(): Uint8Array {
    this.#state ??= this.#fill(this.#bare.slice(), stateIn);
    return this.#state;
  }

  get band(): Uint8Array {
    this.#band ??= this.#fill(new Uint8Array(this.#bare.length), bandIn);
    return this.#band;
  }

  get lost(): Uint8Array | null {
    if (this.faces) this.#lost ??= this.#fill(new Uint8Array(this.#bare.length), lostIn);
    return this.#lost;
  }

  get hider(): Int32Array {
    this.#hider ??= this.#fill(new Int32Array(this.#bare.length).fill(-1), hiderIn);
    return this.#hider;
  }

  get density(): Float32Array {
    return this.#fields.density;
  }

  get across(): Float32Array | null {
    return this.#fields.across;
  }

  eachRun(visit: (from: number, to: number, state: number, hider: number) => void): void {
    this.#each((from, to, code) => visit(from, to, stateIn(code), hiderIn(code)));
  }

  #fill<T extends Uint8Array | Int32Array>(into: T, of: (code: number) => number): T {
    this.#each((from, to, code) => into.fill(of(code), from, to + 1));
    return into;
  }

  #each(visit: (from: number, to: number, code: number) => void): void {
    const { starts, list } = this.runs;
    for (let row = 0; row < this.grid.rows; row += 1) {
      const base = row * this.grid.columns;
      for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at += RUN)
        visit(base + (list[at] ?? 0), base + (list[at + 1] ?? -1), list[at + 2] ?? 0);
    }
  }
}

/** Densities of a plane, worked out when first asked for. */
export class PlaneFields implements Fields {
  private readonly camera: Camera;
  private readonly grid: Grid;
  private readonly rows: RowSpans;
  private readonly level: boolean;
  private made: Fields | null = null;

  constructor(camera: Camera, grid: Grid, rows: RowSpans) {
    this.camera = camera;
    this.grid = grid;
    this.rows = rows;
    this.level = Math.abs(grid.plane.normal[2]) > LEVEL;
  }

  get density(): Float32Array {
    this.made ??= this.make();
    return this.made.density;
  }

  get across(): Float32Array | null {
    if (this.level) return null;
    this.made ??= this.make();
    return this.made.across;
  }

  private make(): Fields {
    const { camera, grid, rows } = this;
    const { plane, cell, columns } = grid;
    const density = new Float32Array(columns * grid.rows);
    const across = this.level ? null : new Float32Array(columns * grid.rows);
    const field = new PixelField(camera);
    const step = scale(plane.u, cell);
    const away = subtract(plane.origin, camera.eye);
    for (let row = 0; row < grid.rows; row += 1) {
      const [low, high] = [rows[row * 2] ?? 0, rows[row * 2 + 1] ?? -1];
      if (low > high) continue;
      const a = grid.left + (low + 0.5) * cell;
      const b = grid.bottom + (row + 0.5) * cell;
      const dx = away[0] + a * plane.u[0] + b * plane.v[0];
      const dy = away[1] + a * plane.u[1] + b * plane.v[1];
      const dz = away[2] + a * plane.u[2] + b * plane.v[2];
      const from = row * columns + low;
      field.fillRow(dx, dy, dz, step, high - low + 1, density, from);
      if (across === null) continue;
      for (let at = 0; at <= high - low; at += 1) {
        // A bent lens leaves density 0 outside its frame; for a rectilinear one the rows' spans are the frame.
        if (camera.k !== 1 && density[from + at] === 0) continue;
        across[from + at] = field.along(dx + at * step[0], dy + at * step[1], dz + at * step[2], plane.u);
      }
    }
    return { density, across };
  }
}
