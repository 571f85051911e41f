import { expect, test } from 'vitest';
import { fileNameOf } from '../../src/app/fileName.ts';

test.each([
  ['Kiln Cottage', 'kiln-cottage'],
  ['Häuser / Straße', 'hauser-straße'],
  ['../../etc', 'etc'],
  ['<b>"plan"</b>', 'b-plan-b'],
  ['   ', 'plan'],
  ['a'.repeat(200), 'a'.repeat(60)],
])('%s is saved under %s', (name, file) => {
  expect(fileNameOf(name)).toBe(file);
});
