/** A drag on a number: each move starts again from what stood at the press. */
export interface NumberDrag {
  to(value: number): void;
  commit(): void;
  cancel(): void;
}

/** What a field does with a new number: typed is one step of history, arrow steps within a second are one together. */
export interface NumberEdit {
  set(value: number): void;
  step(value: number): void;
  drag(): NumberDrag;
}

/** The least and the greatest that a number may be, both included. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}
