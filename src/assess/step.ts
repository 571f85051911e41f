/** A step of a long job: how far it has come, in [0, 1], and what it is doing, in words. */
export interface Step {
  readonly share: number;
  readonly doing: string;
}
