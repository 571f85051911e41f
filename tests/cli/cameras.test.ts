import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { DEMO, planAt, scratch, soffit, soffitJson } from './ran.ts';

const files = scratch();
afterAll(files.clear);

describe('cameras', () => {
  test('gives the contract’s keys and nothing else', () => {
    const { cameras } = soffitJson('cameras', DEMO) as { cameras: Record<string, unknown>[] };
    expect(cameras).toHaveLength(3);
    for (const camera of cameras)
      expect(Object.keys(camera)).toEqual([
        'id',
        'name',
        'eye',
        'pan',
        'tilt',
        'roll',
        'focalLength',
        'k',
        'sensor',
        'frame',
        'range',
      ]);
    // C1 hangs under the soffit of the south wall (y = 0, soffit at 3 m): 2.4 m from the east corner (x = 11), 0.3 m
    // out and 0.1 m down.
    expect(cameras[0]?.['eye']).toEqual([
      expect.closeTo(8.6, 9),
      expect.closeTo(-0.3, 9),
      expect.closeTo(2.9, 9),
    ]);
    expect(cameras[0]).toMatchObject({
      pan: 236,
      tilt: 26,
      frame: { width: 2688, height: 1520 },
      sensor: { width: 5.37, height: 3.04 },
    });
  });
});

test('what reading the file and laying it out both notice is said once, with a height that can be read', () => {
  const file = files.file('high.plan.json');
  const plan = JSON.parse(readFileSync(DEMO, 'utf8')) as { ground: unknown };
  // Raised ground lifts the hole of C2 above the garage's wall.
  writeFileSync(file, JSON.stringify({ ...plan, ground: { kind: 'flat', height: 1.1 } }));
  const lines = soffit('cameras', file)
    .err.split('\n')
    .filter((line) => line.includes('C2'));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toContain('(2.4)');
});

describe('mount', () => {
  const words = (out: string, ...more: string[]) => {
    const place = '--id T1 --eye -3.5,-12,0.5 --pan -45 --tilt -5 --roll -2';
    const device = '--focal 1.6 --sensor 6.4x4.8 --frame 2592x1944 --range 40';
    return ['mount', DEMO, ...place.split(' '), ...device.split(' '), '--out', out, ...more];
  };

  test('adds a loose camera that `cameras` gives back as it was put in', () => {
    const out = files.file('mounted.json');
    expect(soffit(...words(out, '--k', '-0.5'))).toMatchObject({ code: 0, err: '' });
    const { cameras } = soffitJson('cameras', out) as { cameras: unknown[] };
    expect(cameras).toHaveLength(4);
    expect(cameras[3]).toEqual({
      id: 'T1',
      name: 'T1',
      eye: [-3.5, -12, 0.5],
      pan: 315,
      tilt: -5,
      roll: -2,
      focalLength: 1.6,
      k: -0.5,
      sensor: { width: 6.4, height: 4.8 },
      frame: { width: 2592, height: 1944 },
      range: 40,
    });
    expect(planAt(out).cameras['T1']?.mount).toEqual({ kind: 'loose', eye: [-3.5, -12, 0.5] });
  });

  test('without a law the lens is rectilinear', () => {
    const out = files.file('plain.json');
    soffit(...words(out));
    expect((soffitJson('cameras', out) as { cameras: { k: number }[] }).cameras[3]?.k).toBe(1);
  });

  test('leaves the plan it read as it was', () => {
    const before = readFileSync(DEMO, 'utf8');
    soffit(...words(files.file('again.json')));
    expect(readFileSync(DEMO, 'utf8')).toBe(before);
  });
});
