import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { pictureType } from '../../../src/exchange/pictures/pictureType.ts';

const input = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../inputs/pictures/${name}`, import.meta.url)));

test.each([
  ['small-house.png', 'image/png'],
  ['cabin-plan.jpg', 'image/jpeg'],
  ['training-structure.pdf', 'application/pdf'],
])('%s is known by its bytes', (name, type) => {
  expect(pictureType(input(name))).toBe(type);
});

test('a text, and a file cut after its first byte, are none', () => {
  expect(pictureType(new TextEncoder().encode('{"version": 3}'))).toBeNull();
  expect(pictureType(input('small-house.png').slice(0, 1))).toBeNull();
  expect(pictureType(new Uint8Array())).toBeNull();
});
