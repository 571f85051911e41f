import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import { loadFresh, plainCode } from './modules.mjs';
import { broken, mutantsOf, watched } from './mutants.mjs';
import { gathering, spent } from './testApi.mjs';

/** @typedef {import('./mutants.mjs').Mutant} Mutant */
/** @typedef {{ file: string, tests: readonly string[] }} Chunk */
/** @typedef {{ task: 'watch', file: string } | { task: 'break', file: string, mutant: Mutant, chunk: Chunk }} Order */
/** @typedef {{ name: string, ms: number, fault: string | null, hits: readonly number[] }} Watched */

/** @type {string} */
const root = workerData.root;
/** @type {readonly string[]} */
const sources = workerData.sources;

// A broken property need not be made small.
fc.configureGlobal({ endOnFailure: true });

/** @param {unknown} fault */
const words = (fault) =>
  (fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault)).slice(0, 300);

/** @type {Map<string, string> | null} */
let watchedCode = null;
let hits = new Uint8Array(0);

/** All sources with every mutant's place watched. */
const watchAll = async () => {
  watchedCode = new Map();
  let first = 0;
  for (const file of sources) {
    const full = path.join(root, file);
    const text = readFileSync(full, 'utf8');
    const mutants = mutantsOf(file, text);
    watchedCode.set(full, await plainCode(full, watched(text, mutants, first)));
    first += mutants.length;
  }
  hits = new Uint8Array(first);
  Object.assign(globalThis, { soffitHits: hits });
  return watchedCode;
};

/** The places reached since the last call. */
const taken = () => {
  const list = [...hits.keys()].filter((index) => hits[index] === 1);
  hits.fill(0);
  return list;
};

/** Runs a test file whole and tells of each test what it reaches. @param {string} file */
const watch = async (file) => {
  const code = watchedCode ?? (await watchAll());
  hits.fill(0);
  const { api, run } = gathering();
  const started = spent();
  await loadFresh(path.join(root, file), api, code);
  const loadMs = spent() - started;
  const atLoad = new Set(taken());
  /** @type {Watched[]} */
  const tests = [];
  await run(
    () => true,
    (name, fault, ms) => {
      tests.push({ name, ms, fault: fault === null ? null : words(fault), hits: taken() });
      return true;
    },
    () => taken().forEach((place) => atLoad.add(place)),
  );
  return { loadMs, atLoad: [...atLoad], tests };
};

/** A mutant's code, kept for the next chunk of tests. */
let last = { key: '', code: '' };
/** @param {string} file @param {Mutant} mutant */
const brokenCode = async (file, mutant) => {
  const key = `${file} ${mutant.name}`;
  if (last.key !== key)
    last = { key, code: await plainCode(file, broken(readFileSync(file, 'utf8'), mutant)) };
  return last.code;
};

/**
 * Runs tests of a file with a mutant until one is red; null where none is.
 * @param {string} file
 * @param {Mutant} mutant
 * @param {Chunk} chunk
 */
const killer = async (file, mutant, chunk) => {
  const full = path.join(root, file);
  const wanted = new Set(chunk.tests);
  const { api, run } = gathering();
  /** @type {{ name: string, fault: string } | null} */
  let red = null;
  try {
    const code = await brokenCode(full, mutant);
    await loadFresh(path.join(root, chunk.file), api, new Map([[full, code]]));
    await run(
      (name) => wanted.has(name),
      (name, fault) => {
        if (fault !== null) red = { name, fault: words(fault) };
        return fault === null;
      },
    );
  } catch (error) {
    red ??= { name: '', fault: words(error) };
  }
  return red;
};

/** @param {Order} order */
const answer = async (order) => {
  try {
    const { task, file } = order;
    return { result: task === 'watch' ? await watch(file) : await killer(file, order.mutant, order.chunk) };
  } catch (error) {
    return { failed: words(error) };
  }
};
parentPort?.on('message', (/** @type {Order} */ order) => {
  void answer(order).then((reply) => parentPort?.postMessage(reply));
});
