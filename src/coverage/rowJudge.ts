/** Judges runs of cells of one row after the other, from the left, and writes what comes out. */
export interface RowJudge {
  /** Cells of which it is known what they are, if they lie in the frame: inside a solid, hidden or screened. */
  place(row: number, from: number, to: number, code: number): void;
  /** Cells outside solids with nothing in the way. */
  open(row: number, from: number, to: number): void;
}
