import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, settled, visiting } from './driver.ts';
import { model, row, savedText, select } from './gestures.ts';
import { planFrom } from './demo.ts';

const notice = (page: Page, text: string) => page.getByRole('main').getByText(text).first();

/** A new, empty plan seen from above. */
async function emptyYard(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
  await model(page).press('p');
  await frames(page);
}

const count = async (page: Page): Promise<number> => planFrom(await savedText(page)).structureOrder.length;

test(
  'Ctrl+C, X and V carry a thing by the clipboard from one plan into another; F2 goes to its name, all of it marked',
  visiting(async (open) => {
    const page = await open();
    const before = await count(page);
    await select(page, 'Van');
    await page.keyboard.press('F2');
    const name = page.getByRole('textbox', { name: 'Name', exact: true });
    await expect.poll(() => name.evaluate((field) => field === document.activeElement)).toBe(true);
    expect(
      await name.evaluate((field: HTMLInputElement) => [field.selectionStart, field.selectionEnd]),
    ).toEqual([0, 3]);
    // In a text the keys are the text's.
    await page.keyboard.press('ControlOrMeta+x');
    await page.keyboard.press('Escape');
    expect(await count(page)).toBe(before);

    await row(page, 'Van').focus();
    await page.keyboard.press('ControlOrMeta+c');
    await notice(page, 'Van: copied.').waitFor();
    await emptyYard(page);
    await model(page).focus();
    await changing(page, () => page.keyboard.press('ControlOrMeta+v'));
    await row(page, 'Van').waitFor();
    expect(await count(page)).toBe(1);
    await changing(page, () => page.keyboard.press('ControlOrMeta+x'));
    expect(await count(page)).toBe(0);
  }),
);

test(
  'corners that stand when the tab is killed are back in hand when it is opened anew, and close to a house',
  visiting(async (open) => {
    const first = await open();
    await emptyYard(first);
    await model(first).press('w');
    const box = await model(first).boundingBox();
    if (!box) throw new Error('the Model is not in view');
    await first.mouse.move(box.x + 0.5 * box.width, box.y + 0.5 * box.height);
    await first.mouse.click(box.x + 0.5 * box.width, box.y + 0.5 * box.height);
    await first.keyboard.type('4.2');
    await first.keyboard.press('ArrowRight');
    await first.keyboard.type('3');
    await first.keyboard.press('ArrowUp');
    await frames(first);
    const context = first.context();
    const cdp = await context.newCDPSession(first);
    const crashed = first.waitForEvent('crash');
    cdp.send('Page.crash').catch(() => undefined);
    await crashed;

    const page = await context.newPage();
    await page.goto('./');
    await settled(page);
    await notice(page, 'Your outline of 3 corners is back in hand.').waitFor();
    await model(page).focus();
    await changing(page, () => page.keyboard.press('Enter'));
    const { structures } = planFrom(await savedText(page));
    const [house] = Object.values(structures);
    const [a = [0, 0], b = [0, 0], c = [0, 0]] = house?.kind === 'building' ? house.outline : [];
    expect(b[0] - a[0]).toBeCloseTo(4.2, 6);
    expect(c[1] - b[1]).toBeCloseTo(3, 6);
  }),
);
