/** What a command speaks to; tests give one of their own. */
export interface Terminal {
  /** What was asked for. */
  out(text: string): void;
  /** What the person should know besides. */
  err(text: string): void;
}

/** The person or a file gave something that cannot be used: exit 2 with these words. */
export class BadInput extends Error {
  override readonly name = 'BadInput';
}
