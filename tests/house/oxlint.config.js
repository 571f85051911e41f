import { keepers, rooms } from './rooms.js';

/** @typedef {import('oxlint').OxlintConfig} OxlintConfig */
/** @typedef {import('oxlint').OxlintOverride} OxlintOverride */

const clockAndChance = [
  'Date',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'requestAnimationFrame',
  'process',
  'console',
  'globalThis',
].map((name) => ({ name, message: 'The same plan gives the same answer: pass it in from below the line.' }));

/** @param {string} text */
const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/**
 * What one room may not import, in the shape of the native rule, so that an
 * editor shows it while typing. The rule knows no list of allowed packages and
 * resolves no path: `layers.ts` does, and is the judge.
 * @param {import('./rooms.js').Room} room
 * @returns {OxlintOverride}
 */
const forRoom = (room) => {
  const patterns = rooms
    .filter((other) => other.name !== room.name && !room.values.includes(other.name))
    .map((other) => ({
      regex: `^(\\.\\./)+${other.name}/`,
      allowTypeImports: room.types.includes(other.name),
      message: `${room.name} may not import ${other.name}: see tests/house/rooms.js.`,
    }));
  const kept = Object.entries(keepers)
    .filter(([, homes]) => !homes.includes(room.name))
    .map(([name]) => `^${escaped(name)}(/|$)`);
  const packages = room.pure ? [...kept, '^node:', '^react'] : kept;
  return {
    files: [`**/src/${room.name}/**`],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            ...patterns,
            ...packages.map((regex) => ({
              regex,
              message: `${room.name} may not use this package: see tests/house/rooms.js.`,
            })),
          ],
        },
      ],
      ...(room.pure
        ? {
            'no-restricted-globals': ['error', ...clockAndChance],
            'no-restricted-properties': [
              'error',
              { object: 'Math', property: 'random', message: 'Chance comes from a seed that is passed in.' },
            ],
          }
        : {}),
    },
  };
};

/** @type {OxlintConfig} */
export default {
  plugins: ['typescript', 'unicorn', 'oxc', 'import', 'react', 'jsx-a11y', 'promise', 'vitest'],
  options: { typeAware: true },
  categories: { correctness: 'error' },
  env: { es2024: true },
  ignorePatterns: ['node_modules/**', 'dist/**', 'assets/**', 'shared/**'],
  rules: {
    eqeqeq: 'error',
    // Names from files are searched for control characters on purpose.
    'no-control-regex': 'off',
    'unicorn/no-new-array': 'off',
    'jsx-a11y/prefer-tag-over-role': 'off',
    'max-lines': ['error', { max: 300, skipBlankLines: false, skipComments: false }],
    'prefer-const': 'error',
    'import/no-cycle': 'error',
    'import/no-self-import': 'error',
    'typescript/ban-ts-comment': 'error',
    'typescript/consistent-type-imports': 'error',
    'typescript/no-explicit-any': 'error',
    'typescript/no-floating-promises': 'error',
    'typescript/no-import-type-side-effects': 'error',
    'typescript/no-misused-promises': 'error',
    'typescript/no-non-null-assertion': 'error',
    'typescript/no-unnecessary-type-assertion': 'error',
    'typescript/no-unsafe-argument': 'error',
    'typescript/no-unsafe-assignment': 'error',
    'typescript/no-unsafe-call': 'error',
    'typescript/no-unsafe-member-access': 'error',
    'typescript/no-unsafe-return': 'error',
    // Our objects are closures: their methods need no `this`.
    'typescript/unbound-method': 'off',
    'typescript/only-throw-error': 'error',
    'typescript/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    'react/exhaustive-deps': 'error',
    'react/rules-of-hooks': 'error',
    // A test that asserts nothing cannot fail.
    'vitest/expect-expect': ['error', { assertFunctionNames: ['expect', 'expect*', 'fc.assert', 'assert*'] }],
    'vitest/no-disabled-tests': 'error',
    'vitest/no-focused-tests': 'error',
  },
  overrides: [
    ...rooms.map(forRoom),
    // Files of this folder are matched by their names alone, all others by their whole path.
    { files: ['**/src/**'], rules: { 'no-console': 'error' } },
    { files: ['**/src/cli/**'], rules: { 'no-console': 'off' } },
    // Plain JavaScript reads JSON, which comments alone can type.
    {
      files: ['**/*.{js,mjs}'],
      rules: Object.fromEntries(
        ['argument', 'assignment', 'call', 'member-access', 'return'].map((what) => [
          `typescript/no-unsafe-${what}`,
          'off',
        ]),
      ),
    },
  ],
};
