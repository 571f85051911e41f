import { parseArgs, type ParseArgsConfig } from 'node:util';
import { BadInput } from './terminal.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What was typed after a command: its files, and its options by name. */
export interface Typed {
  readonly files: readonly string[];
  text(name: string): string | undefined;
  flag(name: string): boolean;
}

/**
 * Reads the words after a command.
 * @param names options that take a value
 * @param flags options that take none; `json` and `help` are always there
 * @throws BadInput on an option that the command does not have, or one without its value
 */
export function typed(
  words: readonly string[],
  names: readonly string[],
  flags: readonly string[] = [],
): Typed {
  const options: Options = { json: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } };
  for (const name of names) options[name] = { type: 'string' };
  for (const name of flags) options[name] = { type: 'boolean' };
  try {
    const { values, positionals } = parseArgs({
      args: joined(words, names),
      options,
      allowPositionals: true,
      strict: true,
    });
    return {
      files: positionals,
      text: (name) => {
        const value = values[name];
        return typeof value === 'string' ? value : undefined;
      },
      flag: (name) => values[name] === true,
    };
  } catch (error) {
    throw new BadInput(error instanceof Error ? `${error.message.split('. ')[0] ?? ''}.` : String(error));
  }
}

/** "--tilt -5" as "--tilt=-5": a negative number is no option. */
function joined(words: readonly string[], names: readonly string[]): string[] {
  const args: string[] = [];
  for (const word of words) {
    const before = args.at(-1);
    if (/^-[\d.]/.test(word) && before !== undefined && names.some((name) => before === `--${name}`))
      args[args.length - 1] = `${before}=${word}`;
    else args.push(word);
  }
  return args;
}

/** The one file that a command is about. */
export function oneFile({ files }: Typed, command: string, what: string): string {
  const [file, ...others] = files;
  if (file === undefined) throw new BadInput(`${command} needs ${what}. See soffit ${command} --help.`);
  if (others.length > 0)
    throw new BadInput(`${command} takes one file, got ${files.length}: ${files.join(', ')}.`);
  return file;
}

/** An option that a command cannot do without. */
export function required(options: Typed, command: string, name: string): string {
  const value = options.text(name);
  if (value === undefined) throw new BadInput(`${command} needs --${name}. See soffit ${command} --help.`);
  return value;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** A finite number as typed, within limits. */
export function numberOf(text: string, name: string, least = -Infinity, most = Infinity): number {
  const value = NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
  if (!Number.isFinite(value))
    throw new BadInput(`--${name} is “${text}”, which is no number. Write one like 2.4.`);
  if (value < least || value > most)
    throw new BadInput(
      `--${name} is ${text}. Make it ${most === Infinity ? `${least} or above` : `${least} to ${most}`}.`,
    );
  return value;
}

/** Numbers as typed with one mark between them: "1,2,3", "2688x1520". */
export function numbersOf(text: string, name: string, between: RegExp, form: string): readonly number[] {
  const parts = text.split(between);
  if (parts.length !== form.split(between).length)
    throw new BadInput(`--${name} is “${text}”. Write ${form}.`);
  return parts.map((part) => numberOf(part, name));
}
