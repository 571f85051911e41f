import { expect, test } from 'vitest';
import { frames, settled, visiting } from './driver.ts';
import { A_PIXEL, F_PIXEL, play, savedPlan, SCRIPT, sheetNow, trace, type Counts } from './tenMinutes.ts';
import { expectTheHouse, onPicture } from './theHouse.ts';

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
