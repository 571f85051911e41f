/** How far a long job has come: share in [0, 1] and what it is doing, in words. */
export type Progress = (share: number, doing: string) => void;

/** A long job that was called off; the one exception that is not a bug. */
export class CancelledError extends Error {
  override readonly name = 'CancelledError';
  constructor() {
    super('called off');
  }
}
