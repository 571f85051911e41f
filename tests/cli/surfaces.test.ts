import { describe, expect, test } from 'vitest';
import { DEMO, soffit, soffitJson } from './ran.ts';

interface Told {
  cameras: {
    byState: Record<string, { value: number }>;
    byBand: { band: string; value: number }[];
    seenTooSteep: { value: number };
    seenFromTheSide: { value: number };
  }[];
}

const areaOf = (told: Told, state: string): number => told.cameras[0]?.byState[state]?.value ?? NaN;

describe('surfaces', () => {
  test('are listed by the key that --surface takes, with their area', () => {
    const { surfaces } = soffitJson('surfaces', DEMO) as { surfaces: { key: string; area: number }[] };
    expect(surfaces.find(({ key }) => key === 'house/wall/0')?.area).toBeCloseTo(33, 6);
    expect(surfaces.some(({ key }) => key.startsWith('house/roof/'))).toBe(true);
  });

  test('a wall is covered in parts that add up to it', () => {
    const told = soffitJson('cover', DEMO, '--surface', 'house/wall/0', '--camera', 'C1') as Told;
    const all = Object.values(told.cameras[0]?.byState ?? {}).reduce((sum, { value }) => sum + value, 0);
    expect(all).toBeCloseTo(33, 2);
    expect(areaOf(told, 'covered')).toBeGreaterThan(5);
  });

  test('cells of a wall lie on it and have px/m across the wall as a last column, which is less from the side', () => {
    const { out } = soffit('cells', DEMO, '--camera', 'C1', '--surface', 'house/wall/0', '--cell', '0.5');
    const [head, ...rows] = out.trim().split('\n');
    expect(head).toBe('x,y,z,state,band,density,depression,hidden_by,across');
    expect(rows).toHaveLength(22 * 6);
    const seen = rows.map((row) => row.split(',')).filter(([, , , state]) => state === 'covered');
    expect(seen.length).toBeGreaterThan(20);
    for (const [, y, , , , density, , , across] of seen) {
      expect(Number(y)).toBeCloseTo(0, 6);
      expect(Number(across)).toBeGreaterThan(0);
      expect(Number(across)).toBeLessThanOrEqual(Number(density) * 1.0001);
    }
  });

  test('one that is not there is refused with some that are', () => {
    const { code, err } = soffit('cover', DEMO, '--surface', 'house/wall/9');
    expect(code).toBe(2);
    expect(err).toContain('house/wall/0');
  });
});

describe('a face that looks somewhere', () => {
  const cover = (...words: string[]) =>
    soffitJson('cover', DEMO, '--camera', 'C1', '--target', 'face', ...words) as Told;

  test('loses from the side, and the rest is as for a face that looks anywhere', () => {
    const [any, north] = [cover(), cover('--looks', '0')];
    expect(any.cameras[0]?.seenFromTheSide.value).toBe(0);
    expect(north.cameras[0]?.seenFromTheSide.value).toBeGreaterThan(1);
    expect(areaOf(north, 'covered')).toBeCloseTo(areaOf(any, 'covered'), 2);
    const identify = (told: Told) => told.cameras[0]?.byBand.find(({ band }) => band === 'identify')?.value;
    expect(identify(north)).toBeLessThan(identify(any) ?? NaN);
  });

  test('may look to a place; a bare height cannot', () => {
    expect(cover('--looks', '5.025,-0.5').cameras[0]?.seenFromTheSide.value).toBeGreaterThan(0);
    expect(soffit('cover', DEMO, '--target-height', '1.6', '--looks', '90').code).toBe(2);
  });
});
