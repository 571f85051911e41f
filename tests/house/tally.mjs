import path from 'node:path';

/**
 * The part of vitest's JSON report that is counted.
 * @typedef {object} Report
 * @property {readonly Suite[]} testResults
 */
/**
 * @typedef {object} Suite
 * @property {string} name  the test file
 * @property {string} status
 * @property {string} [message]
 * @property {readonly { status: string, fullName: string }[]} assertionResults
 */

/**
 * Counts a report: each test once, a file that did not load as one failure, and
 * a skipped test as a failure too, since nothing was shown by it.
 * @param {Report} report
 * @param {string} home  folder that file names are told from
 */
export const tally = (report, home) => {
  let passed = 0;
  /** @type {string[]} */
  const failed = [];
  for (const suite of report.testResults) {
    const file = path.relative(home, suite.name);
    const bad = suite.assertionResults.filter((test) => test.status !== 'passed');
    passed += suite.assertionResults.length - bad.length;
    failed.push(...bad.map((test) => `${file} › ${test.fullName} (${test.status})`));
    if (suite.status === 'failed' && bad.length === 0) failed.push(`${file} (did not run to its end)`);
  }
  return { passed, failed };
};
