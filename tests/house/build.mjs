import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

/** What the build reads. A test lists the files that vite takes, so keep it whole. */
const sources = ['src', 'assets', 'shared', 'index.html', 'vite.config.ts', 'package-lock.json'];

/** What the build leaves, last written of each half. */
const results = ['dist/app/index.html', 'dist/cli/soffit.js'];

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
 * Whether both halves are built, and after the last change of what they are built from.
 * @param {string} home
 */
export const isBuilt = (home) => {
  const changed = Math.max(...sources.map((name) => newestChange(path.join(home, name))));
  return results.every((name) => {
    const file = path.join(home, name);
    return existsSync(file) && statSync(file).mtimeMs / 1000 >= changed;
  });
};

/** Builds the app into dist/app and the command line into dist/cli. Throws when a half fails. */
export const build = async () => {
  const vite = await import('vite');
  const configFile = path.join(root, 'vite.config.ts');
  // The builds' own tables go away: what a caller prints may be read by a machine.
  const shared = { root, configFile, logLevel: /** @type {const} */ ('warn') };
  await vite.build({ ...shared, mode: 'cli' });
  await vite.build({ ...shared, mode: 'production' });
};

/** Builds unless dist is newer than everything it is built from. */
export const buildIfStale = async () => {
  if (isBuilt(root)) return;
  console.error('Building …');
  await build();
};
