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

/** JSON as the commands print it. The bound of an area that is only counted is a guess: null, as in words it is left out. */
export const json = (value: unknown): string => `${JSON.stringify(value, proven, 2)}\n`;

const proven = (_key: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && 'how' in value && value.how === 'cells' && 'bound' in value
    ? { ...value, bound: null }
    : value;
