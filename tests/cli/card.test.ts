import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { planText } from '../../src/plan/write.ts';
import { houseTurned, siteOf, bare } from '../draw/card/cardSites.ts';
import { scratch, soffitLater } from './ran.ts';
import { writeFileSync } from 'node:fs';

const folder = scratch();
afterAll(folder.clear);

const mount = {
  ...bare,
  kind: 'arm',
  host: 'house',
  face: 0,
  corner: 'start',
  distance: 3.8,
  height: 2.4,
  reach: 0.2,
  drop: 0.1,
} as const;

const plan = folder.file('site.plan.json');
writeFileSync(plan, planText(siteOf([houseTurned(0)], mount)));

const text = (file: string): string => readFileSync(file, 'utf8');

describe('soffit card', () => {
  test('writes a card as SVG with the date that it is given, and says that it is not ready', async () => {
    const file = folder.file('card.svg');
    const { code, out } = await soffitLater(
      'card',
      plan,
      '--camera',
      'C',
      '--out',
      file,
      '--paper',
      'letter',
      '--courses',
      '--date',
      '1 March 2027',
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^C is not ready\. Do not drill: \d/u);
    expect(text(file)).toContain('width="215.9mm" height="279.4mm"');
    expect(text(file)).toContain('>2500 = 33 courses + 25 mm above ground</text>');
    expect(text(file)).toContain('Card 1 of 1, 1 March 2027, plan ');
    expect(text(file)).toContain('>NOT READY</text>');
  });

  test('writes all cards as PDF, and today’s date where none is given', async () => {
    const file = folder.file('cards.pdf');
    expect((await soffitLater('card', plan, '--out', file)).code).toBe(0);
    expect(readFileSync(file).subarray(0, 5).toString('latin1')).toBe('%PDF-');
  });

  test.each([
    { words: ['--out', 'card.txt'], says: /ends in \.pdf or \.svg/u },
    { words: [], says: /needs --out/u },
    { words: ['--out', 'card.pdf', '--paper', 'a3'], says: /Write a4 or letter/u },
    { words: ['--out', 'card.pdf', '--camera', 'D'], says: /no camera “D”/u },
  ])('refuses $words in words', async ({ words, says }) => {
    const { code, err } = await soffitLater('card', plan, ...words);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });

  test('says why a camera that is fixed to nothing has no card', async () => {
    const loose = folder.file('loose.plan.json');
    writeFileSync(loose, planText(siteOf([houseTurned(0)], { kind: 'loose', eye: [1, -2, 3] })));
    const { code, err } = await soffitLater('card', loose, '--out', folder.file('none.pdf'));
    expect(code).toBe(2);
    expect(err).toContain('C is fixed to nothing, so there is no hole to drill.');
    expect(err).toContain('There is no card to write.');
  });
});
