import { availableParallelism } from 'node:os';
import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const root = path.resolve(import.meta.dirname, '../..');

const thorough = process.argv.includes('thorough') || process.env['SOFFIT_THOROUGH'] === '1';

/** Browser tests that only `npm run thorough` has the time for. */
const LONG = ['drawSpeed', 'tenMinuteKeys', 'tenMinuteTouch'].map((name) => `tests/browser/${name}.test.ts`);

export default defineConfig({
  root,
  plugins: [react()],
  test: {
    // `--mode thorough` runs every seeded trial instead of a sample: see seeded.ts.
    env: thorough ? { SOFFIT_THOROUGH: '1' } : {},
    testTimeout: thorough ? 3_600_000 : 20_000,
    allowOnly: false,
    // Left to itself it keeps one core free, which on two is half of them.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/outside/**', 'tests/browser/**', 'tests/bench/**'],
        },
      },
      {
        extends: true,
        test: { name: 'outside', environment: 'node', include: ['tests/outside/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          exclude: thorough ? [] : LONG,
          globalSetup: ['tests/browser/served.ts'],
          testTimeout: thorough ? 7_200_000 : 120_000,
          hookTimeout: 180_000,
          // One at a time: the software renderer takes every core, so two would only wait for one another.
          fileParallelism: false,
          maxWorkers: 1,
        },
      },
    ],
  },
});
