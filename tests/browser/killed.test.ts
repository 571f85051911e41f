import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { chanceFrom, trials } from '../house/seeded.ts';
import { settled, visiting } from './driver.ts';
import { planFrom } from './demo.ts';
import { savedText, select } from './gestures.ts';

const KILLS = trials(1, 200);

/** Turns tilt and pan of C1 by turns, a step each, as fast as the page takes them, and tells how many are done. */
async function work(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const field = (label: string): HTMLInputElement => {
      const found = [...document.querySelectorAll<HTMLLabelElement>('label')].find(
        ({ textContent }) => textContent.trim() === label,
      );
      const input = found && document.getElementById(found.htmlFor);
      if (!(input instanceof HTMLInputElement)) throw new Error(`no field ${label}`);
      return input;
    };
    const done = Reflect.get(globalThis, 'done') as (count: number) => Promise<void>;
    for (let count = 1; ; count++) {
      const input = field(count % 2 === 1 ? 'Tilt' : 'Pan');
      input.focus();
      input.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowUp', bubbles: true, cancelable: true }));
      void done(count);
      // Other work of the page goes on between steps.
      await new Promise((resolve) => setTimeout(resolve, 3));
    }
  });
}

/** How many of the steps of `work` a plan holds, from what its camera was before. */
const stepsIn = (was: { tilt: number; pan: number }, now: { tilt: number; pan: number }): number =>
  Math.round((now.tilt - was.tilt) * 10) + Math.round((now.pan - was.pan) * 10);

test(
  `hardly a finished step is lost when a tab is killed at any moment, ${KILLS} times`,
  visiting(async (open) => {
    const first = await open();
    const context = first.context();
    const chance = chanceFrom(4_200);
    const counts = { told: 0 };
    await context.exposeFunction('done', (count: number) => {
      counts.told = count;
    });
    let page = first;
    let before = planFrom(await savedText(page)).cameras['C1'];
    let lost = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      if (!before) throw new Error('the sample has C1');
      counts.told = 0;
      await select(page, 'C1');
      const cdp = await context.newCDPSession(page);
      const crashed = page.waitForEvent('crash');
      work(page).catch(() => undefined);
      await expect.poll(() => counts.told, { timeout: 30_000, interval: 5 }).toBeGreaterThan(0);
      await new Promise((resolve) => setTimeout(resolve, chance.between(0, 400)));
      const told = counts.told;
      cdp.send('Page.crash').catch(() => undefined);
      await crashed;
      await page.close();
      page = await context.newPage();
      await page.goto('./');
      await settled(page);
      const after = planFrom(await savedText(page)).cameras['C1'];
      if (!after) throw new Error('C1 is gone');
      const kept = stepsIn(before, after);
      // Each step is written on the pad in its own task; what the dying process has not sent yet is the browser's to lose.
      expect(kept, `kill ${kill}: ${told} steps were told as done`).toBeGreaterThanOrEqual(told - 1);
      if (kept < told) lost += 1;
      // And history goes on where it ended.
      await page.getByRole('button', { name: /^Undo: / }).waitFor();
      before = after;
    }
    process.stdout.write(`${KILLS} tabs killed, ${lost} lost their very last step\n`);
    expect(lost).toBeLessThanOrEqual(Math.max(1, KILLS / 50));
  }),
);
