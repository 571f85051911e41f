/**
 * What is along the rows of a grid: runs of cells with one code, those of a row from the left. Neighbours differ in code;
 * cells in no run are outside the frame.
 */
export interface RowRuns {
  /** Where the runs of each row begin in `list`, and after the last row where they end. */
  readonly starts: Int32Array;
  /** Three numbers a run: first column, last column, code. */
  readonly list: Int32Array;
}

/** Numbers a run. */
export const RUN = 3;

/** Writes runs from the left, one row after the other; neighbours with one code become one. One object serves many cameras. */
export class RunWriter {
  private starts = new Int32Array(0);
  private list: Int32Array;
  private used = 0;
  private row = 0;

  /** @param room runs that there is room for at first */
  constructor(room = 256) {
    this.list = new Int32Array(Math.max(16, room) * RUN);
  }

  begin(rows: number): void {
    this.starts = new Int32Array(rows + 1);
    this.used = 0;
    this.row = 0;
  }

  /** Goes on with the next row. */
  endRow(): void {
    this.row += 1;
    this.starts[this.row] = this.used;
  }

  put(from: number, to: number, code: number): void {
    const { used } = this;
    let { list } = this;
    const isFirst = used === this.starts[this.row];
    if (!isFirst && list[used - 1] === code && list[used - 2] === from - 1) {
      list[used - 2] = to;
      return;
    }
    if (used === list.length) {
      list = new Int32Array(used * 2);
      list.set(this.list);
      this.list = list;
    }
    list[used] = from;
    list[used + 1] = to;
    list[used + 2] = code;
    this.used = used + RUN;
  }

  /** The runs of all rows, as long as no row is missing. */
  done(): RowRuns {
    return { starts: this.starts, list: this.list.slice(0, this.used) };
  }
}

/** The runs of the cells of a mask that hold a value, as code 0. */
export function runsWhere(mask: Uint8Array, value: number, columns: number, rows: number): RowRuns {
  const writer = new RunWriter();
  writer.begin(rows);
  for (let row = 0; row < rows; row += 1) {
    const base = row * columns;
    const end = base + columns;
    for (let at = base; at < end;) {
      while (at < end && mask[at] !== value) at += 1;
      const from = at;
      while (at < end && mask[at] === value) at += 1;
      if (at > from) writer.put(from - base, at - 1 - base, 0);
    }
    writer.endRow();
  }
  return writer.done();
}
