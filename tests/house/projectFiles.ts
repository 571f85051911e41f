import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

/** Files below a folder of the project, from its root, with forward slashes. */
export const filesBelow = (folder: string): string[] =>
  readdirSync(path.join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();

/** Files that git tracks and that are still there; throws outside a clone. */
export const trackedFiles = (): string[] =>
  execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8', maxBuffer: 2 ** 26 })
    .split('\0')
    .filter((file) => file !== '' && existsSync(path.join(root, file)));

export const textOfFile = (file: string): string => readFileSync(path.join(root, file), 'utf8');
