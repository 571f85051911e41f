import { createHash } from 'node:crypto';

/** @typedef {{ file: string, name: string }} Named */

/** @param {string} text */
const mixed = (text) => createHash('sha256').update(text).digest('hex');

/**
 * A seeded sample in which each file has its share. It hangs on names alone, so that a change to one line leaves the others
 * chosen, and a greater sample holds the smaller one. In the order of chance: what comes first is a fair sample too.
 * @template {Named} T
 * @param {readonly T[]} all
 * @param {number} size
 * @param {number} seed
 * @returns {T[]}
 */
export const sampleOf = (all, size, seed) => {
  const byFile = grouped(all);
  const placed = [...byFile.values()].flatMap((own) =>
    own
      .map((one) => ({ one, at: mixed(`${seed} ${one.file} ${one.name}`) }))
      .sort((a, b) => (a.at < b.at ? -1 : 1))
      .map(({ one, at }, index) => ({
        one,
        share: (index + parseInt(at.slice(0, 8), 16) / 2 ** 32) / own.length,
      })),
  );
  return placed
    .sort((a, b) => a.share - b.share)
    .slice(0, size)
    .map(({ one }) => one);
};

/** @template {Named} T @param {readonly T[]} all */
const grouped = (all) => {
  /** @type {Map<string, T[]>} */
  const map = new Map();
  for (const one of all) map.set(one.file, [...(map.get(one.file) ?? []), one]);
  return map;
};
