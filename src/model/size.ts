import type { Fault } from '../base/fault.ts';
import { GREATEST_COORDINATE, LEAST_SIZE } from '../base/tolerance.ts';
import { modelFault } from './modelFault.ts';

/** What is wrong with a size (m): no number, below `LEAST_SIZE` or beyond the greatest coordinate. Empty when it will do. */
export function sizeFaults(value: number, path: readonly (string | number)[], subject: string): Fault[] {
  if (!Number.isFinite(value)) return numberFaults(value, path, subject);
  if (value < LEAST_SIZE) {
    return [modelFault('size.small', subject, path, { given: value, allowed: `at least ${LEAST_SIZE} m` })];
  }
  return numberFaults(value, path, subject);
}

/** What is wrong with a height or coordinate (m): no number, or too far from the origin. */
export function numberFaults(value: number, path: readonly (string | number)[], subject: string): Fault[] {
  if (!Number.isFinite(value)) {
    return [modelFault('size.number', subject, path, { given: String(value), allowed: 'a number' })];
  }
  if (Math.abs(value) > GREATEST_COORDINATE) {
    return [
      modelFault('size.far', subject, path, { given: value, allowed: `at most ${GREATEST_COORDINATE} m` }),
    ];
  }
  return [];
}
