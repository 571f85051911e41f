import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { planText } from '../../src/plan/write.ts';
import { demoText, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { openFile, openPlan, row, savedText, select, typeField } from './gestures.ts';

// The live region says the same words, so the plate is found by its tone.
const plate = (page: Page) =>
  page.getByRole('main').locator('[data-tone="trouble"]').filter({ hasText: 'was not opened.' });

/** The demo plan's text with something else in place of a piece of it. */
const withInstead = (piece: string, other: string): string => {
  if (!demoText.includes(piece)) throw new Error(`the demo plan holds no ${piece}`);
  return demoText.replace(piece, other);
};

const points = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    [-2.59, 51.45],
    [-2.58, 51.46],
  ].map((coordinates) => ({
    type: 'Feature',
    properties: { amenity: 'bench' },
    geometry: { type: 'Point', coordinates },
  })),
});

const broad = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: { building: 'yes' },
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [0, 50],
            [0.14, 50],
            [0.14, 50.09],
            [0, 50.09],
            [0, 50],
          ],
        ],
      },
    },
  ],
});

/** What is wrong, where, and how to mend it, in the words that a person reads. */
const bad: readonly (readonly [name: string, text: string, words: readonly RegExp[]])[] = [
  [
    'truncated.plan.json',
    demoText.slice(0, 3000),
    [/stops half-way/, /line \d+, column \d+/, /another copy/],
  ],
  [
    'comma.plan.json',
    withInstead('"tilt": 26', '"tilt": 26,,'),
    [/not in order/, /line \d+, column \d+/, /text editor/],
  ],
  [
    'newer.plan.json',
    withInstead('"version": 4', '"version": 99'),
    [/newer/, /its version is 99/, /Update, or ask for a copy/],
  ],
  [
    'nan.plan.json',
    withInstead('"tilt": 26', '"tilt": NaN'),
    [/NaN/, /line \d+, column \d+/, /Write a plain number/],
  ],
  ['text.plan.json', withInstead('"tilt": 26', '"tilt": "NaN"'), [/NaN/, /cameras › C1 › tilt/, /Write/]],
  ['far.plan.json', withInstead('[-4, -9]', '[1e308, -9]'), [/1e\+?308/, /boundary › 1 › 1/, /Write metres/]],
  ['endless.plan.json', withInstead('[-4, -9]', '[1e999, -9]'), [/boundary › 1 › 1/, /Write/]],
  ['points.geojson', points, [/only points/, /2/, /Export the outlines of buildings/]],
  ['broad.geojson', broad, [/“Building 1” is 100\d\d m across/, /the most is 5000 m/, /divide by 1000/]],
  [
    'page.html',
    '<!doctype html><p>moved</p>',
    [/“page.html” is neither a plan nor a map/, /Open a Soffit plan/],
  ],
  ['empty.json', '', [/empty/, /another copy/]],
];

/** Puts a plate away; on a busy machine it may still be moving into place under the first click. */
async function putAway(found: Locator): Promise<void> {
  const button = found.getByRole('button', { name: 'Put away' });
  await button.click();
  const gone = await found.waitFor({ state: 'detached', timeout: 5000 }).then(
    () => true,
    () => false,
  );
  if (gone) return;
  await button.click();
  await found.waitFor({ state: 'detached' });
}

test(
  'a file that cannot be opened says what, where and how to mend; the open plan is untouched',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await typeField(page, 'Tilt', '33');
    const text = await savedText(page);
    for (const [name, held, words] of bad) {
      await openFile(page, { name, text: held });
      const found = plate(page).filter({ hasText: name });
      await found.waitFor();
      const said = (await found.innerText()).replace(/\s+/g, ' ');
      for (const word of words) expect(said, `in ${name}`).toMatch(word);
      expect(said, `in ${name}`).toContain('Your open plan is untouched.');
      await putAway(found);
      expect(await savedText(page), `after ${name}`).toBe(text);
    }
    // What was done before can still be taken back.
    expect(await page.getByRole('button', { name: 'Undo: Tilt of C1' }).count()).toBe(1);
  }),
);

test(
  'the fault is spoken as well',
  visiting(async (open) => {
    const page = await open();
    await openFile(page, { name: 'truncated.plan.json', text: demoText.slice(0, 3000) });
    const spoken = page
      .getByRole('status')
      .filter({ hasText: /“truncated.plan.json” was not opened.*half-way/ });
    await spoken.waitFor();
    expect(await spoken.getAttribute('aria-live')).toBe('polite');
  }),
);

const hostile = '<img src=x onerror="document.title=1"><b id=planted>House</b>';

test(
  'names with HTML in them are shown as they are written',
  visiting(async (open) => {
    const page = await open();
    const plan = planFrom(demoText);
    const [house, c1] = [plan.structures['house'], plan.cameras['C1']];
    if (!house || !c1) throw new Error('the demo plan has no house or no C1');
    const text = planText({
      ...plan,
      name: hostile,
      credits: [hostile],
      structures: { ...plan.structures, house: { ...house, name: hostile } },
      cameras: { ...plan.cameras, C1: { ...c1, name: hostile } },
    });
    await openPlan(page, text);
    await page.getByRole('treeitem').filter({ hasText: hostile }).first().click();
    await frames(page);
    const sheet = page.getByRole('complementary', { name: 'Setting sheet' });
    await sheet.getByRole('heading', { name: hostile, exact: true }).waitFor();
    expect(await page.getByRole('main').getByText(hostile).count()).toBeGreaterThan(0);
    expect((await page.locator('#planted').count()) + (await page.locator('img').count())).toBe(0);
    expect(await page.title()).not.toBe('1');
    expect(await savedText(page)).toBe(text);
  }),
);

/** A folder of files that are too large to be handed over in memory. */
async function withFile(
  name: string,
  write: (file: string) => void,
  act: (file: string) => Promise<void>,
): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'soffit-browser-'));
  try {
    const file = path.join(folder, name);
    write(file);
    await act(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test(
  'a file over 64 MB is refused with its size',
  visiting(async (open) => {
    const page = await open();
    await withFile(
      'country.geojson',
      (file) => writeFileSync(file, Buffer.alloc(64 * 1024 * 1024 + 1, ' ')),
      async (file) => {
        await openFile(page, file);
        await plate(page).waitFor();
        expect(await plate(page).innerText()).toMatch(
          /“country\.geojson” is 65 MB; at most 64 MB can be opened\. Cut out/,
        );
      },
    );
    expect(await savedText(page)).toBe(planText(planFrom(demoText)));
  }),
);

const MAP_SIZE = 50_000_000;

/** A map of 50 MB: so many houses, and addresses of a city for the rest. */
function mapText(houses: number): string {
  const features: string[] = [];
  let length = 0;
  const add = (feature: string): void => {
    features.push(feature);
    length += feature.length + 1;
  };
  for (let house = 0; house < houses && length < MAP_SIZE; house += 1) {
    const [x, y] = [-2.59 + (house % 300) * 2e-4, 51.45 + Math.floor(house / 300) * 2e-4];
    const ring = [
      [x, y],
      [x + 1e-4, y],
      [x + 1e-4, y + 8e-5],
      [x, y + 8e-5],
      [x, y],
    ];
    const geometry = JSON.stringify({ type: 'Polygon', coordinates: [ring] });
    add(`{"type":"Feature","properties":{"building":"house","height":"6"},"geometry":${geometry}}`);
  }
  const note = 'an address of the city, with all that the office knows about it. '.repeat(7);
  for (let at = 0; length < MAP_SIZE; at += 1)
    add(
      `{"type":"Feature","properties":{"note":"${note}${at}"},"geometry":{"type":"Point","coordinates":[-2.58,51.451]}}`,
    );
  return `{"type":"FeatureCollection","features":[${features.join(',')}]}`;
}

test(
  'a map of 50 MB full of houses shows how far it is, and can be called off',
  visiting(async (open) => {
    const page = await open();
    const text = await savedText(page);
    await withFile(
      'town.geojson',
      (file) => writeFileSync(file, mapText(Infinity)),
      async (file) => {
        await openFile(page, file);
        const bar = page.getByRole('progressbar', { name: 'Opening town.geojson' });
        await page.getByText(/^(Reading features|Building structures) \d+ %$/).waitFor();
        expect(Number(await bar.getAttribute('value'))).toBeGreaterThan(0);
        await page.getByRole('button', { name: 'Cancel' }).click();
        await page.getByRole('main').getByText('Opening was called off.').first().waitFor();
        expect(await bar.count()).toBe(0);
        expect(await savedText(page)).toBe(text);
      },
    );
  }),
);

test(
  'a map of 50 MB opens',
  visiting(async (open) => {
    const page = await open();
    await withFile(
      'city.geojson',
      (file) => writeFileSync(file, mapText(200)),
      async (file) => {
        await changing(page, () => openFile(page, file));
        await page.getByRole('heading', { name: 'What was read' }).waitFor();
        expect(await page.getByRole('region', { name: 'Taken' }).innerText()).toMatch(/\b200 buildings\b/);
        expect(await page.getByRole('region', { name: 'Left out' }).innerText()).toMatch(/\b\d+ points\b/);
        expect(await row(page, 'Building 1').count()).toBe(1);
      },
    );
  }),
);
