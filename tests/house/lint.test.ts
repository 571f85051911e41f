import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { root } from './install.mjs';

// Bad files live outside the project: no check of it should ever meet them.
const scratch = mkdtempSync(path.join(os.tmpdir(), 'soffit-lint-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** What a program of node_modules says about some sources, and whether it is content. */
const judge = (script: string, words: readonly string[], sources: Readonly<Record<string, string>>) => {
  for (const [name, source] of Object.entries(sources)) {
    mkdirSync(path.join(scratch, path.dirname(name)), { recursive: true });
    writeFileSync(path.join(scratch, name), source);
  }
  const program = path.join(root, 'node_modules', script);
  const done = spawnSync(process.execPath, [program, ...words], { cwd: scratch, encoding: 'utf8' });
  return { content: done.status === 0, said: `${done.stdout}${done.stderr}` };
};

const lint = (name: string, source: string) =>
  judge('oxlint/bin/oxlint', ['-c', path.join(root, 'tests/house/oxlint.config.js'), name], {
    [name]: source,
  });

test.each([
  ['src/base/upwards.ts', "export { a } from '../model/a.ts';\n", 'no-restricted-imports'],
  ['src/draw/three.ts', "export { Vector3 } from 'three';\n", 'no-restricted-imports'],
  ['src/sight/clock.ts', 'export const now = Date.now();\n', 'no-restricted-globals'],
  ['src/sight/timer.ts', 'export const now = performance.now();\n', 'no-restricted-globals'],
  ['src/mend/chance.ts', 'export const chance = Math.random();\n', 'no-restricted-properties'],
  ['src/editor/any.ts', 'export const a: any = 1;\n', 'no-explicit-any'],
  ['src/editor/bang.ts', 'export const a = (b: string | undefined) => b!;\n', 'no-non-null-assertion'],
  ['src/panels/long.ts', `export {};\n${'// line\n'.repeat(300)}`, 'max-lines'],
])('lint refuses %s', (name, source, rule) => {
  const { content, said } = lint(name, source);
  expect(said).toContain(rule);
  expect(content).toBe(false);
});

test('lint lets a type come from any room above', () => {
  expect(lint('src/panels/type.ts', "export type { A } from '../coverage/a.ts';\n").content).toBe(true);
});

test('the pure rooms know no document', () => {
  const configuration = JSON.stringify({
    extends: path.join(root, 'tests/house/engine.tsconfig.json'),
    include: ['pure.ts'],
  });
  const { content, said } = judge('typescript/bin/tsc', ['-p', 'pure.tsconfig.json'], {
    'pure.tsconfig.json': configuration,
    'pure.ts': 'export const title = document.title;\n',
  });
  expect(said).toContain("Cannot find name 'document'");
  expect(content).toBe(false);
});
