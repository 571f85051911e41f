import { expect, test } from 'vitest';
import { faultsOf, withAt } from './broken.ts';

test('an outline that crosses itself is refused with the corners named', () => {
  const [fault] = faultsOf(
    withAt(
      ['structures', 'house', 'outline'],
      [
        [0, 0],
        [8, 6],
        [8, 0],
        [0, 6],
      ],
    ),
  );
  expect(fault).toMatchObject({ code: 'footprint.crosses', subject: 'House' });
  expect(fault?.path.slice(0, 3)).toEqual(['structures', 'house', 'outline']);
  expect(fault?.given).toMatch(/corners \d to \d and corners \d to \d/);
});

test('a boundary that crosses itself is refused', () => {
  const [fault] = faultsOf(
    withAt(
      ['boundary'],
      [
        [0, 0],
        [8, 6],
        [8, 0],
        [0, 6],
      ],
    ),
  );
  expect(fault).toMatchObject({ code: 'footprint.crosses', subject: 'Site boundary' });
  expect(fault?.path[0]).toBe('boundary');
});

test('a patch that crosses itself is refused', () => {
  const [fault] = faultsOf(
    withAt(
      ['patches', 'drive', 'outline'],
      [
        [0, 0],
        [8, 6],
        [8, 0],
        [0, 6],
      ],
    ),
  );
  expect(fault).toMatchObject({ code: 'footprint.crosses', subject: 'Drive' });
  expect(fault?.path.slice(0, 3)).toEqual(['patches', 'drive', 'outline']);
});

test('a wall that crosses itself is refused', () => {
  const [fault] = faultsOf(
    withAt(
      ['structures', 'hedge', 'line'],
      [
        [0, 0],
        [8, 6],
        [8, 0],
        [0, 6],
      ],
    ),
  );
  expect(fault).toMatchObject({ code: 'barrier.crosses', subject: 'Hedge' });
});
