import { readFile } from 'node:fs/promises';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { visiting } from './driver.ts';

/** What axe-core finds on the page of cards, a sentence each. */
async function violations(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const found: unknown = await page.evaluate(
    `axe.run('main', { resultTypes: ['violations'] }).then(({ violations }) => violations.map(({ id, nodes }) => id + nodes[0].html))`,
  );
  return z.array(z.string()).parse(found);
}

/** Waits until every card is drawn as the plan is now. */
const drawn = (page: Page): Promise<unknown> =>
  page.locator('section[aria-label="Drill cards"][data-working="false"]').waitFor();

/** How many pages a PDF has, and its words. */
async function words(file: string): Promise<{ readonly pages: number; readonly text: string }> {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 }).promise;
  let text = '';
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    text += items.map((item) => ('str' in item ? item.str : '')).join(' ');
  }
  return { pages: pdf.numPages, text };
}

test(
  'a card is not ready until its stops are ticked, is saved as PDF, and is printed alone',
  visiting(async (open) => {
    const page = await open();
    await page.getByRole('button', { name: 'Drill cards' }).click();
    await drawn(page);
    const card = page.getByRole('group', { name: 'Drill card C1, Kiln Cottage' });
    const sign = card.getByText('NOT READY', { exact: true });
    await sign.waitFor();
    expect(await violations(page)).toEqual([]);

    const looked = page.getByRole('region', { name: 'Look before you drill' });
    for (const box of await looked.getByRole('checkbox').all()) await box.check();
    await drawn(page);
    await sign.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^C1/u }).getByText('ready', { exact: true }).waitFor();
    await page.getByLabel('Serial no.').fill('SN 4711');
    await page.keyboard.press('Enter');
    await drawn(page);
    await card.getByText('SN 4711').waitFor();

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save PDF' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('Drill card C1.pdf');
    const saved = await words(await download.path());
    expect(saved.pages).toBe(1);
    expect(saved.text).toContain('3000 above ground');
    expect(saved.text).toContain('SN 4711');
    expect(saved.text).not.toContain('NOT READY');

    await page.getByRole('button', { name: 'Print all' }).click();
    const printed = page.frameLocator('iframe[data-print-cards]').locator('svg');
    await printed.nth(2).waitFor({ state: 'attached' });
    expect(await printed.count()).toBe(3);
    expect(await printed.nth(1).textContent()).toContain('NOT READY');
  }),
);
