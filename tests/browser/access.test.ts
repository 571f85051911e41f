import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, visiting } from './driver.ts';
import { model, openFile, row, select } from './gestures.ts';
import { schemes, violations } from './violations.ts';

test.for(schemes('light'))(
  'no fault of access: the demo plan, %s, with everything that may lie open',
  (colorScheme) =>
    visiting(async (open) => {
      const page = await open({ colorScheme });
      expect(await violations(page), 'the plan').toEqual([]);
      await select(page, 'C1');
      expect(await violations(page), 'a camera').toEqual([]);
      await select(page, 'House');
      expect(await violations(page), 'a structure').toEqual([]);
      await select(page, 'Door lamp');
      expect(await violations(page), 'a lamp').toEqual([]);
      await select(page, 'Night');
      await changing(page, () => page.getByRole('button', { name: 'Judge in these' }).click());
      expect(await violations(page), 'conditions, at night').toEqual([]);
      await changing(page, () => page.getByText('Face 1.6 m').click());
      await changing(page, () => page.getByLabel('Faces look').selectOption('place'));
      expect(await violations(page), 'faces that look to a place').toEqual([]);
      await page.getByRole('button', { name: 'North, and views' }).click();
      await page.getByRole('button', { name: 'Keys', exact: true }).click();
      await page.getByText('Other', { exact: true }).click();
      await page.getByRole('application').press('c');
      await page.getByRole('application').hover();
      await frames(page);
      expect(await violations(page), 'keys, views, a tool').toEqual([]);
    })(),
);

test(
  'no fault of access: faults, the ways in, an empty plan, a report',
  visiting(async (open) => {
    const page = await open();
    await openFile(page, { name: 'page.html', text: '<p>' });
    await page.getByRole('button', { name: 'Put away' }).waitFor();
    expect(await violations(page), 'a fault').toEqual([]);
    await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
    expect(await violations(page), 'an empty plan').toEqual([]);
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await page
      .getByRole('button', { name: /^Forget/ })
      .first()
      .waitFor();
    expect(await violations(page), 'the ways in').toEqual([]);
    await changing(page, () => openFile(page, 'tests/inputs/osm/bristol-terraces.geojson'));
    await page.getByRole('heading', { name: 'What was read' }).waitFor();
    expect(await violations(page), 'a report').toEqual([]);
  }),
);

test(
  'no fault of access on a phone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    expect(await violations(page), 'the plan').toEqual([]);
    await select(page, 'C1');
    await page.getByRole('button', { name: 'Settings' }).tap();
    await frames(page);
    expect(await violations(page), 'a camera').toEqual([]);
    await changing(page, async () => {
      await page.getByRole('button', { name: 'Open', exact: true }).tap();
      await page.getByRole('button', { name: 'New, empty plan' }).tap();
    });
    expect(await violations(page), 'an empty plan').toEqual([]);
  }),
);

/** Runs what the finder finds first. */
async function find(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Control+Enter');
  await page.getByRole('combobox', { name: /^Find/ }).fill(words);
  await page.getByRole('option').first().waitFor();
  await page.keyboard.press('Enter');
  await frames(page);
}

async function pointAt(page: Page, across: number, down: number, click: boolean): Promise<void> {
  const box = await model(page).boundingBox();
  if (!box) throw new Error('the Model is not in view');
  const [x, y] = [box.x + across * box.width, box.y + down * box.height];
  await page.mouse.move(x, y);
  if (click) await page.mouse.click(x, y);
  await frames(page);
}

test.for(schemes('dark'))('no fault of access while a site is drawn, %s', (colorScheme) =>
  visiting(async (open) => {
    const page = await open({ colorScheme });
    await model(page).press('f');
    await pointAt(page, 0.4, 0.7, true);
    await pointAt(page, 0.6, 0.75, false);
    expect(await page.getByRole('textbox', { name: 'Length' }).count()).toBe(1);
    expect(await violations(page), 'drawing, with its strip').toEqual([]);
    for (let k = 0; k < 3; k += 1) await page.keyboard.press('Escape');
    await select(page, 'House');
    const plates = page.getByRole('button', { name: /^Edge \d/ });
    await plates.first().waitFor();
    expect(await violations(page), 'selected, with plates').toEqual([]);
    await plates.first().click();
    await frames(page);
    expect(await violations(page), 'a plate, being typed into').toEqual([]);
    await page.keyboard.press('Escape');
    await row(page, 'Garage').click({ modifiers: ['Shift'] });
    await page.getByRole('heading', { name: '2 things' }).waitFor();
    expect(await violations(page), 'several selected').toEqual([]);
    await page.keyboard.press('Control+Enter');
    await page.getByRole('combobox', { name: /^Find/ }).fill('garage');
    await page.getByRole('option').first().waitFor();
    expect(await violations(page), 'the finder').toEqual([]);
    await page.keyboard.press('Escape');
    await model(page).press('Shift+F10');
    await page.getByRole('menu').waitFor();
    expect(await violations(page), 'the menu').toEqual([]);
    await page.keyboard.press('Escape');
    for (const [words, title] of [
      ['begin with a shape', 'Begin with a shape'],
      ['survey list', 'To measure on site'],
      ['versions', 'Versions'],
    ] as const) {
      await find(page, words);
      await page.getByRole('heading', { name: title }).waitFor();
      expect(await violations(page), `the sheet ${title}`).toEqual([]);
    }
    await changing(page, () => find(page, 'new, empty plan'));
    await page.getByRole('heading', { name: /^Start with the outline/ }).waitFor();
    expect(await violations(page), 'the first run').toEqual([]);
    await page.getByRole('button', { name: 'Build' }).click();
    await page.getByRole('menu').waitFor();
    expect(await violations(page), 'what can be built').toEqual([]);
  })(),
);

test(
  'no fault of access while a finger draws on a phone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    await changing(page, async () => {
      await page.getByRole('button', { name: 'Open', exact: true }).tap();
      await page.getByRole('button', { name: 'New, empty plan' }).tap();
    });
    await page.getByRole('button', { name: /^Draw an outline/ }).tap();
    await frames(page);
    const box = await model(page).boundingBox();
    if (!box) throw new Error('the Model is not in view');
    await page.touchscreen.tap(box.x + 0.5 * box.width, box.y + 0.3 * box.height);
    const bar = page.getByRole('toolbar', { name: 'Touch' });
    await bar.waitFor();
    expect(await violations(page), 'drawing').toEqual([]);
    await bar.getByRole('button', { name: 'Type' }).tap();
    await page.getByRole('group', { name: 'Type' }).waitFor();
    expect(await violations(page), 'the pad').toEqual([]);
  }),
);
