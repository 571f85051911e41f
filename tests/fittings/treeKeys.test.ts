import { expect, test } from 'vitest';
import { treeMove, treeTyped } from '../../src/fittings/treeKeys.ts';
import type { TreeRow } from '../../src/fittings/treeKeys.ts';

const rows: readonly TreeRow[] = [
  { id: 'boundary', level: 1, label: 'Site boundary', open: null },
  { id: 'house', level: 1, label: 'House', open: true },
  { id: 'door', level: 2, label: 'Front door', open: null },
  { id: 'hedge', level: 1, label: 'Hedge', open: false },
];

test('arrows walk the visible rows and stop at the ends', () => {
  expect(treeMove(rows, 'boundary', 'ArrowDown')).toEqual({ kind: 'go', id: 'house' });
  expect(treeMove(rows, 'house', 'ArrowUp')).toEqual({ kind: 'go', id: 'boundary' });
  expect(treeMove(rows, 'boundary', 'ArrowUp')).toBeNull();
  expect(treeMove(rows, 'hedge', 'ArrowDown')).toBeNull();
  expect(treeMove(rows, 'door', 'Home')).toEqual({ kind: 'go', id: 'boundary' });
  expect(treeMove(rows, 'door', 'End')).toEqual({ kind: 'go', id: 'hedge' });
});

test('right opens a branch, then enters it; left goes to the parent, then closes it', () => {
  expect(treeMove(rows, 'hedge', 'ArrowRight')).toEqual({ kind: 'open', id: 'hedge' });
  expect(treeMove(rows, 'house', 'ArrowRight')).toEqual({ kind: 'go', id: 'door' });
  expect(treeMove(rows, 'door', 'ArrowLeft')).toEqual({ kind: 'go', id: 'house' });
  expect(treeMove(rows, 'house', 'ArrowLeft')).toEqual({ kind: 'close', id: 'house' });
  expect(treeMove(rows, 'boundary', 'ArrowLeft')).toBeNull();
});

test('one letter goes round the rows that begin with it, more letters narrow', () => {
  expect(treeTyped(rows, 'boundary', 'h')).toBe('house');
  expect(treeTyped(rows, 'house', 'h')).toBe('hedge');
  expect(treeTyped(rows, 'hedge', 'H')).toBe('house');
  expect(treeTyped(rows, 'house', 'he')).toBe('hedge');
  expect(treeTyped(rows, 'house', 'x')).toBeNull();
});
