import { readFileSync } from 'node:fs';

/** @typedef {{ file: string, kind: string, reason: string, mutants: readonly string[] }} Entry */

/** Why a mutant may live: it changes nothing, only how long something takes, or less than is promised. */
export const kinds = ['equivalent', 'speed', 'precision', 'unreachable'];

/** @param {URL | string} file @returns {readonly Entry[]} */
export const readListed = (file) => JSON.parse(readFileSync(file, 'utf8'));

/**
 * The names of a file's mutants that may live.
 * @param {readonly Entry[]} entries
 * @param {string} file
 */
export const mayLive = (entries, file) =>
  new Set(entries.filter((entry) => entry.file === file).flatMap(({ mutants }) => mutants));

/**
 * What the list names and the code no longer has.
 * @param {readonly Entry[]} entries
 * @param {readonly { file: string, name: string }[]} mutants  all of the files asked for
 * @param {ReadonlySet<string>} files  the files asked for
 */
export const staleOf = (entries, mutants, files) => {
  const known = new Set(mutants.map(({ file, name }) => `${file}: ${name}`));
  return entries
    .filter(({ file }) => files.has(file))
    .flatMap(({ file, mutants: names }) => names.map((name) => `${file}: ${name}`))
    .filter((name) => !known.has(name));
};
