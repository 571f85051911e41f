import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { changing, frames, revisionOf, visiting } from './driver.ts';
import { field, model, row, savedText, select } from './gestures.ts';
import { demoText, planFrom } from './demo.ts';
import { planText } from '../../src/plan/write.ts';

const untouched = planText(planFrom(demoText));

/** What has the focus, by role or element and by name. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return 'nothing';
    const part = element.closest('[aria-label]:is(header, aside, main, nav, [role="toolbar"])');
    const name =
      element.getAttribute('aria-label') ??
      (element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : null) ??
      element.textContent.trim();
    return `${element.getAttribute('role') ?? element.tagName.toLowerCase()} ${name}, in ${part?.getAttribute('aria-label') ?? 'bar'}`;
  });

test(
  'Tab goes through bar, Site, Model and Setting sheet, and out again',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await page.getByRole('textbox', { name: 'Name of the plan' }).focus();
    const way: string[] = [];
    // One row of the tree is in the order, whichever is selected: the rest are reached by arrows.
    for (let stop = 0; stop < 60 && !(way.length > 3 && way[0] === (await focused(page))); stop += 1) {
      way.push(await focused(page));
      await page.keyboard.press('Tab');
    }
    const places = [
      /^input Name of the plan/,
      /^button Open/,
      /^treeitem C1, camera.*in Site$/,
      /^application Model of Kiln Cottage, C1 selected, in Model$/,
      /^button Add a camera/,
      /^input Tilt, in Setting sheet$/,
    ].map((wanted) => way.findIndex((stop) => wanted.test(stop)));
    expect(places, `${way.join('\n')}`).not.toContain(-1);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
    expect(way.filter((stop) => stop.startsWith('treeitem'))).toHaveLength(1);
    expect(way.at(-1)).not.toBe(way.at(-2));
  }),
);

test(
  'arrows walk the Site, letters find, Enter selects and goes to the Model',
  visiting(async (open) => {
    const page = await open();
    await row(page, 'House').focus();
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toMatch(/^treeitem Garage, building/);
    await page.keyboard.press('End');
    expect(await focused(page)).toMatch(/^treeitem Trees bare, van away, conditions/);
    await page.keyboard.press('Home');
    await page.keyboard.type('pe');
    expect(await focused(page)).toMatch(/^treeitem Pear tree/);
    await row(page, 'C1').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await frames(page);
    expect(await row(page, 'C2').getAttribute('aria-selected')).toBe('true');
    expect(await focused(page)).toMatch(/^application Model of Kiln Cottage, C2 selected/);

    // There the arrows slide it along its wall, .01 m a step; steps within a second are one.
    const distance = async () => Number(await field(page, 'From the east corner').inputValue());
    const before = await distance();
    await changing(page, () => page.keyboard.press('ArrowRight'));
    expect(Math.abs((await distance()) - before)).toBeCloseTo(0.01, 9);
    await changing(page, () => page.keyboard.press('Shift+ArrowLeft'));
    expect(Math.abs((await distance()) - before)).toBeCloseTo(0.09, 9);
    await page.keyboard.press('Escape');
    expect(await focused(page)).toMatch(/^application Model of Kiln Cottage, nothing selected/);
  }),
);

test(
  'undo and redo by keys, from a field as from the Model',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await changing(page, async () => {
      await field(page, 'Tilt').focus();
      // One after the other at once: a second apart they are two steps.
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('Shift+ArrowUp');
      await expect.poll(() => field(page, 'Tilt').inputValue()).toBe('27.1');
    });
    await changing(page, () => page.keyboard.press('Control+z'));
    expect(await savedText(page)).toBe(untouched);
    for (const again of ['Control+y', 'Control+Shift+z']) {
      await model(page).focus();
      await changing(page, () => page.keyboard.press(again));
      expect(await field(page, 'Tilt').inputValue()).toBe('27.1');
      await changing(page, () => page.keyboard.press('Control+z'));
    }
    // Nothing is left to undo; one more press does no harm.
    const revision = await revisionOf(page);
    await page.keyboard.press('Control+z');
    await frames(page);
    expect(await revisionOf(page)).toBe(revision);
    expect(await savedText(page)).toBe(untouched);
  }),
);

test(
  'letters act in the Model only',
  visiting(async (open) => {
    const page = await open();
    await page.getByRole('textbox', { name: 'Name of the plan' }).fill('Cpy');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('button', { name: 'Add a camera' }).getAttribute('aria-pressed')).toBe(
      'false',
    );
    expect(planFrom(await savedText(page)).name).toBe('Cpy');
    await changing(page, () => model(page).press('y'));
    expect(await page.getByRole('radio', { name: 'Plate 0.5 m' }).isChecked()).toBe(true);
    await select(page, 'C3');
    await changing(page, () => row(page, 'C3').press('Delete'));
    expect(await row(page, 'C3').count()).toBe(0);
  }),
);

test(
  'a camera is mounted and aimed by keys alone, and one undo takes it away',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'House');
    await model(page).press('c');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await changing(page, () => page.keyboard.press('Enter'));
    expect(await row(page, 'C4').count()).toBe(1);
    expect(await field(page, 'Tilt').inputValue()).toContain('20');
    const { mount } = planFrom(await savedText(page)).cameras['C4'] ?? {};
    expect(mount).toMatchObject({ kind: 'flush', host: 'house', height: 2.7 });
    await changing(page, () => page.keyboard.press('Control+z'));
    expect(await savedText(page)).toBe(untouched);
  }),
);
