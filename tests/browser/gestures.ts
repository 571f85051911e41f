import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { changing, frames } from './driver.ts';

/** A file for the chooser: a path, or a name and what it holds. */
export type Chosen = string | { readonly name: string; readonly text: string };

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export const model = (page: Page): Locator => page.getByRole('application');

/** The row of a thing in the Site. Rows are called by all that is said of them, the name first. */
export const row = (page: Page, name: string): Locator =>
  page.getByRole('tree', { name: 'Site' }).getByRole('treeitem', { name: new RegExp(`^${name} ?,`) });

/** Selects a thing in the Site, and waits for its sheet: the first of a window is fetched only then. */
export const select = async (page: Page, name: string): Promise<void> => {
  await row(page, name).click();
  await page.waitForFunction(() => {
    const title = document.querySelector('aside[aria-label="Setting sheet"] h2')?.textContent;
    return title !== undefined && title !== null && title !== 'Whole site';
  });
  await frames(page);
};

export const field = (page: Page, label: string): Locator =>
  page.getByRole('textbox', { name: label, exact: true });

/** Types into a field and takes it with Enter. */
export const typeField = (page: Page, label: string, text: string): Promise<void> =>
  changing(page, async () => {
    await field(page, label).fill(text);
    await field(page, label).press('Enter');
  });

export const undo = (page: Page): Promise<void> =>
  changing(page, () => page.keyboard.press('ControlOrMeta+z'));

export const redo = (page: Page): Promise<void> =>
  changing(page, () => page.keyboard.press('ControlOrMeta+y'));

const middle = async (thing: Locator): Promise<Spot> => {
  const box = await thing.boundingBox();
  if (box === null) throw new Error('it is not in view');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** Where the cross lies in which the selected camera's axis ends. The picture's signs have no roles. */
export const crossSpot = (page: Page): Promise<Spot> => middle(model(page).locator('.cross'));

/** Where a camera's disc lies in the Model. */
export const discSpot = (page: Page, name: string): Promise<Spot> =>
  middle(model(page).getByText(name, { exact: true }));

/** Where the body of the selected camera lies. */
export const bodySpot = (page: Page): Promise<Spot> =>
  middle(model(page).locator('[data-selected="true"] .body'));

/** Presses at one spot and moves to another in steps; the button stays down. */
export const pull = async (page: Page, from: Spot, by: Spot): Promise<void> => {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + by.x, from.y + by.y, { steps: 5 });
  await frames(page);
};

/** Drags the label of a field sideways, 4 px a step. */
export const dragLabel = async (page: Page, label: string, steps: number): Promise<void> => {
  const text = page.getByText(label, { exact: true });
  await text.scrollIntoViewIfNeeded();
  await pull(page, await middle(text), { x: 4 * steps, y: 0 });
};

/** Gives a file to the app's file chooser. */
export const openFile = async (page: Page, chosen: Chosen): Promise<void> => {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page
      .getByRole('button', { name: /^Open a street or a plan/ })
      .first()
      .click(),
  ]);
  await chooser.setFiles(
    typeof chosen === 'string'
      ? chosen
      : { name: chosen.name, mimeType: 'application/json', buffer: Buffer.from(chosen.text) },
  );
};

/** Opens a plan that is in order and waits for its coverage. */
export const openPlan = (page: Page, text: string): Promise<void> =>
  changing(page, () => openFile(page, { name: 'made.plan.json', text }));

/** The plan as the app saves it. */
export const savedText = async (page: Page): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
};

/** A figure with its bound: "57.3 ± 2.7", "0.0", "4.8", or about "≈ 4.8", which has none; null for a dash. */
export interface Shown {
  readonly value: number;
  readonly bound: number;
}

const shownIn = (text: string): Shown | null => {
  const found = /^(?:≈ )?(\d+\.\d+)(?: ± (\d+\.\d+))?(?: m²?)?$/.exec(text.replace(/\s+/g, ' ').trim());
  if (found === null) {
    if (text.trim() === '–') return null;
    throw new Error(`“${text}” is no figure`);
  }
  return { value: Number(found[1]), bound: Number(found[2] ?? 0) };
};

/** What stands in each row of a table of bands: area, then reach where the table has it. */
export const bandRows = async (
  page: Page,
  label: string,
): Promise<ReadonlyMap<string, readonly (Shown | null)[]>> => {
  const rows = await page
    .getByRole('table', { name: label })
    .locator('tbody tr')
    .evaluateAll((found) =>
      found.map((one) => ({
        name: one.querySelector('th')?.textContent ?? '',
        cells: [...one.querySelectorAll('td:not([aria-hidden])')].map(({ textContent }) => textContent),
      })),
    );
  return new Map(rows.map(({ name, cells }) => [name, cells.map(shownIn)]));
};

/** The figure beside a label of the sheet. */
export const figure = async (page: Page, label: string): Promise<Shown | null> =>
  shownIn(
    await page
      .getByRole('complementary', { name: 'Setting sheet' })
      .getByText(label, { exact: true })
      .locator('xpath=following-sibling::*[1]')
      .innerText(),
  );
