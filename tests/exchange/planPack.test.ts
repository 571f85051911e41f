import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { openFile } from '../../src/exchange/openFile.ts';
import { isPack, packPlan, unpackPlan } from '../../src/exchange/planPack.ts';
import type { Picture, Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { yard } from '../editor/plans.ts';

const input = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../inputs/pictures/${name}`, import.meta.url)));
const bytes = input('small-house.png');
const sha = createHash('sha256').update(bytes).digest('hex');

const picture: Picture = {
  id: 'p1',
  name: 'Deeds plan',
  file: { sha, type: 'image/png', width: 400, height: 300 },
  hidden: false,
  locked: false,
  use: { kind: 'site', at: [0, 0], metresPerPixel: 0.024, turn: 3.4, strength: 0.35 },
};

const pictured = (): Plan => ({ ...yard(), pictures: { p1: picture }, pictureOrder: ['p1'] });

const opened = (name: string, file: Uint8Array) => {
  const steps = openFile(name, file);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
};

describe('a plan packed with its pictures', () => {
  test('comes back whole, plan and bytes', () => {
    const pack = packPlan(pictured(), new Map([[sha, bytes]]));
    expect(isPack(pack)).toBe(true);
    const read = opened('yard.soffit', pack);
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.value.plan).toEqual(pictured());
    expect(read.ok && read.value.pictures.get(sha)).toEqual(bytes);
  });

  // Written by zipfile of Python's standard library 3.11, which shares nothing with the library used here.
  test('what another program zipped is read', () => {
    const read = unpackPlan('z.zip', input('zipped-by-python.zip'));
    expect(read).toMatchObject({ ok: true, value: { text: '{"version": 99}\n' } });
    expect(read.ok && read.value.pictures.get(sha)).toEqual(bytes);
  });

  test('equal plans are equal files', () => {
    const pack = () => packPlan(pictured(), new Map([[sha, bytes]]));
    expect(pack()).toEqual(pack());
  });

  test('what is cut off, foreign or too large is refused in words, and nothing is unpacked of it', () => {
    const pack = packPlan(pictured(), new Map([[sha, bytes]]));
    const codes = (file: Uint8Array) => {
      const read = unpackPlan('x.zip', file);
      return read.ok ? [] : read.faults.map(({ code }) => code);
    };
    expect(codes(pack.slice(0, pack.length / 2))).toEqual(['pack.broken']);
    expect(codes(zipSync({ 'other.txt': strToU8('hello') }))).toEqual(['pack.noPlan']);
    const bomb = zipSync({ 'plan.json': new Uint8Array(300 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    expect(codes(bomb)).toEqual(['pack.tooLarge']);
  });

  test('a plan in it that is broken is told like one in a file', () => {
    const read = opened('x.zip', zipSync({ 'plan.json': strToU8(planText(yard()).slice(0, 300)) }));
    expect(read).toMatchObject({ ok: false, faults: [{ code: 'file.truncated' }] });
  });
});
