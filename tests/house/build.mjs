import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

/** @typedef {'app' | 'cli'} Half */

/** What both halves are built from. */
const sources = ['src', 'assets', 'shared', 'index.html', 'vite.config.ts', 'package-lock.json'];

/**
 * vite.config.ts tells the halves apart by mode; `result` is what each leaves last.
 * @type {Readonly<Record<Half, { mode: string, result: string }>>}
 */
const halves = {
  app: { mode: 'production', result: 'dist/app/index.html' },
  cli: { mode: 'cli', result: 'dist/cli/soffit.js' },
};

/**
 * The newest change below a file or folder, s since 1970; 0 where nothing is.
 * A folder's own time counts too, so that a removed file is noticed.
 * @param {string} place
 * @returns {number}
 */
export const newestChange = (place) => {
  if (!existsSync(place)) return 0;
  const status = statSync(place);
  if (!status.isDirectory()) return status.mtimeMs / 1000;
  return readdirSync(place).reduce(
    (newest, name) => Math.max(newest, newestChange(path.join(place, name))),
    status.mtimeMs / 1000,
  );
};

/**
 * Whether a half is built, and after the last change of what it is built from.
 * @param {string} home
 * @param {Half} half
 */
export const isBuilt = (home, half) => {
  const changed = Math.max(...sources.map((name) => newestChange(path.join(home, name))));
  const file = path.join(home, halves[half].result);
  return existsSync(file) && statSync(file).mtimeMs / 1000 >= changed;
};

/**
 * Builds a half unless it is newer than everything it is built from. Throws when vite does.
 * @param {Half} half
 */
export const buildIfStale = async (half) => {
  if (isBuilt(root, half)) return;
  console.error(`Building dist/${half} …`);
  const vite = await import('vite');
  const before = process.env['NODE_ENV'];
  // Under vitest it says "test", and libraries would come in as made for development.
  process.env['NODE_ENV'] = 'production';
  try {
    await vite.build({
      root,
      configFile: path.join(root, 'vite.config.ts'),
      mode: halves[half].mode,
      // What a caller prints may be read by a machine: vite's tables stay away.
      logLevel: 'warn',
    });
  } finally {
    if (before === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = before;
  }
};
