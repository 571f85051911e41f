import axe from 'axe-core';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { visiting } from './driver.ts';
import { select } from './gestures.ts';

test(
  'cautions about a camera are found at rest, ticked, shown in the Model, and go by limits that can be changed and undone',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C2');
    const list = page.locator('[data-cautions]');
    const settled = page.locator('[data-cautions]:not([data-cautions="looking"])');
    await settled.waitFor();
    const soon = { timeout: 30_000 };
    const rows = list.getByRole('listitem');
    const status = list.getByRole('status');
    // A stop first, and no more than five at once.
    await expect.poll(() => rows.count(), soon).toBe(5);
    expect(await rows.first().innerText()).toMatch(/^Look before you drill\n/);
    expect(await status.innerText()).toContain('The drill card is not ready: 1 not looked at.');

    await rows.first().getByRole('checkbox', { name: 'I have looked' }).check();
    await expect.poll(() => status.innerText(), soon).not.toContain('not ready');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => status.innerText(), soon).toContain('not ready');

    // The lens is 2.40 m above the ground: within reach below 2.50 m, and no more so below 2.30 m.
    const reach = rows.filter({ hasText: 'The lens is 2.40 m above the ground: within reach.' });
    await reach.getByRole('button', { name: 'Source and limit' }).click();
    expect(await reach.innerText()).toContain('Source: common practice, no source; IK10 is 20 J');
    const limit = reach.getByRole('textbox', { name: 'Within reach below' });
    expect(await limit.inputValue()).toBe('2.50');
    const faults = z.array(z.string());
    await page.evaluate(axe.source);
    const found = await page.evaluate(
      `axe.run('[data-cautions]', { resultTypes: ['violations'] }).then(({ violations }) => violations.map(({ id }) => id))`,
    );
    expect(faults.parse(found)).toEqual([]);
    await reach.getByRole('button', { name: 'Show in the Model' }).click();
    await page.getByText('Marked in the Model: The lens is 2.40 m above the ground').first().waitFor();
    expect(await reach.getByRole('button', { name: 'Take the mark away' }).getAttribute('aria-pressed')).toBe(
      'true',
    );
    await limit.fill('2.3');
    await limit.press('Enter');
    await expect.poll(() => reach.count(), soon).toBe(0);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => reach.count(), soon).toBe(1);

    const rest = list.getByRole('button', { name: /^Show the rest/ });
    await settled.waitFor();
    await rest.click();
    await expect.poll(() => rows.count(), soon).toBeGreaterThan(5);
    expect(await list.innerText()).toContain('Not told, since it is not given:');
  }),
);
