import { expect, test } from 'vitest';
import { tally } from './tally.mjs';

const suite = (status: string, ...tests: string[]) => ({
  name: '/home/a/tests/base/x.test.ts',
  status,
  assertionResults: tests.map((outcome, index) => ({ status: outcome, fullName: `t${index}` })),
});

test('each test counts once', () => {
  const counts = tally({ testResults: [suite('failed', 'passed', 'failed', 'passed')] }, '/home/a');
  expect(counts).toEqual({ passed: 2, failed: ['tests/base/x.test.ts › t1 (failed)'] });
});

test('a skipped test shows nothing, so it counts as failed', () => {
  const counts = tally({ testResults: [suite('passed', 'passed', 'pending', 'todo')] }, '/home/a');
  expect(counts.failed).toHaveLength(2);
});

test('a file that did not load counts as one failure', () => {
  expect(tally({ testResults: [suite('failed')] }, '/home/a')).toEqual({
    passed: 0,
    failed: ['tests/base/x.test.ts (did not run to its end)'],
  });
});
