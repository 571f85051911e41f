import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, visiting } from './driver.ts';
import { model, row } from './gestures.ts';

const empty = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
};

const view = (page: Page): Promise<string | null> =>
  model(page).locator('canvas[data-view]').getAttribute('data-view');

test(
  'whoever begins is told the next step beside the work, takes presses through it, and can put it away',
  visiting(async (open) => {
    const page = await open();
    await empty(page);
    await model(page).press('p');
    await frames(page);
    const before = await view(page);
    await model(page).press('w');
    const box = await model(page).boundingBox();
    if (!box) throw new Error('the Model is not in view');
    await page.mouse.move(box.x + 0.4 * box.width, box.y + 0.6 * box.height);
    await page.mouse.click(box.x + 0.4 * box.width, box.y + 0.6 * box.height);
    await page.mouse.move(box.x + 0.5 * box.width, box.y + 0.58 * box.height);
    const next = page.getByText('Type a length, then an arrow for its direction. Or pick the next corner.');
    await expect.poll(() => next.last().isVisible()).toBe(true);
    const told = await next.last().boundingBox();
    if (!told) throw new Error('it is not in view');
    // Its words are no obstacle: what lies under them is the Model.
    expect(
      await page.evaluate(
        ([x = 0, y = 0]) => document.elementFromPoint(x, y)?.closest('[role="application"]') !== null,
        [told.x + told.width / 2, told.y + told.height / 2],
      ),
    ).toBe(true);
    await page.keyboard.type('8x6');
    await changing(page, () => page.keyboard.press('Enter'));
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.getByText('No camera yet. Press C, then point at a wall.').first().waitFor();
    // The first outline moves no view.
    expect(await view(page)).toBe(before);
    await page.getByRole('button', { name: 'Put the first steps away' }).click();
    await frames(page);
    expect(await page.getByRole('button', { name: 'Put the first steps away' }).count()).toBe(0);
  }),
);

test(
  'a shape that comes onto an empty board is shown whole',
  visiting(async (open) => {
    const page = await open();
    await empty(page);
    // A view that somebody chose is not fitted anew when the window's parts move.
    await model(page).press('p');
    await frames(page);
    const before = await view(page);
    await page.getByRole('button', { name: 'Begin with a shape' }).click();
    await changing(page, () => page.getByRole('button', { name: 'Put it on the board' }).click());
    await row(page, 'House').waitFor();
    await expect.poll(() => view(page)).not.toBe(before);
  }),
);
