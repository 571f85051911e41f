#!/usr/bin/env node
import { writeSync } from 'node:fs';
import { run } from './run.ts';

/** Writes all of a text at once, also into a pipe that is slow to drain. */
const write = (stream: 1 | 2) => (text: string) => {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length;) {
    try {
      at += writeSync(stream, bytes, at);
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      // Whoever reads has heard enough.
      if (code === 'EPIPE') process.exit(0);
      if (code !== 'EAGAIN') throw error;
    }
  }
};

process.exitCode = await run(process.argv.slice(2), { out: write(1), err: write(2) });
