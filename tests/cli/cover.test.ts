import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { DEMO, scratch, soffit, soffitJson } from './ran.ts';

const folder = scratch();
afterAll(() => folder.clear());

describe('cover', () => {
  interface Told {
    cameras: {
      id: string;
      byState: Record<string, { value: number; bound: number; how: string }>;
      byBand: { band: string; value: number }[];
      byHider: { id: string; value: number }[];
      nearBlindDistance: number;
    }[];
    site: {
      open: { value: number };
      unseen: { value: number };
      byCount: { cameras: number; value: number }[];
    };
    within: string;
    edition: { name: string };
  }

  test('gives areas by state, band and hider, which add up to the ground within the boundary', () => {
    const told = soffitJson('cover', DEMO) as Told;
    expect(told).toMatchObject({
      within: 'boundary',
      edition: { name: 'IEC 62676-4:2014' },
      situation: null,
    });
    expect(told.cameras.map(({ id }) => id)).toEqual(['C1', 'C2', 'C3']);
    for (const { byState, byBand, byHider } of told.cameras) {
      const all = Object.values(byState);
      const bound = all.reduce((sum, area) => sum + area.bound, 0);
      // 22 × 18 m.
      expect(Math.abs(all.reduce((sum, { value }) => sum + value, 0) - 396)).toBeLessThan(bound + 0.01);
      expect(byBand.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(
        byState['covered']?.value ?? NaN,
        2,
      );
      expect(byHider.length).toBeGreaterThan(0);
      expect(byState['covered']?.how).toBe('exact');
      expect(byState['covered']?.bound).toBeGreaterThan(0);
    }
    expect(told.site.unseen.value).toBeLessThan(told.site.open.value);
    // Covered by one or more is what is not unseen; by each camera in turn it sums to their own areas.
    const { byCount, open, unseen } = told.site;
    expect(byCount.map(({ cameras }) => cameras)).toEqual([1, 2, 3]);
    expect(byCount[0]?.value).toBeCloseTo(open.value - unseen.value, 1);
    const own = told.cameras.reduce((sum, { byState }) => sum + (byState['covered']?.value ?? NaN), 0);
    expect(byCount.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(own, 1);
  });

  test('promises no bound of what is only counted, as over uneven ground, in words or JSON', () => {
    const place = (x: number, y: number, height: number) => ({
      at: [x, y] as const,
      height,
      got: 'measured',
    });
    const ground = { kind: 'spots', spots: [place(0, 0, 0), place(12, 0, 0.5), place(0, 12, 0.2)] };
    const file = folder.file('uneven.plan.json');
    writeFileSync(file, JSON.stringify({ ...(JSON.parse(readFileSync(DEMO, 'utf8')) as object), ground }));
    const told = soffitJson('cover', file, '--camera', 'C1') as Told;
    const covered = told.cameras[0]?.byState['covered'];
    expect(covered?.how).toBe('cells');
    expect(covered?.bound).toBeNull();
    expect(told.site.open).toMatchObject({ how: 'cells', bound: null });
    const words = soffit('cover', file, '--camera', 'C1').out;
    expect(words).toMatch(/\n  covered +≈ [\d.]+ m²\n/);
  });

  test('near blind distance is what the frame’s lower edge gives', () => {
    // Half the VFOV of C2 by its own law from `cameras`; the lower edge meets the ground at h / tan(tilt + VFOV/2).
    const [, two] = (
      soffitJson('cameras', DEMO) as {
        cameras: {
          eye: number[];
          tilt: number;
          k: number;
          focalLength: number;
          sensor: { height: number };
        }[];
      }
    ).cameras;
    if (!two) throw new Error('no second camera');
    const half = Math.atan((two.k * two.sensor.height) / 2 / two.focalLength) / two.k;
    const near = (two.eye[2] ?? NaN) / Math.tan((two.tilt * Math.PI) / 180 + half);
    expect((soffitJson('cover', DEMO, '--camera', 'C2') as Told).cameras[0]?.nearBlindDistance).toBeCloseTo(
      near,
      3,
    );
  });

  test('one camera alone counts for itself', () => {
    const told = soffitJson('cover', DEMO, '--camera', 'C3') as Told;
    expect(told.cameras.map(({ id }) => id)).toEqual(['C3']);
    const all = soffitJson('cover', DEMO) as Told;
    expect(told.site.unseen.value).toBeGreaterThan(all.site.unseen.value);
  });

  test('prints the same for people', () => {
    const { code, out } = soffit('cover', DEMO, '--target-height', '1.6');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Kiln Cottage: surface at 1.6 m, areas within the boundary, bands of IEC 62676-4:2014\n/,
    );
    expect(out).toMatch(/hidden by house +\d+\.\d\d m²/);
    expect(out).not.toMatch(/NaN|undefined|null/);
  });
});
