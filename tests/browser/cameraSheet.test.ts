import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, settled, visiting } from './driver.ts';
import { select } from './gestures.ts';

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

const type = async (page: Page, label: string, text: string): Promise<void> => {
  await field(page, label).fill(text);
  await field(page, label).press('Enter');
};

/** What axe-core finds in the sheet, by rule. */
async function violations(page: Page): Promise<unknown> {
  await page.evaluate(axe.source);
  return page.evaluate(
    `axe.run('aside', { resultTypes: ['violations'] }).then(({ violations }) => violations.map(({ id, nodes }) => id + nodes[0].html))`,
  );
}

test(
  'a camera is chosen from the list, zoomed, stopped by its mount, put on its side and on another bracket',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C2');
    await page.getByRole('button', { name: 'Choose from the list' }).click();
    await page.getByText('Varifocal turret').waitFor();
    expect(await violations(page), 'the list').toEqual([]);
    await changing(page, () =>
      page.getByRole('button', { name: 'Take Varifocal turret, 4 MP 2.7 to 13.5 mm' }).click(),
    );
    for (const part of ['Pictures', 'Data sheet', 'Plate and turning'])
      await page.locator('summary').filter({ hasText: part }).click();
    expect(await violations(page), 'the sheet').toEqual([]);

    // The slider's steps are those of the number beside it.
    await changing(page, () => page.getByLabel('Zoom of C2').press('End'));
    expect(await field(page, 'Focal length').inputValue()).toBe('13.5');
    await page.getByText('22.6 × 12.9').waitFor();

    // On a wall a turret turns 75° each way.
    await type(page, 'Pan', '300');
    await page.getByText('Pan stops 75° from straight out').waitFor();
    expect(await field(page, 'Pan').inputValue()).toBe('183.0');
    await changing(page, () => type(page, 'From straight out', '-75'));
    expect(await field(page, 'Pan').inputValue()).toBe('105.0');

    await changing(page, () => page.getByRole('button', { name: /^Corridor format/ }).click());
    expect(await field(page, 'Roll').inputValue()).toBe('90.0');
    await page.getByText('12.9 × 22.6').waitFor();

    await changing(page, () => field(page, 'Fixed').selectOption('flush'));
    await page.getByText('The hole stays where it was.').waitFor();
    await page.getByText('Lens 2.45 m up, was 2.40 m.').waitFor();
  }),
);

test(
  'own kinds are there after a reload, are read from a file, and a file that is none is refused in words',
  visiting(async (open) => {
    const page = await open();
    const choose = async () => {
      await select(page, 'C1');
      await page.getByRole('button', { name: 'Choose from the list' }).click();
    };
    await choose();
    await type(page, 'Call it', 'Back gate');
    await page.getByRole('button', { name: 'Keep C1 as my own' }).click();
    await page.getByRole('button', { name: 'Take Back gate' }).waitFor();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save mine to a file' }).click();
    const saved = await downloading;
    expect(saved.suggestedFilename()).toBe('cameras.json');
    const file = await saved.path();

    await page.reload();
    await settled(page);
    await choose();
    await page.getByRole('button', { name: 'Forget Back gate' }).click();
    await page.getByText('None yet.').waitFor();
    const read = async (files: Parameters<Page['setInputFiles']>[1]) => {
      const choosing = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Read a file' }).click();
      await (await choosing).setFiles(files);
    };
    await read({ name: 'none.json', mimeType: 'application/json', buffer: Buffer.from('{"devices": 3}') });
    await page.getByText('“none.json” cannot be read.').waitFor();
    await read(file);
    await page.getByRole('button', { name: 'Take Back gate' }).waitFor();
    await frames(page);
  }),
);
