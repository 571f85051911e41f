// npm run mutate: breaks src/sight and src/optics in one place after the other and runs the tests that reach it. What no test
// notices, and survivors.json does not excuse, is printed and makes the run fail.
//   npm run mutate -- [--sample N] [--seed S] [--part I/N] [--budget MS] [--all] [--json FILE] [--again FILE] [PATH…]
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { baseline, filesOf } from './baseline.mjs';
import { chunksOf, inOrder } from './chunks.mjs';
import { mayLive, readListed, staleOf } from './listed.mjs';
import { mutantsOf } from './mutants.mjs';
import { sampleOf } from './sample.mjs';
import { threadFor } from './thread.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '600' },
    seed: { type: 'string', default: '1' },
    // `2/3` does the second third, so that several cores can share a run.
    part: { type: 'string', default: '1/1' },
    // How many milliseconds of work the tests of one mutant may be, as they were when they were watched.
    budget: { type: 'string', default: '8000' },
    // Also what survivors.json excuses.
    all: { type: 'boolean', default: false },
    json: { type: 'string' },
    // Only what lived in an earlier run, by its --json.
    again: { type: 'string' },
    home: { type: 'string', default: path.resolve(import.meta.dirname, '../../..') },
    tests: {
      type: 'string',
      multiple: true,
      default: ['base', 'optics', 'sight', 'coverage', 'assess', 'property', 'outside'].map(
        (name) => `tests/${name}`,
      ),
    },
    survivors: { type: 'string', default: path.join(import.meta.dirname, 'survivors.json') },
  },
});
/** @param {string} fate */
const isAlive = (fate) => fate === 'lives' || fate === 'unreached';
/** @param {string} line */
const say = (line) => void process.stdout.write(`${line}\n`);

const root = path.resolve(values.home);
const sources = filesOf(root, positionals.length > 0 ? positionals : ['src/sight', 'src/optics'], '.ts');
const all = sources
  .flatMap((file) =>
    mutantsOf(file, readFileSync(path.join(root, file), 'utf8')).map((mutant) => ({ ...mutant, file })),
  )
  .map((mutant, place) => ({ ...mutant, place }));
const entries = readListed(values.survivors);
const excused = new Map(sources.map((file) => [file, mayLive(entries, file)]));
const chosen = sampleOf(
  all,
  values.sample === 'all' ? all.length : Number(values.sample),
  Number(values.seed),
);
/** @type {readonly Outcome[]} */
const earlier = values.again === undefined ? [] : JSON.parse(readFileSync(values.again, 'utf8'));
const byName = new Map(all.map((mutant) => [`${mutant.file}: ${mutant.name}`, mutant]));
const lived = earlier.flatMap(({ file, name, fate }) => {
  const mutant = byName.get(`${file}: ${name}`);
  return mutant !== undefined && isAlive(fate) ? [mutant] : [];
});
const asked = values.again === undefined ? chosen : lived;
const open = asked.filter(({ file, name }) => values.all || excused.get(file)?.has(name) !== true);
const [part = 1, parts = 1] = values.part.split('/').map(Number);
const wanted = open.filter((_, at) => at % parts === part - 1);
say(
  `${all.length} mutants in ${sources.length} files; ${asked.length} chosen, ${asked.length - open.length} of them excused`,
);

const thread = threadFor({ root, sources });
const tests = filesOf(root, values.tests, '.test.ts');
const memory = path.join(root, 'node_modules/.cache/soffit-mutate');
const watched = await baseline({ root, sources, tests, memory }, thread, say);
await thread.end();
say(`watched ${watched.reduce((sum, file) => sum + file.tests.length, 0)} tests in ${watched.length} files`);

/** @typedef {{ file: string, name: string, kind: string, fate: string, by: string, asked: number, left: number, ms: number }} Outcome */
/** @type {Outcome[]} */
const outcomes = [];
/** @type {Map<string, Map<string, number>>} */
const found = new Map(sources.map((file) => [file, new Map()]));

/** @param {(typeof all)[number]} mutant @returns {Promise<Outcome>} */
const tried = async (mutant) => {
  const { file, name, kind, place } = mutant;
  const known = found.get(file) ?? new Map();
  const started = Date.now();
  const chunks = inOrder(chunksOf(watched, place), known);
  /** @param {string} fate @param {string} by @param {number} asked @returns {Outcome} */
  const outcome = (fate, by, asked) => ({
    file,
    name,
    kind,
    fate,
    by,
    asked,
    left: chunks.length - asked,
    ms: Date.now() - started,
  });
  let spent = 0;
  for (const [index, chunk] of chunks.entries()) {
    if (index > 0 && spent + chunk.ms > Number(values.budget)) return outcome('lives', '', index);
    spent += chunk.ms;
    const reply = await thread.ask({ task: 'break', file, mutant, chunk }, 1500 + 4 * chunk.ms);
    if (reply.end === 'answer' && reply.result === null) continue;
    known.set(chunk.key, (known.get(chunk.key) ?? 0) + 1);
    if (reply.end !== 'answer') return outcome(reply.end, chunk.file, index + 1);
    return outcome('red', `${chunk.key}: ${JSON.stringify(reply.result)}`, index + 1);
  }
  return outcome(chunks.length === 0 ? 'unreached' : 'lives', '', chunks.length);
};

const started = Date.now();
for (const mutant of wanted) {
  const outcome = await tried(mutant);
  outcomes.push(outcome);
  if (isAlive(outcome.fate))
    say(
      `${outcome.fate}${outcome.left > 0 ? ` (${outcome.left} of ${outcome.left + outcome.asked} left out)` : ''}: ${outcome.file}: ${outcome.name}`,
    );
  if (values.json !== undefined) writeFileSync(values.json, JSON.stringify(outcomes, null, 1));
  if (outcomes.length % 50 === 0)
    say(`… ${outcomes.length} of ${wanted.length} in ${((Date.now() - started) / 1000).toFixed(0)} s`);
}
await thread.end();

/** @param {string} fate */
const count = (fate) => outcomes.filter((outcome) => outcome.fate === fate).length;
const stale = staleOf(entries, all, new Set(sources));
for (const name of stale) say(`listed, but no longer in the code: ${name}`);
const alive = count('lives') + count('unreached');
say(
  `${outcomes.length} mutants in ${((Date.now() - started) / 1000).toFixed(0)} s: ${count('red')} red, ${count('time')} without end, ` +
    `${count('memory')} out of memory, ${count('failed')} failed, ${count('lives')} live, ${count('unreached')} reached by no test`,
);
process.exitCode = alive > 0 || stale.length > 0 ? 1 : 0;
