import { describe, expect, test } from 'vitest';
import { findBrowser } from './findBrowser.ts';
import type { Machine } from './findBrowser.ts';

const own = '/cache/playwright/chrome';

/** A machine that holds some files, and gains others when a program runs. */
const machine = (
  files: readonly string[],
  rest: Partial<Machine> = {},
  gains: Readonly<Record<string, string>> = {},
): Machine & { readonly ran: string[] } => {
  const there = new Set(files);
  const ran: string[] = [];
  return {
    platform: 'linux',
    env: { PATH: '/opt/bin:/usr/bin' },
    isRoot: false,
    has: (file) => there.has(file),
    ownBrowser: () => own,
    run: (program, words) => {
      const line = `${program === process.execPath ? 'node' : program} ${words.at(0) ?? ''}`;
      ran.push([line.replace(/\S*[\\/]cli\.js/, 'cli'), ...words.slice(1)].join(' '));
      const gained = gains[program === process.execPath ? 'node' : program];
      if (gained !== undefined) there.add(gained);
      return gained !== undefined;
    },
    ...rest,
    ran,
  };
};

describe('a browser is found', () => {
  const everything = ['/mine/chrome', '/usr/bin/chromium', '/opt/bin/google-chrome', own];

  test('first where SOFFIT_CHROMIUM names it', () => {
    const env = { PATH: '/usr/bin', SOFFIT_CHROMIUM: '/mine/chrome' };
    expect(findBrowser(machine(everything, { env }))).toBe('/mine/chrome');
  });

  test('then on the path, chromium before others, whatever folder comes first', () => {
    expect(findBrowser(machine(everything))).toBe('/usr/bin/chromium');
    expect(findBrowser(machine(['/opt/bin/google-chrome', own]))).toBe('/opt/bin/google-chrome');
  });

  test('then in the usual places of macOS', () => {
    const file = '/Users/a/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
    const env = { PATH: '/usr/bin', HOME: '/Users/a' };
    expect(findBrowser(machine([file, own], { platform: 'darwin', env }))).toBe(file);
  });

  test('then in the usual places of Windows', () => {
    const file = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
    const env = { PATH: 'C:\\Windows', 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' };
    expect(findBrowser(machine([file, own], { platform: 'win32', env }))).toBe(file);
  });

  test('then where playwright keeps its own', () => {
    const there = machine([own]);
    expect(findBrowser(there)).toBe(own);
    expect(there.ran).toEqual([]);
  });
});

describe('a missing browser is fetched', () => {
  test('by apt-get, as root on Debian', () => {
    const bare = machine(['/usr/bin/apt-get'], { isRoot: true }, { 'apt-get': '/usr/bin/chromium' });
    expect(findBrowser(bare)).toBe('/usr/bin/chromium');
    expect(bare.ran).toEqual(['apt-get update', 'apt-get install --yes --no-install-recommends chromium']);
  });

  test('by playwright otherwise, and where apt-get fails', () => {
    const user = machine(['/usr/bin/apt-get'], {}, { node: own });
    expect(findBrowser(user)).toBe(own);
    expect(user.ran).toEqual(['node cli install chromium']);
    const cut = machine(['/usr/bin/apt-get'], { isRoot: true }, { node: own });
    expect(findBrowser(cut)).toBe(own);
    expect(cut.ran).toEqual(['apt-get update', 'node cli install chromium']);
  });
});

describe('the search ends in one clear sentence', () => {
  test('where nothing helped', () => {
    expect(() => findBrowser(machine([]))).toThrow(/No Chromium was found.*SOFFIT_CHROMIUM/);
  });

  test('where the named file is not there, without taking another', () => {
    const env = { PATH: '/usr/bin', SOFFIT_CHROMIUM: '/gone' };
    expect(() => findBrowser(machine(['/usr/bin/chromium'], { env }))).toThrow('“/gone”');
  });
});
