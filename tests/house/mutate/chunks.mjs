/** @typedef {{ name: string, ms: number, fault: string | null, hits: ReadonlySet<number> }} WatchedTest */
/** @typedef {{ file: string, loadMs: number, atLoad: ReadonlySet<number>, tests: readonly WatchedTest[] }} WatchedFile */
/** @typedef {{ key: string, file: string, tests: readonly string[], ms: number }} Chunk */

/** Tests below this many milliseconds run together, since a file takes as long to load. */
const LIGHT = 300;

/**
 * Which tests reach a mutant, in pieces that run together. What a file does while it loads counts for all its tests.
 * @param {readonly WatchedFile[]} files
 * @param {number} place  the mutant's number
 * @returns {Chunk[]}
 */
export const chunksOf = (files, place) =>
  files.flatMap(({ file, loadMs, atLoad, tests }) => {
    const reaching = atLoad.has(place) ? tests : tests.filter(({ hits }) => hits.has(place));
    const green = reaching.filter(({ fault }) => fault === null);
    const light = green.filter(({ ms }) => ms < LIGHT);
    const heavy = green.filter(({ ms }) => ms >= LIGHT);
    /** @param {readonly WatchedTest[]} group @param {string} key */
    const chunk = (group, key) => ({
      key: `${file} ${key}`,
      file,
      tests: group.map(({ name }) => name),
      ms: loadMs + group.reduce((sum, { ms }) => sum + ms, 0),
    });
    const first = light.length === 0 ? [] : [chunk(light, '')];
    return [...first, ...heavy.map((test) => chunk([test], test.name))];
  });

/**
 * The quick ones first, and those sooner that have found something in this file already.
 * @param {readonly Chunk[]} chunks
 * @param {ReadonlyMap<string, number>} found  how often, by key
 */
export const inOrder = (chunks, found) =>
  [...chunks].sort((a, b) => a.ms / (1 + (found.get(a.key) ?? 0)) - b.ms / (1 + (found.get(b.key) ?? 0)));
