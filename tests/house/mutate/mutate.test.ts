import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { z } from 'zod';
import { kinds, readListed, staleOf } from './listed.mjs';
import { broken, mutantsOf, watched } from './mutants.mjs';
import { sampleOf } from './sample.mjs';

const source = [
  '/** → tells whether many are big */',
  'export const tell = (list: readonly number[], at: number): string => {',
  '  if (list.length === 0 || (list[at] ?? 0) < 3) return `few`;',
  '  return list.some((one) => one > 2 * at) ? `many` : `some`;',
  '};',
].join('\n');

const home = mkdtempSync(path.join(os.tmpdir(), 'soffit-mutate-'));
afterAll(() => rmSync(home, { recursive: true }));

/** Runs the tool on a house of one room with one test. */
const run = (survivors: unknown): { status: number | null; said: string[] } => {
  for (const folder of ['src', 'tests']) mkdirSync(path.join(home, folder), { recursive: true });
  writeFileSync(
    path.join(home, 'src/count.ts'),
    [
      'const start: number = 1;',
      'export const count = (until: number): number => {',
      '  let sum = start;',
      '  while (sum <= until) sum += 1;',
      '  return sum;',
      '};',
      'export const unasked = (on: boolean): boolean => !on;',
    ].join('\n'),
  );
  writeFileSync(
    path.join(home, 'tests/count.test.ts'),
    [
      "import { describe, expect, test } from 'vitest';",
      "import { count } from '../src/count.ts';",
      "describe('counting', () => test.each([0.5, 7.5])('goes past %s', (n) => expect(count(n)).toBe(Math.ceil(n))));",
    ].join('\n'),
  );
  const list = path.join(home, 'survivors.json');
  writeFileSync(list, JSON.stringify(survivors));
  const words = [
    'run.mjs',
    '--home',
    home,
    '--tests',
    'tests',
    '--survivors',
    list,
    '--sample',
    'all',
    'src',
  ];
  const { status, stdout, stderr } = spawnSync(process.execPath, words, {
    cwd: import.meta.dirname,
    encoding: 'utf8',
  });
  return { status, said: `${stdout}${stderr}`.trim().split('\n') };
};

test('mutants are single changes of what runs, named by their line', () => {
  const mutants = mutantsOf('tell.ts', source);
  expect(mutants.map(({ name }) => name)).toEqual([
    'if (⟦list.length === 0 || (list[at] ?? 0) < 3 → true⟧) return `few`;',
    'if (⟦list.length === 0 || (list[at] ?? 0) < 3 → false⟧) return `few`;',
    'if (list.length === 0 ⟦|| → &&⟧ (list[at] ?? 0) < 3) return `few`;',
    'if (list.length ⟦=== → !==⟧ 0 || (list[at] ?? 0) < 3) return `few`;',
    'if (list.length === ⟦0 → 1⟧ || (list[at] ?? 0) < 3) return `few`;',
    'if (list.length === 0 || (list[at] ?? 0) ⟦< → <=⟧ 3) return `few`;',
    'if (list.length === 0 || (list[at] ?? 0) ⟦< → >=⟧ 3) return `few`;',
    'if (list.length === 0 || (list[at] ?? 0) < ⟦3 → 4⟧) return `few`;',
    'return ⟦list.some((one) => one > 2 * at) → true⟧ ? `many` : `some`;',
    'return ⟦list.some((one) => one > 2 * at) → false⟧ ? `many` : `some`;',
    'return list.⟦some → every⟧((one) => one > 2 * at) ? `many` : `some`;',
    'return list.some((one) => one ⟦> → >=⟧ 2 * at) ? `many` : `some`;',
    'return list.some((one) => one ⟦> → <=⟧ 2 * at) ? `many` : `some`;',
    'return list.some((one) => one > 2 ⟦* → /⟧ at) ? `many` : `some`;',
    'return list.some((one) => one > ⟦2 → 3⟧ * at) ? `many` : `some`;',
  ]);
  const texts = new Set(mutants.map((mutant) => broken(source, mutant)));
  expect(texts.size).toBe(mutants.length);
  // What watches them parses, and is the source once the marks are out.
  const marked = watched(source, mutants, 0);
  expect(mutantsOf('tell.ts', marked).length).toBeGreaterThan(0);
  const bare = marked.replace(/^.*?;/, '').replace(/\((hits_\[\d+\]=1,)+/g, '(');
  expect(bare.replace(/[()]/g, '')).toBe(source.replace(/[()]/g, ''));
});

test('a number behind ?? is left alone, also one below 0', () => {
  const names = mutantsOf('guard.ts', 'const one = (list[0 + at] ?? -1) + (list[at] ?? 1);').map(
    ({ name }) => name,
  );
  expect(names).toEqual([
    'const one = (list[0 + at] ?? -1) ⟦+ → -⟧ (list[at] ?? 1);',
    'const one = (list[0 ⟦+ → -⟧ at] ?? -1) + (list[at] ?? 1);',
    'const one = (list[⟦0 → 1⟧ + at] ?? -1) + (list[at] ?? 1);',
  ]);
});

test('the same line twice has two names', () => {
  const names = mutantsOf('twice.ts', 'let a = 1;\na += 2;\na += 2;').map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});

test('a sample gives each file its share, and a greater one holds it', () => {
  const all = ['a', 'b'].flatMap((file) =>
    Array.from({ length: file === 'a' ? 300 : 100 }, (_, index) => ({ file, name: `${index}` })),
  );
  const [less, more, other] = [sampleOf(all, 40, 1), sampleOf(all, 80, 1), sampleOf(all, 40, 2)];
  expect(less.filter(({ file }) => file === 'b').length).toBe(10);
  expect(new Set([...less, ...more]).size).toBe(80);
  expect(other).not.toEqual(less);
});

test('a run tells what no test notices, what none reaches, and ends loops', () => {
  const { status, said } = run([]);
  expect(said.filter((line) => /^(lives|unreached)/.test(line)).sort()).toEqual([
    'lives: src/count.ts: while (sum ⟦<= → <⟧ until) sum += 1;',
    'unreached: src/count.ts: export const unasked = (on: boolean): boolean => ⟦!on → on⟧;',
  ]);
  expect(said.at(-1)).toMatch(
    /^7 mutants in \d+ s: 3 red, 2 without end, 0 out of memory, 0 failed, 1 live, 1 reached/,
  );
  expect(status).toBe(1);
}, 60_000);

test('a run leaves out what is listed, and tells what is listed in vain', () => {
  const mutants = [
    'while (sum ⟦<= → <⟧ until) sum += 1;',
    'export const unasked = (on: boolean): boolean => ⟦!on → on⟧;',
  ];
  const entry = { file: 'src/count.ts', kind: 'equivalent', reason: 'for this test', mutants };
  const { status, said } = run([{ ...entry, mutants: [...mutants, 'sum ⟦+ → -⟧ 1'] }]);
  expect(said[0]).toMatch(/2 of them excused$/);
  expect(said.at(-1)).toMatch(/ 0 live, 0 reached by no test$/);
  expect(said).toContain('listed, but no longer in the code: src/count.ts: sum ⟦+ → -⟧ 1');
  expect(status).toBe(1);
}, 60_000);

test('what may live is listed once, with a reason of a known kind', () => {
  const shape = z.array(
    z.strictObject({
      file: z.string(),
      kind: z.enum(kinds),
      reason: z.string().min(15),
      mutants: z.array(z.string().includes('⟧')).min(1),
    }),
  );
  const entries = shape.parse(readListed(new URL('./survivors.json', import.meta.url)));
  const names = entries.flatMap(({ file, mutants }) => mutants.map((name) => `${file}: ${name}`));
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  expect(staleOf(entries, [], new Set())).toEqual([]);
});
