import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { isBuilt } from './build.mjs';
import { isInstalled } from './install.mjs';

let home = '';
beforeEach(() => {
  home = mkdtempSync(path.join(os.tmpdir(), 'soffit-house-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** Writes a file, and dates it and its folder to a second of 2001. */
const put = (name: string, text: string, second: number): void => {
  const file = path.join(home, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, text);
  for (const place of [file, path.dirname(file)]) utimesSync(place, 1e9 + second, 1e9 + second);
};

const lock = (packages: object): string => JSON.stringify({ packages });

test('a build is stale when missing, or older than a source', () => {
  put('src/a.ts', '', 1);
  expect(isBuilt(home, 'app')).toBe(false);
  put('dist/app/index.html', '', 2);
  expect(isBuilt(home, 'app')).toBe(true);
  expect(isBuilt(home, 'cli')).toBe(false);
  put('src/a.ts', 'changed', 3);
  expect(isBuilt(home, 'app')).toBe(false);
});

test('a build is stale when a source went away after it', () => {
  put('src/room/a.ts', '', 1);
  put('src/room/b.ts', '', 1);
  utimesSync(path.join(home, 'src'), 1e9, 1e9);
  put('dist/app/index.html', '', 2);
  expect(isBuilt(home, 'app')).toBe(true);
  rmSync(path.join(home, 'src/room/b.ts'));
  expect(isBuilt(home, 'app')).toBe(false);
});

test('an installation is stale when missing, in part missing, or of another version', () => {
  put('package-lock.json', lock({ '': {}, 'node_modules/a': { version: '1.0.0' } }), 1);
  expect(isInstalled(home)).toBe(false);
  put('node_modules/.package-lock.json', lock({ 'node_modules/a': { version: '1.0.0' } }), 1);
  expect(isInstalled(home)).toBe(false);
  put('node_modules/a/package.json', '{}', 1);
  expect(isInstalled(home)).toBe(true);
  put('package-lock.json', lock({ '': {}, 'node_modules/a': { version: '2.0.0' } }), 1);
  expect(isInstalled(home)).toBe(false);
});

test('an optional package for another machine may be absent', () => {
  put('package-lock.json', lock({ 'node_modules/a': { version: '1.0.0', optional: true } }), 1);
  put('node_modules/.package-lock.json', lock({}), 1);
  expect(isInstalled(home)).toBe(true);
});
