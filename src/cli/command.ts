import type { Terminal } from './terminal.ts';

/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** How it is typed, and what it does, a line each. */
  readonly help: string;
  /**
   * Does it with the words after its name; later where it must wait for something that is fetched.
   * @throws BadInput with a message for the person
   */
  run(words: readonly string[], terminal: Terminal): void | Promise<void>;
}

/** JSON as the commands print it. */
export const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
