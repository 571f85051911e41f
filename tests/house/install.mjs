import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} Locked */

export const root = path.resolve(import.meta.dirname, '../..');

/**
 * @param {string} file
 * @returns {Record<string, Locked>}
 */
const packagesOf = (file) => JSON.parse(readFileSync(file, 'utf8')).packages ?? {};

/**
 * Whether what is installed is what the lockfile asks for.
 * @param {string} home  folder that holds package-lock.json and node_modules
 */
export const isInstalled = (home) => {
  // npm keeps its own record of what it put there.
  const record = path.join(home, 'node_modules/.package-lock.json');
  if (!existsSync(record)) return false;
  const wanted = packagesOf(path.join(home, 'package-lock.json'));
  const found = packagesOf(record);
  return Object.entries(wanted).every(([name, entry]) => {
    if (name === '') return true;
    const there = found[name];
    // Binaries for other machines are optional and rightly absent.
    if (there === undefined) return entry.optional === true;
    return there.version === entry.version && existsSync(path.join(home, name));
  });
};

/** Installs what the lockfile asks for, unless it is there. Throws when npm fails. */
export const install = () => {
  if (isInstalled(root)) return;
  console.log('Installing what package-lock.json lists …');
  const done = spawnSync('npm', ['ci'], {
    cwd: root,
    stdio: ['ignore', 2, 'inherit'],
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) throw new Error('npm ci failed; its own message stands above.');
};
