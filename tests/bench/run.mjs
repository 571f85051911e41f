// npm run bench -- [words]: bundles main.ts and runs it. Words choose benches by name.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { build } from 'vite';
import { root } from '../house/install.mjs';

// Below node_modules, so that the packages it leaves outside are found from there.
const outDir = path.join(root, 'node_modules/.cache/soffit-bench');
await build({
  root,
  configFile: false,
  publicDir: false,
  logLevel: 'warn',
  build: { ssr: path.join(import.meta.dirname, 'main.ts'), outDir, emptyOutDir: true, target: 'node20' },
});
const done = spawnSync(process.execPath, [path.join(outDir, 'main.js'), ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
process.exitCode = done.status ?? 1;
