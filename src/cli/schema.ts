import { planJsonSchema } from '../plan/schema.ts';
import { json, type Command } from './command.ts';
import { typed } from './options.ts';
import { BadInput } from './terminal.ts';

export const schema: Command = {
  name: 'schema',
  help: `soffit schema [--json]

Prints the JSON Schema of the plan file, which is JSON with or without --json.`,
  run: (words, terminal) => {
    const { files } = typed(words, []);
    if (files.length > 0) throw new BadInput(`schema takes no file, got ${files.join(', ')}.`);
    terminal.out(json(planJsonSchema()));
  },
};
