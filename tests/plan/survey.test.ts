import { expect, test } from 'vitest';
import { surveyList } from '../../src/plan/survey/surveyList.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { bare, wholePlan } from './wholePlan.ts';

test('every size that is not taped is listed once, the most uncertain first', () => {
  const rows = surveyList(wholePlan());
  expect(rows.map(({ name, what }) => `${name}, ${what}`)).toEqual([
    'Garden tap, place on House',
    'House, wall height',
    'Drive, outline and slope',
    'House, roof',
    'Hedge, thickness',
  ]);
  expect(rows.every(({ uncertainty }, k) => uncertainty <= (rows[k - 1]?.uncertainty ?? Infinity))).toBe(
    true,
  );
});

test('a row says what it is, how it was got and how far off it may be', () => {
  const [tap, height] = surveyList(wholePlan());
  // A height from a map is ± 1 m; a guessed 6 m along the wall ± 20 %.
  expect(height?.text).toBe('House, wall height: 3.00 m, mapped, so ± 1.00 m.');
  expect(tap).toMatchObject({
    thing: { kind: 'service', id: 'tap', on: 'house' },
    value: '6.00 m along, 0.50 m up',
  });
  expect(tap?.uncertainty).toBeCloseTo(1.2, 12);
});

test('cameras that hang on a size are named', () => {
  const plan = wholePlan();
  const [c1, house] = [plan.cameras['C1'], plan.structures['house']];
  if (!c1 || house?.kind !== 'building') throw new Error('no camera or house');
  const guessed: Plan = {
    ...plan,
    structures: {
      house: { ...house, got: { outline: 'guessed', base: 'measured', height: 'guessed', roof: 'measured' } },
    },
    structureOrder: ['house'],
    cameras: {
      C1: c1,
      C2: {
        ...c1,
        id: 'C2',
        name: 'C2',
        mount: {
          kind: 'soffit',
          ...bare,
          host: 'house',
          face: 0,
          corner: 'start',
          distance: 1,
          inset: 0.2,
          drop: 0,
        },
      },
    },
    settings: { ...plan.settings, units: 'millimetres' },
  };
  const rows = surveyList(guessed);
  expect(rows.find(({ what }) => what === 'outline')?.text).toBe(
    'House, outline: 8000 mm, 6000 mm, 8000 mm, 6000 mm, guessed, so ± 1600 mm. C1 and C2 hang on it.',
  );
  expect(rows.find(({ what }) => what === 'wall height')?.text).toBe(
    'House, wall height: 3000 mm, guessed, so ± 600 mm. C2 hangs on it.',
  );
});

test('a taped plan leaves nothing to measure', () => {
  const plan = wholePlan();
  expect(surveyList({ ...plan, structureOrder: [], patchOrder: [], lampOrder: [] })).toEqual([]);
});
