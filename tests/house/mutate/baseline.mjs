import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** @typedef {import('./chunks.mjs').WatchedFile} WatchedFile */
/** @typedef {ReturnType<typeof import('./thread.mjs').threadFor>} Thread */
/** @typedef {{ name: string, ms: number, fault: string | null, hits: readonly number[] }} RawTest */
/** @typedef {{ loadMs: number, atLoad: readonly number[], tests: readonly RawTest[] }} Raw */

const MOST_MS = 600_000;

/**
 * Files below folders, or the files themselves, told from the root with forward slashes.
 * @param {string} root
 * @param {readonly string[]} folders
 * @param {string} ending
 */
export const filesOf = (root, folders, ending) =>
  folders
    .flatMap((folder) => {
      if (folder.endsWith(ending)) return [folder];
      return readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith(ending))
        .map((name) => `${folder}/${name}`);
    })
    .map((name) => name.split(path.sep).join('/'))
    .sort();

/** A sum over all texts that a test's run hangs on but its own. @param {string} root @param {readonly string[]} sources */
const ground = (root, sources) => {
  const sum = createHash('sha256').update(sources.join());
  const shared = filesOf(root, ['src', 'tests'], '.ts').filter((file) => !file.endsWith('.test.ts'));
  for (const file of shared) sum.update(readFileSync(path.join(root, file)));
  for (const own of ['mutants.mjs', 'swaps.mjs', 'worker.mjs', 'testApi.mjs'])
    sum.update(readFileSync(new URL(own, import.meta.url)));
  return sum.digest('hex');
};

/**
 * Runs every test once on watched sources: how long it takes and which mutants' places it reaches. What did not change
 * since is remembered in a folder.
 * @param {{ root: string, sources: readonly string[], tests: readonly string[], memory: string }} asked
 * @param {Thread} thread
 * @param {(line: string) => void} say
 * @returns {Promise<WatchedFile[]>}
 */
export const baseline = async ({ root, sources, tests, memory }, thread, say) => {
  mkdirSync(memory, { recursive: true });
  const shared = ground(root, sources);
  /** @type {WatchedFile[]} */
  const files = [];
  for (const file of tests) {
    const own = readFileSync(path.join(root, file));
    const sum = createHash('sha256').update(shared).update(file).update(own).digest('hex');
    const kept = path.join(memory, `${sum.slice(0, 32)}.json`);
    const raw = remembered(kept) ?? (await watchedRun(file, thread, say));
    if (raw === null) continue;
    writeFileSync(kept, JSON.stringify(raw));
    for (const { name, fault } of raw.tests)
      if (fault !== null) say(`red without a mutant: ${file} › ${name}: ${fault}`);
    files.push({
      file,
      loadMs: raw.loadMs,
      atLoad: new Set(raw.atLoad),
      tests: raw.tests.map((test) => ({ ...test, hits: new Set(test.hits) })),
    });
  }
  return files;
};

/** @param {string} file @returns {Raw | null} */
const remembered = (file) => {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
};

/** @param {string} file @param {Thread} thread @param {(line: string) => void} say @returns {Promise<Raw | null>} */
const watchedRun = async (file, thread, say) => {
  const reply = await thread.ask({ task: 'watch', file }, MOST_MS);
  if (reply.end === 'answer') return /** @type {Raw} */ (reply.result);
  say(`left out: ${file}: ${reply.words}`);
  return null;
};
