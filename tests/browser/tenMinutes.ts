import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { Vec2 } from '../../src/base/vector.ts';
import { unpackPlan } from '../../src/exchange/planPack.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { meetLevel, sheetOf, type Sheet } from '../../src/view3d/sheet.ts';
import { frames } from './driver.ts';
import { model } from './gestures.ts';

/** The picture that is traced, and where A and F of the house are in it, px. */
export const PICTURE = fileURLToPath(new URL('../inputs/pictures/small-house.png', import.meta.url));
export const A_PIXEL: Vec2 = [130, 260];
export const F_PIXEL: Vec2 = [370, 260];

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
export async function spotOf(page: Page, [x, y]: Vec2): Promise<{ readonly x: number; readonly y: number }> {
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

/** The place of the ground under a place of the window. */
export async function groundAt(page: Page, spot: { readonly x: number; readonly y: number }): Promise<Vec2> {
  const { sheet, left, top } = await sheetNow(page);
  const point = meetLevel(sheet.rayFromSpot({ x: spot.x - left, y: spot.y - top }), 0);
  if (!point) throw new Error('no ground there');
  return [point[0], point[1]];
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
