import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { root } from './install.mjs';

/** What the search asks of the machine; a test gives a machine of its own. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isRoot: boolean;
  /** Whether a file stands there. */
  has(file: string): boolean;
  /** Where playwright keeps, or would keep, a browser of its own. */
  ownBrowser(): string;
  /** Runs a program to its end; whether it succeeded. */
  run(program: string, words: readonly string[]): boolean;
}

const names = ['chromium', 'chromium-browser', 'google-chrome', 'msedge'];

const notFound =
  'No Chromium was found for the browser tests: install one (on Debian `apt-get install chromium`, ' +
  'elsewhere `npx playwright-core install chromium`) or name one in the environment variable SOFFIT_CHROMIUM.';

/** Every file that the path's folders would answer to these names with, by name first. */
const onPath = (machine: Machine): string[] => {
  const windows = machine.platform === 'win32';
  const join = windows ? path.win32.join : path.posix.join;
  const folders = (machine.env['PATH'] ?? '').split(windows ? ';' : ':').filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => join(folder, windows ? `${name}.exe` : name)));
};

/** Where installers of the two systems put browsers that are not on the path. */
const usualPlaces = (machine: Machine): string[] => {
  if (machine.platform === 'darwin')
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].flatMap((name) =>
      ['', machine.env['HOME'] ?? ''].map(
        (home) => `${home}/Applications/${name}.app/Contents/MacOS/${name}`,
      ),
    );
  if (machine.platform !== 'win32') return [];
  const homes = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(
    (name) => machine.env[name] ?? [],
  );
  return ['Chromium\\Application\\chrome.exe', 'Google\\Chrome\\Application\\chrome.exe']
    .concat('Microsoft\\Edge\\Application\\msedge.exe')
    .flatMap((file) => homes.map((home) => path.win32.join(home, file)));
};

/** The first browser that is there already, or undefined. */
const present = (machine: Machine): string | undefined =>
  [...onPath(machine), ...usualPlaces(machine), machine.ownBrowser()].find((file) => machine.has(file));

/** Debian's package as root, else playwright's own download. */
const fetched = (machine: Machine): string | undefined => {
  if (machine.platform === 'linux' && machine.isRoot && machine.has('/usr/bin/apt-get')) {
    const words = ['install', '--yes', '--no-install-recommends', 'chromium'];
    if (machine.run('apt-get', ['update']) && machine.run('apt-get', words)) {
      const file = present(machine);
      if (file !== undefined) return file;
    }
  }
  const cli = path.join(root, 'node_modules/playwright-core/cli.js');
  return machine.run(process.execPath, [cli, 'install', 'chromium']) ? present(machine) : undefined;
};

const isFile = (file: string): boolean => existsSync(file) && statSync(file).isFile();

const thisMachine: Machine = {
  platform: process.platform,
  env: process.env,
  isRoot: process.getuid?.() === 0,
  has: isFile,
  ownBrowser: () => chromium.executablePath(),
  run: (program, words) => {
    console.error(`No Chromium yet; running ${path.basename(program)} ${words.join(' ')} …`);
    return spawnSync(program, words, { stdio: ['ignore', 2, 2] }).status === 0;
  },
};

/**
 * The Chromium that the browser tests drive: named in SOFFIT_CHROMIUM, else
 * present, else fetched.
 * @throws Error with one sentence on how to mend it, where all of that fails
 */
export const findBrowser = (machine: Machine = thisMachine): string => {
  const named = machine.env['SOFFIT_CHROMIUM'];
  if (named !== undefined && named !== '') {
    if (machine.has(named)) return named;
    // A person named it: another browser in its place would be a quiet surprise.
    throw new Error(`SOFFIT_CHROMIUM names “${named}”, where no file is: correct it or unset it.`);
  }
  const file = present(machine) ?? fetched(machine);
  if (file === undefined) throw new Error(notFound);
  return file;
};
