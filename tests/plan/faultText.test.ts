import { describe, expect, test } from 'vitest';
import { THRESHOLDS } from '../../src/assess/cautions/thresholds.ts';
import type { Fault } from '../../src/base/fault.ts';
import { faultText, faultWords } from '../../src/plan/faultText.ts';
import { filesBelow, textOfFile } from '../house/projectFiles.ts';

/** File names, and the words of an import's report, which `reportText` has; limits of cautions have words of their own. */
const notCodes = /^(?:taken|left|assumed)\.|\.(ts|tsx|js|json|css|svg|html|csv|obj|geojson|plan)$/;

/** Every literal in the program that has the form of a fault's code, with the file that says it. */
const codes = new Map(
  filesBelow('src')
    .filter((file) => /\.tsx?$/.test(file) && !file.startsWith('src/plan/faultWords/'))
    .flatMap((file) =>
      [...textOfFile(file).matchAll(/'([a-z]+\.[a-z][a-zA-Z-]*)'/g)].flatMap(([, code]) =>
        code === undefined || notCodes.test(code) || Object.hasOwn(THRESHOLDS, code)
          ? []
          : [[code, file] as const],
      ),
    ),
);

test('the program has codes to word', () => {
  expect(codes.size).toBeGreaterThan(30);
});

test.each([...codes])('%s (%s) has words', (code) => {
  expect(Object.keys(faultWords)).toContain(code);
});

const full: Fault = {
  code: '',
  path: ['structures', 'house', 'outline', 2],
  given: 'GIVEN',
  allowed: 'ALLOWED',
  subject: 'House <b>',
};
const bare: Fault = { code: '', path: [] };

describe.each(Object.keys(faultWords))('%s', (code) => {
  test.each([full, bare])('is whole sentences, with or without particulars', (fault) => {
    const text = faultText({ ...fault, code });
    expect(text).toMatch(/^[A-Z“].*[.]$/s);
    expect(text).not.toMatch(/undefined|null|\[object|NaN|  | \.|\.\./);
  });
});

test('names are quoted as the plain text they are, and places count from 1', () => {
  expect(
    faultText({
      code: 'footprint.crosses',
      path: ['structures', 'house', 'outline', 2],
      subject: '<b>',
      given: 'corners 3 to 4 and corners 1 to 2',
    }),
  ).toBe(
    'The outline of “<b>” crosses itself (corners 3 to 4 and corners 1 to 2) (structures › house › outline › 3). Move one of these corners so that no two edges cross.',
  );
});

test('a code without words of its own still says what, where and what would do', () => {
  expect(faultText({ code: 'new.one', path: ['a', 0], given: 7, allowed: '1 to 5', subject: 'House' })).toBe(
    '“House” cannot be used as it is (a › 1): 7. Make it 1 to 5.',
  );
  expect(faultText({ code: 'constructor', path: [] })).toBe(
    'Something cannot be used as it is. Check it and try again.',
  );
});
