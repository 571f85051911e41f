import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { Vec2 } from '../../src/base/vector.ts';
import { unpackPlan } from '../../src/exchange/planPack.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { sheetOf, type Sheet } from '../../src/view3d/sheet.ts';
import { changing, frames } from './driver.ts';
import { model } from './gestures.ts';

/** The picture that is traced, and where A and F of the house are in it, px. */
export const PICTURE = fileURLToPath(new URL('../inputs/pictures/small-house.png', import.meta.url));
export const A_PIXEL: Vec2 = [150, 250];
export const F_PIXEL: Vec2 = [350, 250];

/** The rows of the gestures' table, section 11, from the outline on. */
export const SCRIPT = [
  'click A 4.2→ 1.6↓ 4.8→ 1.6↑ 3→ 7.2↑ 12← Enter 2.7 Enter',
  'click Hip 35 Tab .45 Enter',
  'BB click E 2.4x-1.4 Enter 2.5 Enter',
  'W hover F 1→ .5↓ Space 3.2x6 Enter 2.4 Enter',
  'G hover A 6← 8↓ Space 26x20 Enter',
  'F click SW click NW click NE click SE Enter 1.8 Enter',
  'FFF click SW 19→ Enter 1.6 Enter',
  'O click hedge 11 Tab 1.2 Enter',
  'W hover A 8← 1↓ Space -7x9 Enter 5 Enter click Gable',
  'W hover SE 2→ 7↑ Space 8x8 Enter 5.4 Enter click Hip',
] as const;

export const PLACES: Readonly<Record<string, Vec2>> = {
  A: [0, 0],
  E: [9, 0],
  F: [12, 0],
  SW: [-6, -8],
  NW: [-6, 12],
  NE: [20, 12],
  SE: [20, -8],
  hedge: [2.3, -8],
};

/** How the site lies on the window now. */
export async function sheetNow(
  page: Page,
): Promise<{ readonly sheet: Sheet; readonly left: number; readonly top: number }> {
  const canvas = model(page).locator('canvas[data-view]');
  const [told, box] = [await canvas.getAttribute('data-view'), await canvas.boundingBox()];
  const [x, y, z, bearing, elevation, distance] = (told ?? '').split(' ').map(Number);
  if (!box || x === undefined || y === undefined || z === undefined || distance === undefined)
    throw new Error('the Model tells no view');
  const orbit = { pivot: [x, y, z] as const, bearing: bearing ?? 0, elevation: elevation ?? 0, distance };
  return { sheet: sheetOf(orbit, box.width, box.height), left: box.x, top: box.y };
}

/** Where a place of the ground is on the window; moves away from the Model until it is well in view. */
async function spotOf(page: Page, [x, y]: Vec2): Promise<{ readonly x: number; readonly y: number }> {
  for (let turns = 0; turns < 20; turns += 1) {
    const { sheet, left, top } = await sheetNow(page);
    const spot = sheet.spotFromSite([x, y, 0]);
    // Tools, plates and the strip lie along the edges.
    const isIn =
      spot !== null && spot.x > 110 && spot.x < sheet.width - 60 && spot.y > 90 && spot.y < sheet.height - 90;
    if (spot && isIn) return { x: left + spot.x, y: top + spot.y };
    await page.mouse.move(left + sheet.width / 2, top + sheet.height / 2);
    await page.mouse.wheel(0, 120);
    await frames(page);
  }
  throw new Error(`${x}, ${y} does not come into view`);
}

const ARROWS: Readonly<Record<string, string>> = {
  '→': 'ArrowRight',
  '←': 'ArrowLeft',
  '↑': 'ArrowUp',
  '↓': 'ArrowDown',
};

/** Clicks and keys as the table counts them: hovers are not counted. */
export interface Counts {
  clicks: number;
  keys: number;
}

/** Plays a row with mouse and keys. */
export async function play(page: Page, script: string, counts: Counts, places = PLACES): Promise<void> {
  const press = async (key: string) => {
    counts.keys += 1;
    await page.keyboard.press(key);
    await frames(page);
  };
  const words = script.split(' ');
  for (let k = 0; k < words.length; k += 1) {
    const word = words[k] ?? '';
    if (word === 'click' || word === 'hover') {
      const name = words[(k += 1)] ?? '';
      if (word === 'click') counts.clicks += 1;
      const place = places[name];
      if (!place) {
        await page
          .getByRole('form', { name: 'What is being changed' })
          .getByText(name, { exact: true })
          .click();
      } else {
        const spot = await spotOf(page, place);
        await page.mouse.move(spot.x + 3, spot.y + 2);
        await frames(page);
        if (word === 'click') await page.mouse.click(spot.x + 3, spot.y + 2);
      }
      await frames(page);
    } else if (word === 'Enter' || word === 'Tab' || word === 'Space') await press(word);
    else
      for (const letter of word) {
        const arrow = ARROWS[letter];
        await press(arrow ?? (/[A-Z]/.test(letter) ? letter.toLowerCase() : letter));
      }
  }
}

/** Where the keyboard's cursor stands on the site. */
async function cursorNow(page: Page): Promise<Vec2> {
  const told = await model(page).locator('canvas[data-view]').getAttribute('data-cursor');
  const [x, y] = (told ?? '').split(' ').map(Number);
  if (x === undefined || y === undefined) throw new Error('there is no cursor');
  return [x, y];
}

/** Moves the cursor by arrows to a place of the grid, ten steps at a time and then one by one. */
async function walkTo(page: Page, to: Vec2, counts: Counts): Promise<void> {
  const press = async (key: string) => {
    counts.keys += 1;
    await page.keyboard.press(key);
    await frames(page);
  };
  // The first press brings it onto the grid, the second tells how wide the grid is.
  await press('ArrowRight');
  const from = await cursorNow(page);
  await press('ArrowRight');
  const at = await cursorNow(page);
  const step = at[0] - from[0];
  for (const axis of [0, 1] as const) {
    const steps = Math.round((to[axis] - at[axis]) / step);
    const key = axis === 0 ? (steps > 0 ? 'ArrowRight' : 'ArrowLeft') : steps > 0 ? 'ArrowUp' : 'ArrowDown';
    for (let k = 0; k < Math.floor(Math.abs(steps) / 10); k += 1) await press(`Shift+${key}`);
    for (let k = 0; k < Math.abs(steps) % 10; k += 1) await press(key);
  }
  const [x, y] = await cursorNow(page);
  if (Math.hypot(x - to[0], y - to[1]) > 0.001)
    throw new Error(`the cursor stands at ${x}, ${y} instead of ${to.join(', ')}, on a grid of ${step}`);
}

/** What the finder calls the places of the table. */
const CALLED: Readonly<Record<string, string>> = {
  A: 'go to house corner 1',
  E: 'go to house corner 5',
  F: 'go to house corner 6',
  SW: 'go to site boundary corner 1',
  SE: 'go to site boundary corner 2',
  NE: 'go to site boundary corner 3',
  NW: 'go to site boundary corner 4',
  hedge: 'go to hedge corner 2',
};

/** Plays a row by keys alone: places by the finder or, on the picture, by arrows; choices by Tab and arrows. */
export async function playByKeys(
  page: Page,
  script: string,
  counts: Counts,
  onPicture: Readonly<Record<string, Vec2>> = {},
): Promise<void> {
  const press = async (key: string) => {
    counts.keys += 1;
    await page.keyboard.press(key);
    await frames(page);
  };
  const go = async (name: string) => {
    const picture = onPicture[name];
    if (picture) return walkTo(page, picture, counts);
    await press('Control+Enter');
    await page.locator('[role="combobox"]:focus').waitFor();
    await page.keyboard.type(CALLED[name] ?? name);
    counts.keys += (CALLED[name] ?? name).length;
    await page.getByRole('option').first().waitFor();
    await press('Enter');
  };
  const choose = async (name: string) => {
    const radios = page.getByRole('form', { name: 'What is being changed' }).getByRole('radio');
    for (let tabs = 0; tabs < 6; tabs += 1) {
      if (await radios.evaluateAll((all) => all.some((one) => one === document.activeElement))) break;
      await press('Tab');
    }
    for (let arrows = 0; arrows < 6; arrows += 1) {
      if (await page.getByRole('radio', { name, exact: true }).isChecked()) return;
      await press('ArrowRight');
    }
    throw new Error(`${name} is not chosen`);
  };
  const words = script.split(' ');
  for (let k = 0; k < words.length; k += 1) {
    const word = words[k] ?? '';
    if (word === 'click' || word === 'hover') {
      const name = words[(k += 1)] ?? '';
      if (word === 'click' && CALLED[name] === undefined) await choose(name);
      else {
        await go(name);
        if (word === 'click') await press('Space');
      }
    } else if (word === 'Enter' || word === 'Tab' || word === 'Space') await press(word);
    else
      for (const letter of word)
        await press(ARROWS[letter] ?? (/[A-Z]/.test(letter) ? letter.toLowerCase() : letter));
  }
}

/** The plan in a file that was saved, alone or with its pictures. */
export async function savedPlan(page: Page): Promise<Plan> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const bytes = new Uint8Array(await readFile(await download.path()));
  const unpacked = unpackPlan('saved', bytes);
  const read = readPlan(unpacked.ok ? unpacked.value.text : new TextDecoder().decode(bytes));
  if (!read.ok) throw new Error(`what was saved is no plan: ${read.faults.map(({ code }) => code).join()}`);
  return read.value;
}

/** Opens a new plan and lays the picture to be traced; the press of Trace counts as a click, or as a key. */
export async function trace(page: Page, counts: Counts, by: 'pointer' | 'keys' = 'pointer'): Promise<void> {
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
