import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Opened } from '../../src/exchange/openFile.ts';
import { MAP_CREDIT } from '../../src/exchange/geojson/credits.ts';
import { signedArea } from '../../src/model/ring.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { openPath } from './opened.ts';

const BRISTOL = 'tests/inputs/osm/bristol-terraces.geojson';
const SEATTLE = 'tests/inputs/osm/seattle-triangle.geojson';

const opened = (path: string): Opened => {
  const outcome = openPath(path);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};
const structuresOf = ({ plan }: Opened): readonly Structure[] =>
  plan.structureOrder.flatMap((id) => plan.structures[id] ?? []);
const count = ({ report }: Opened, part: 'taken' | 'left' | 'assumed', code: string): number =>
  report?.[part].find((line) => line.code === code)?.count ?? 0;

test.each([
  [BRISTOL, 'db2217d9e789'],
  [SEATTLE, 'a6579c3482a1'],
])('%s is the file that was received', (path, sum) => {
  expect(createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 12)).toBe(sum);
});

describe.each([BRISTOL, SEATTLE])('%s', (path) => {
  const file = opened(path);

  test('becomes a plan that is read again as it was written', () => {
    expect(readPlan(planText(file.plan))).toEqual({ ok: true, value: file.plan, notes: [] });
  });

  test('every structure is built, solid and closed, without a fault', () => {
    for (const structure of structuresOf(file)) {
      const { solids, faults } = solidsOf(structure);
      expect(faults).toEqual([]);
      expect(solids.length).toBeGreaterThan(0);
    }
  });

  test('credits whom the licence asks to credit', () => {
    expect(file.plan.credits).toEqual([MAP_CREDIT]);
  });

  test('marks how every size was got', () => {
    for (const structure of structuresOf(file)) {
      if (structure.kind !== 'building') continue;
      expect(structure.got.outline).toBe('mapped');
      expect(['mapped', 'guessed']).toContain(structure.got.height);
    }
  });
});

describe('the terraces of Bristol', () => {
  const file = opened(BRISTOL);

  test('are the 89 buildings of the file, with what it holds beside them counted', () => {
    // 89 buildings, 100 polygons, 22 lines, 32 points: counted in the file by whoever handed it over.
    expect(count(file, 'taken', 'taken.building')).toBe(89);
    expect(structuresOf(file)).toHaveLength(89);
    expect(count(file, 'left', 'left.polygon')).toBe(100 - 89);
    expect(count(file, 'left', 'left.line')).toBe(22);
    expect(
      ['left.point', 'left.gate', 'left.lowBarrier'].reduce(
        (sum, code) => sum + count(file, 'left', code),
        0,
      ),
    ).toBe(32);
  });

  test('53 give levels, at 3.0 m each; the others are guessed', () => {
    expect(count(file, 'assumed', 'assumed.levels')).toBe(53);
    expect(count(file, 'assumed', 'assumed.height')).toBe(89 - 53);
    const heights = structuresOf(file).flatMap((one) =>
      one.kind === 'building' && one.got.height === 'mapped' ? [one.height] : [],
    );
    expect(heights).toHaveLength(53);
    expect(new Set(heights)).toEqual(new Set([3, 6, 9]));
  });

  test('stand about 51.458° N, 2.553° W', () => {
    expect(file.plan.origin?.latitude).toBeCloseTo(51.458, 2);
    expect(file.plan.origin?.longitude).toBeCloseTo(-2.553, 2);
  });

  test('are the size of houses', () => {
    const areas = structuresOf(file).flatMap((one) => ('outline' in one ? [signedArea(one.outline)] : []));
    const median = areas.toSorted((a, b) => a - b)[44] ?? 0;
    expect(median).toBeGreaterThan(30);
    expect(median).toBeLessThan(150);
  });
});

describe('the towers of Seattle', () => {
  const file = opened(SEATTLE);
  const heights = new Map(
    structuresOf(file).flatMap((one) =>
      one.kind === 'building' ? [[one.id, [one.base, one.base + one.height]] as const] : [],
    ),
  );

  test('all 11 parts stand, and of the 7 outlines the one that its parts cover gives way', () => {
    expect(count(file, 'taken', 'taken.part')).toBe(11);
    expect(count(file, 'taken', 'taken.building')).toBe(6);
    expect(count(file, 'left', 'left.forParts')).toBe(1);
    expect(heights.has('way-584763258')).toBe(false);
  });

  test('reach the heights that are tagged, 15 to 152 m', () => {
    // The tags of ways 490586224, 490586225 and 584763252 in the file: 114, 134.1 and 152.3 m.
    expect(heights.get('way-490586224')).toEqual([0, 114]);
    expect(heights.get('way-490586225')).toEqual([0, 134.1]);
    expect(heights.get('way-584763252')).toEqual([0, 152.3]);
  });

  test('towers stand on their podium: five levels below a part that begins at level 5', () => {
    expect(heights.get('way-160311202')).toEqual([0, 15]);
    expect(heights.get('way-489926801')).toEqual([15, 123.3]);
  });

  test('kerbs are left out and counted', () => {
    expect(count(file, 'left', 'left.lowBarrier')).toBe(13);
  });
});
