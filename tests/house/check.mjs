// npm test: every check on a bare clone, each run to its end even when another
// failed. The last line counts tests and checks together.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { install, root } from './install.mjs';
import { tally } from './tally.mjs';

const scratch = mkdtempSync(path.join(os.tmpdir(), 'soffit-test-'));
const house = 'tests/house';
const code = ['src', 'tests', 'vite.config.ts'];
// Kept as they were received, so that their sums hold.
const asReceived = ['!tests/inputs/**', '!tests/old/**'];

let passed = 0;
/** @type {string[]} */
const failures = [];

/**
 * @param {string} name
 * @param {boolean} good
 */
const note = (name, good) => {
  if (good) passed += 1;
  else failures.push(name);
};

/**
 * Runs a program of node_modules by Node itself, so that Windows needs no shell.
 * @param {string} script
 * @param {readonly string[]} words
 */
const node = (script, words) => {
  const file = path.join('node_modules', script);
  return spawnSync(process.execPath, [file, ...words], { cwd: root, stdio: 'inherit' }).status === 0;
};

/**
 * @param {string} name
 * @param {() => boolean | Promise<boolean>} run
 */
const check = async (name, run) => {
  console.log(`\n── ${name}`);
  const started = Date.now();
  let good = false;
  try {
    good = await run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
  }
  console.log(`${good ? 'passed' : 'FAILED'} in ${((Date.now() - started) / 1000).toFixed(1)} s`);
  note(name, good);
  return good;
};

/**
 * Runs vitest projects and adds their tests to the count.
 * @param {readonly string[]} projects
 */
const tests = (projects) => {
  const name = `tests: ${projects.join(', ')}`;
  console.log(`\n── ${name}`);
  const report = path.join(scratch, `${projects.join('-')}.json`);
  const config = ['run', '--config', `${house}/vitest.config.ts`];
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const chosen = projects.map((project) => `--project=${project}`);
  const ended = node('vitest/vitest.mjs', [...config, ...reporters, ...chosen]);
  let counts = { passed: 0, failed: ['no report was written'] };
  try {
    counts = tally(JSON.parse(readFileSync(report, 'utf8')), root);
  } catch {
    console.error('vitest wrote no report: see its message above.');
  }
  // Errors outside a test, and a run without tests, fail no test of the report.
  if (!ended && counts.failed.length === 0) counts.failed.push('the run itself');
  if (ended && counts.passed === 0) counts.failed.push('no test ran');
  passed += counts.passed;
  failures.push(...counts.failed.map((test) => `${name}: ${test}`));
};

const ready = await check('install', () => {
  install();
  return true;
});
if (ready) {
  const { buildIfStale } = await import('./build.mjs');
  for (const half of /** @type {const} */ (['app', 'cli']))
    await check(`build of dist/${half}`, async () => {
      await buildIfStale(half);
      return true;
    });
  await check('types', () => node('typescript/bin/tsc', ['-p', '.']));
  await check('types of the pure rooms', () =>
    node('typescript/bin/tsc', ['-p', `${house}/engine.tsconfig.json`]),
  );
  await check('lint', () => node('oxlint/bin/oxlint', ['-c', `${house}/oxlint.config.js`, ...code]));
  await check('format', () =>
    node('oxfmt/bin/oxfmt', ['-c', `${house}/oxfmt.json`, '--check', ...code, ...asReceived]),
  );
  await check('dead code', () => node('knip/bin/knip.js', ['--config', `${house}/knip.json`]));
  tests(['unit', 'outside']);
  tests(['browser']);
}
rmSync(scratch, { recursive: true, force: true });

if (failures.length > 0) console.log(`\nFailed:\n${failures.map((name) => `  ${name}`).join('\n')}`);
console.log(`\n${passed} passed, ${failures.length} failed`);
process.exitCode = failures.length === 0 ? 0 : 1;
