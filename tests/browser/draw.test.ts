import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Building } from '../../src/model/structure.ts';
import { changing, frames, settled, visiting } from './driver.ts';
import { model, row, savedText, select, undo } from './gestures.ts';
import { demoText, planFrom } from './demo.ts';
import { planText } from '../../src/plan/write.ts';

const untouched = planText(planFrom(demoText));

const strip = (page: Page): Locator => page.getByRole('form', { name: 'What is being changed' });

/** A new, empty plan seen from above. */
async function emptyYard(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await changing(page, () => page.getByRole('button', { name: 'New, empty plan' }).click());
  await model(page).press('p');
  await frames(page);
}

/** A place of the Model, as shares of its width and height. */
async function spot(
  page: Page,
  across: number,
  down: number,
): Promise<{ readonly x: number; readonly y: number }> {
  const box = await model(page).boundingBox();
  if (!box) throw new Error('the Model is not in view');
  return { x: box.x + across * box.width, y: box.y + down * box.height };
}

/** Presses keys one after the other: names of keys as they are, anything else letter by letter. */
async function keys(page: Page, ...all: readonly string[]): Promise<void> {
  for (const one of all) {
    if (/^(Arrow|Enter|Tab|Escape|Backspace|Space)/.test(one)) await page.keyboard.press(one);
    else await page.keyboard.type(one);
  }
  await frames(page);
}

/** The building last put into the plan. */
async function building(page: Page): Promise<Building> {
  const { structures, structureOrder } = planFrom(await savedText(page));
  const last = structures[structureOrder.at(-1) ?? ''];
  if (last?.kind !== 'building') throw new Error('no building was drawn');
  return last;
}

/** Corners as they lie from the first, to a millimetre. */
const fromFirst = ({ outline }: Building): readonly (readonly number[])[] => {
  const [first = [0, 0]] = outline;
  return outline.map(([x, y]) => [x - first[0], y - first[1]].map((part) => Math.round(part * 1000) / 1000));
};

test(
  'a house is drawn by one click and typed lengths with arrows; the rest is asked once it stands',
  visiting(async (open) => {
    const page = await open();
    await emptyYard(page);
    await model(page).press('w');
    const corner = await spot(page, 0.4, 0.6);
    await page.mouse.click(corner.x, corner.y);
    await keys(page, '4.2', 'ArrowRight', '1.6', 'ArrowDown', '4.8', 'ArrowRight', '1.6', 'ArrowUp');
    await keys(page, '3', 'ArrowRight', '7.2', 'ArrowUp', '12', 'ArrowLeft');
    // Each length stands beside its edge.
    expect(await model(page).locator('.sketchPlates span').allTextContents()).toContain('7.20');
    await changing(page, () => keys(page, 'Enter'));
    await changing(page, () => keys(page, '2.7', 'Enter'));
    expect(fromFirst(await building(page))).toEqual([
      [0, 0],
      [4.2, 0],
      [4.2, -1.6],
      [9, -1.6],
      [9, 0],
      [12, 0],
      [12, 7.2],
      [0, 7.2],
    ]);
    expect((await building(page)).height).toBe(2.7);

    // A press on a roof leads into its number, which Tab takes and goes on from.
    await changing(page, () => strip(page).getByText('Hip', { exact: true }).click());
    const field = strip(page).getByRole('textbox', { name: 'Pitch' });
    expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
    await changing(page, () => keys(page, '35', 'Tab'));
    await changing(page, () => keys(page, '.45', 'Enter'));
    expect(await model(page).evaluate((element) => element === document.activeElement)).toBe(true);
    expect((await building(page)).roof).toMatchObject({ kind: 'hip', pitch: 35, overhang: 0.45 });
  }),
);

test(
  'text that is no length stays, with words that describe the field; Esc gives the Model back',
  visiting(async (open) => {
    const page = await open();
    await emptyYard(page);
    await model(page).press('w');
    const corner = await spot(page, 0.4, 0.6);
    await page.mouse.click(corner.x, corner.y);
    await keys(page, '7x', 'Enter');
    const field = strip(page).getByRole('textbox').first();
    expect(await field.inputValue()).toBe('7x');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    const ids = (await field.getAttribute('aria-describedby')) ?? '';
    const words = await page.locator(`[id="${ids.split(' ').at(-1)}"]`).innerText();
    expect(words.length).toBeGreaterThan(5);
    await keys(page, 'Escape');
    expect(await field.getAttribute('aria-invalid')).toBe('false');
    expect(await model(page).evaluate((element) => element === document.activeElement)).toBe(true);
    // The chain stands: Backspace takes its only corner, then nothing is left to draw.
    await keys(page, 'Backspace');
    expect(await strip(page).innerText()).toContain('first corner');
  }),
);

test(
  'the keyboard alone draws a house: arrows move the cursor over the grid, Space presses, a drawn rectangle stands',
  visiting(async (open) => {
    const page = await open();
    await emptyYard(page);
    await keys(page, 'w', 'ArrowRight');
    const cursor = model(page).locator('[data-sign="cursor"]');
    expect(await cursor.count()).toBe(1);
    const place = () => cursor.evaluate((mark) => mark.getAttribute('transform'));
    const first = await place();
    await keys(page, 'ArrowRight');
    expect(await place()).not.toBe(first);
    await keys(page, 'ArrowLeft');
    expect(await place()).toBe(first);
    await keys(page, 'Space', '3.2x6');
    await changing(page, () => page.keyboard.press('Enter'));
    await changing(page, () => keys(page, '2.4', 'Enter'));
    expect(fromFirst(await building(page))).toEqual([
      [0, 0],
      [3.2, 0],
      [3.2, 6],
      [0, 6],
    ]);
    // The pointer takes over as it moves.
    const middle = await spot(page, 0.5, 0.5);
    await page.mouse.move(middle.x, middle.y);
    await frames(page);
    expect(await cursor.count()).toBe(0);
    await undo(page);
    await undo(page);
    expect(planFrom(await savedText(page)).structureOrder).toEqual([]);
  }),
);

test(
  'a point turns the view at rest, and begins a number with a tool in hand; a tool’s letter is its own only there',
  visiting(async (open) => {
    const page = await open();
    const bearing = () =>
      page.locator('button[aria-label="North, and views"] g').first().getAttribute('transform');
    const before = await bearing();
    await model(page).press('.');
    await frames(page);
    expect(await bearing()).not.toBe(before);
    await model(page).press('p');
    await keys(page, 'w');
    const turned = await bearing();
    const corner = await spot(page, 0.35, 0.8);
    await page.mouse.click(corner.x, corner.y);
    await keys(page, '.5');
    expect(await bearing()).toBe(turned);
    expect(await strip(page).getByRole('textbox').first().inputValue()).toBe('.5');
    await keys(page, 'm');
    expect(await strip(page).getByRole('textbox').first().inputValue()).toBe('.5m');
    expect(await page.getByRole('button', { name: 'Measure' }).getAttribute('aria-pressed')).toBe('false');
  }),
);

test(
  'a corner’s handle is dragged in the plan; the others are out of the way meanwhile; one undo takes it back',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'Garage');
    await model(page).press('p');
    await model(page).press('z');
    await frames(page);
    const handles = model(page).locator('.grip');
    expect(await handles.count()).toBeGreaterThan(5);
    const handle = model(page).locator('[data-grip="Corner 1 of Garage"]');
    const box = await handle.boundingBox();
    if (!box) throw new Error('there is no handle');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await frames(page);
    expect(
      await model(page)
        .locator('canvas')
        .first()
        .evaluate((canvas) => canvas.style.cursor),
    ).toBe('move');
    await page.mouse.down();
    await page.mouse.move(x - 20, y + 15, { steps: 4 });
    await frames(page);
    expect(await handles.count()).toBe(1);
    expect(await handles.getAttribute('data-held')).toBe('true');
    await page.mouse.up();
    await settled(page);
    const before = planFrom(demoText).structures['garage'];
    const after = planFrom(await savedText(page)).structures['garage'];
    if (before?.kind !== 'building' || after?.kind !== 'building') throw new Error('no garage');
    expect(after.outline[0]?.[0]).toBeLessThan(before.outline[0]?.[0] ?? 0);
    expect(after.outline.slice(1)).toEqual(before.outline.slice(1));
    await undo(page);
    expect(await savedText(page)).toBe(untouched);
  }),
);

test(
  'a dimension is typed where it stands: Enter takes it, Esc restores, Tab goes on, wrong text stays with words',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'Garage');
    await model(page).press('p');
    await model(page).press('z');
    await frames(page);
    const plate = page.locator('[data-dimension="edge 0"]');
    const before = await plate.getByRole('button').innerText();
    await plate.getByRole('button').click();
    await keys(page, '4.25');
    await changing(page, () => page.keyboard.press('Enter'));
    expect(await plate.getByRole('button').innerText()).toBe('4.25 m');
    expect(await model(page).evaluate((element) => element === document.activeElement)).toBe(true);

    await plate.getByRole('button').click();
    await keys(page, '99', 'Escape');
    expect(await plate.getByRole('button').innerText()).toBe('4.25 m');

    await plate.getByRole('button').click();
    await keys(page, 'wide', 'Enter');
    expect(await plate.getByRole('alert').innerText()).toContain('not a length');
    expect(await plate.getByRole('textbox').inputValue()).toBe('wide');
    await keys(page, 'Escape');

    await plate.getByRole('button').click();
    await keys(page, 'Tab');
    const next = page.locator('[data-dimension="edge 1"] input');
    expect(await next.evaluate((element) => element === document.activeElement)).toBe(true);
    await keys(page, 'Escape');
    await undo(page);
    expect(await plate.getByRole('button').innerText()).toBe(before);
    expect(await savedText(page)).toBe(untouched);
  }),
);

test(
  'the right button and Shift+F10 open the menu of what is there; Esc gives the Model back; its acts act',
  visiting(async (open) => {
    const page = await open();
    await model(page).press('p');
    await frames(page);
    const middle = await spot(page, 0.5, 0.45);
    await page.mouse.click(middle.x, middle.y, { button: 'right' });
    const menu = page.getByRole('menu', { name: 'House' });
    await menu.waitFor();
    expect(
      await menu
        .getByRole('menuitem')
        .first()
        .evaluate((one) => one === document.activeElement),
    ).toBe(true);
    await page.keyboard.press('Escape');
    expect(await menu.count()).toBe(0);
    expect(await model(page).evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await savedText(page)).toBe(untouched);
    await model(page).focus();
    await page.mouse.move(middle.x, middle.y);
    await page.keyboard.press('Shift+F10');
    await menu.waitFor();
    await changing(page, () => menu.getByRole('menuitem', { name: /^Hide/ }).click());
    expect(planFrom(await savedText(page)).structures['house']?.hidden).toBe(true);
    expect(await row(page, 'House').getAttribute('aria-selected')).toBe('true');
  }),
);
