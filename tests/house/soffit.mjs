// npm run soffit: the command line, built first when it is missing or stale.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { buildIfStale } from './build.mjs';
import { root } from './install.mjs';

await buildIfStale('cli');
const done = spawnSync(process.execPath, [path.join(root, 'dist/cli/soffit.js'), ...process.argv.slice(2)], {
  // npm moved to the project; file names are meant from where the person stood.
  cwd: process.env['INIT_CWD'] ?? process.cwd(),
  stdio: 'inherit',
});
process.exitCode = done.status ?? 1;
