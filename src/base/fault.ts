/**
 * Something wrong with what a person or a file gave: data, worded once in `plan/faultText.ts`.
 * `path` says where: keys and indices from the root of what was read.
 */
export interface Fault {
  readonly code: string;
  readonly path: readonly (string | number)[];
  /** What was found there. */
  readonly given?: string | number | undefined;
  /** What would be accepted. */
  readonly allowed?: string | undefined;
  /** Name of the thing that it concerns, as the person knows it. */
  readonly subject?: string | undefined;
}

/** A value, or all that is wrong with what should have become one. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly notes: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const accept = <T>(value: T, notes: readonly Fault[] = []): Outcome<T> => ({ ok: true, value, notes });

export const refuse = (
  ...faults: readonly Fault[]
): { readonly ok: false; readonly faults: readonly Fault[] } => ({
  ok: false,
  faults,
});
