import { cameras } from './cameras.ts';
import { card } from './card.ts';
import { cautions } from './cautions.ts';
import { cells } from './cells.ts';
import type { Command } from './command.ts';
import { cover } from './cover.ts';
import { figure } from './figure.ts';
import { importFile } from './import.ts';
import { mount } from './mount.ts';
import { schema } from './schema.ts';
import { section } from './section.ts';
import { solids } from './solids.ts';
import { surfaces } from './surfaces.ts';
import { BadInput, type Terminal } from './terminal.ts';

const commands: readonly Command[] = [
  cover,
  cells,
  figure,
  section,
  card,
  cautions,
  surfaces,
  solids,
  cameras,
  mount,
  importFile,
  schema,
];

const help = `soffit COMMAND …

Shows what each camera of a plan truly sees, from the geometry.

${commands.map(({ help: text }) => `  ${text.split('\n')[0]?.replace(/ \[.*$/, ' …') ?? ''}`).join('\n')}

soffit COMMAND --help says more. Exit code 0: done; 2: something given cannot
be used, and a message says what (1 is kept for a brief that is not met).
`;

/**
 * The command line: the words after `soffit`.
 * @returns the exit code: 0 done, 2 bad input with a message on the error stream; of what takes its time, later
 */
export function run(words: readonly string[], terminal: Terminal): number | Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    (name === undefined ? terminal.err : terminal.out)(help);
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((one) => one.name === name);
  if (!command) {
    terminal.err(
      `soffit: there is no command “${name}”. There are: ${commands.map((one) => one.name).join(', ')}.\n`,
    );
    return 2;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    terminal.out(`${command.help}\n`);
    return 0;
  }
  const refused = (error: unknown): number => {
    if (!(error instanceof BadInput)) throw error;
    terminal.err(`soffit ${name}: ${error.message}\n`);
    return 2;
  };
  try {
    return command.run(rest, terminal)?.then(() => 0, refused) ?? 0;
  } catch (error) {
    return refused(error);
  }
}
