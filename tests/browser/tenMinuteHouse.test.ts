import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { frames, settled, changing, visiting } from './driver.ts';
import {
  A_PIXEL,
  F_PIXEL,
  PICTURE,
  play,
  playByKeys,
  savedPlan,
  SCRIPT,
  sheetNow,
  type Counts,
} from './tenMinutes.ts';
import { expectTheHouse, onPicture } from './theHouse.ts';

/** Opens a new plan and lays the picture to be traced; the press of Trace counts as a click, or as a key. */
async function trace(page: Page, counts: Counts, by: 'pointer' | 'keys' = 'pointer'): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    by === 'keys'
      ? page.getByRole('button', { name: /^Trace a drawing/ }).press('Enter')
      : page.getByRole('button', { name: /^Trace a drawing/ }).click(),
  ]);
  if (by === 'keys') counts.keys += 1;
  else counts.clicks += 1;
  await chooser.setFiles(PICTURE);
  await page
    .getByText(/Pick two points/)
    .first()
    .waitFor();
  await frames(page);
}

test(
  'the ten-minute house stands within 10 mm, by no more than 14 clicks and 136 keys; 25 undos empty the plan',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 1280, height: 720 } });
    const counts: Counts = { clicks: 0, keys: 0 };
    await trace(page, counts);
    await play(page, 'click A click F 12→', counts, { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) });
    for (const row of SCRIPT) await play(page, row, counts);
    process.stdout.write(`ten-minute house in the browser: ${counts.clicks} clicks, ${counts.keys} keys\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
    expect(counts.clicks).toBeLessThanOrEqual(14);
    expect(counts.keys).toBeLessThanOrEqual(136);

    await page.getByRole('application').focus();
    for (let step = 0; step < 25; step += 1) {
      expect(await page.getByRole('button', { name: /^Undo: / }).count(), `before undo ${step + 1}`).toBe(1);
      await page.keyboard.press('Control+z');
      await frames(page);
    }
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).count()).toBe(1);
    const emptied = await savedPlan(page);
    expect(emptied.structureOrder).toEqual([]);
    expect(emptied.pictureOrder).toEqual([]);
    expect(emptied.boundary).toBeNull();
    expect((await sheetNow(page)).sheet.width).toBeGreaterThan(100);
  }),
);

test(
  'the ten-minute house once more, by keys alone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 1280, height: 720 } });
    const counts: Counts = { clicks: 0, keys: 0 };
    await trace(page, counts, 'keys');
    const onIt = { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) };
    await playByKeys(page, 'click A click F 12→', counts, onIt);
    const [first, ...rest] = SCRIPT;
    // Nothing is drawn yet that A could be called by; the origin is where the picture's first point was put.
    await playByKeys(page, first, counts, { A: [0, 0] });
    for (const row of rest) await playByKeys(page, row, counts);
    process.stdout.write(`ten-minute house by keys alone: ${counts.keys} keys\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
    expect(counts.clicks).toBe(0);
  }),
);
