import { devicesJsonSchema } from '../plan/devices/devicesFile.ts';
import { planJsonSchema } from '../plan/schema.ts';
import { json, type Command } from './command.ts';
import { typed } from './options.ts';
import { BadInput } from './terminal.ts';

export const schema: Command = {
  name: 'schema',
  help: `soffit schema [plan|devices] [--json]

Prints the JSON Schema of the plan file, or of a file of devices. It is JSON with or without --json.`,
  run: (words, terminal) => {
    const { files } = typed(words, []);
    const [of = 'plan'] = files;
    if (files.length > 1 || (of !== 'plan' && of !== 'devices'))
      throw new BadInput(`schema takes “plan” or “devices”, got ${files.join(', ')}.`);
    terminal.out(json(of === 'devices' ? devicesJsonSchema() : planJsonSchema()));
  },
};
