/** One level of an edition: enough pixels for this task, from `density` px/m upwards. */
export interface Band {
  readonly key: string;
  readonly name: string;
  readonly density: number;
}

/** An edition's levels, coarsest first. */
export interface Edition {
  readonly key: string;
  /** Printed beside every result: "IEC 62676-4:2014". */
  readonly name: string;
  readonly bands: readonly Band[];
}
