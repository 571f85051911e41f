import os from 'node:os';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { filesBelow, textOfFile, trackedFiles } from './projectFiles.ts';

const topLevel = [
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'vite.config.ts',
  'index.html',
  'src',
  'tests',
  'assets',
  'shared',
];

/** Text only: a picture may hold any bytes. */
const texts = trackedFiles().filter(
  (file) => !/\.(png|jpe?g|webp|woff2?|ico|pdf|tiff?|zip|wasm)$/i.test(file),
);

/** Files in which the pattern occurs, with the first place. */
const places = (files: readonly string[], pattern: RegExp): string[] =>
  files.flatMap((file) => {
    const found = pattern.exec(textOfFile(file));
    return found === null ? [] : [`${file}: ${found[0]}`];
  });

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A folder of this machine, not as a part of some longer relative path. */
const folder = (name: string): RegExp => new RegExp(`(?<![\\w.)}/])${escaped(name)}/`);

test('the top level holds nothing new', () => {
  const tracked = new Set(trackedFiles().map((file) => file.split('/')[0] ?? ''));
  const strangers = [...tracked].filter((name) => !name.startsWith('.') && !topLevel.includes(name));
  expect(strangers).toEqual([]);
});

test('no file names a folder of the machine it was written on', () => {
  expect(texts.length).toBeGreaterThan(0);
  // Put together here, so that this file does not find itself.
  expect(places(texts, folder(['', 'work'].join('/')))).toEqual([]);
  expect(places(texts, folder(os.homedir()))).toEqual([]);
});

test('the search for such folders finds one', () => {
  expect(folder('/home/someone').test('from "/home/someone/plan.json"')).toBe(true);
  expect(folder('/home/someone').test('from "../home/someone/plan.json"')).toBe(false);
});

test('the lockfile and all else names no registry', () => {
  expect(places(texts, /"resolved":\s*"http/)).toEqual([]);
  expect(places(texts, /registry[.][a-z]+js[.]org|registry[=]http/)).toEqual([]);
});

test('every dependency is pinned to one version', () => {
  const parts = z.object({
    dependencies: z.record(z.string(), z.string()),
    devDependencies: z.record(z.string(), z.string()),
  });
  const { dependencies, devDependencies } = parts.parse(JSON.parse(textOfFile('package.json')));
  const versions = Object.entries({ ...dependencies, ...devDependencies });
  expect(versions.length).toBeGreaterThan(0);
  expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))).toEqual([]);
});

test('no file of src is longer than 300 lines', () => {
  const long = filesBelow('src')
    .map((file) => [file, textOfFile(file).replace(/\n$/, '').split('\n').length] as const)
    .filter(([, lines]) => lines > 300);
  expect(long).toEqual([]);
});

test('no type is talked out of its truth', () => {
  const code = texts.filter((file) => /^(src|tests)\/.*\.tsx?$/.test(file));
  const cast = ['as', 'unknown', 'as'].join('\\s+');
  expect(places(code, new RegExp(`\\b${cast}\\b`))).toEqual([]);
  expect(places(code, new RegExp(`@ts-(ignore|${'nocheck'})|(ox|es)lint-${'disable'}`))).toEqual([]);
});

test('names say what is inside: no utils, helpers, manager, index', () => {
  const vague = filesBelow('src').filter((file) =>
    /(^|\/)(utils?|helpers?|\w*manager|index)[./]/i.test(file),
  );
  expect(vague).toEqual([]);
});
