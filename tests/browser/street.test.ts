import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { ink } from '../../src/draw/ink.ts';
import { changing, frames, visiting } from './driver.ts';
import { field, model, openFile, redo, row, savedText, undo } from './gestures.ts';
import type { Spot } from './gestures.ts';
import { histogram, pictureOf } from './picture.ts';
import { assessed, planFrom } from './demo.ts';

const street = 'tests/inputs/osm/bristol-terraces.geojson';

/** Pixels of the ground that have a tone of any band. */
const toned = async (page: Page): Promise<number> => {
  const counts = histogram(await pictureOf(page));
  return ink.light.fourBands.reduce((sum, colour) => sum + (counts.get(colour) ?? 0), 0);
};

const strip = (page: Page) => page.getByRole('form', { name: 'What is being changed' }).getByRole('status');

/** Moves down from the middle of the Model until the camera tool has a wall under the pointer. */
async function wallSpot(page: Page): Promise<Spot> {
  const box = await model(page).boundingBox();
  if (box === null) throw new Error('the Model is not in view');
  const said: string[] = [];
  for (const [across, down] of [0.5, 0.45, 0.55, 0.4, 0.6].flatMap((x) =>
    [0.5, 0.54, 0.58, 0.62, 0.66].map((y) => [x, y] as const),
  )) {
    const spot = { x: box.x + box.width * across, y: box.y + box.height * down };
    await page.mouse.move(spot.x, spot.y);
    await frames(page);
    const text = await strip(page).innerText();
    if (text.startsWith('flat on the wall')) return spot;
    said.push(text);
  }
  throw new Error(`no wall was found: ${said.join(' | ')}`);
}

test(
  'a real street opens; a camera mounted on one of its walls covers ground, and one undo takes it away',
  visiting(async (open) => {
    const page = await open();
    await changing(page, () => openFile(page, street));

    const sheet = page.getByRole('complementary', { name: 'Setting sheet' });
    await sheet.getByRole('heading', { name: 'What was read' }).waitFor();
    expect(await sheet.getByRole('region', { name: 'Taken' }).innerText()).toMatch(/\b89 buildings\b/);
    for (const part of ['Left out', 'Assumed', 'Map data'])
      expect(
        await sheet.getByRole('region', { name: part }).getByRole('listitem').count(),
        `${part}`,
      ).toBeGreaterThan(0);
    const credit = '© OpenStreetMap contributors';
    expect(await page.getByRole('main').getByText(credit).count()).toBe(1);
    expect(await page.getByRole('treeitem').count()).toBe(90);
    expect(await toned(page)).toBe(0);

    // Its first building fills the window; then the tool finds a wall of it.
    await row(page, 'Building 6').click();
    await model(page).press('z');
    await frames(page);
    await model(page).press('c');
    const wall = await wallSpot(page);
    expect(await strip(page).innerText()).toMatch(/ up · .* from .* corner/);
    await changing(page, () => page.mouse.click(wall.x, wall.y));
    const inHand = await field(page, 'Pan').inputValue();
    await changing(page, () => page.mouse.move(wall.x + 40, wall.y + 110, { steps: 3 }));
    expect(await field(page, 'Pan').inputValue()).not.toBe(inHand);
    await page.mouse.click(wall.x + 40, wall.y + 110);
    await frames(page);

    expect(await row(page, 'C1').count()).toBe(1);
    expect(await page.getByRole('button', { name: 'Select and move' }).getAttribute('aria-pressed')).toBe(
      'true',
    );
    expect(await toned(page)).toBeGreaterThan(500);
    const text = await savedText(page);
    const plan = planFrom(text);
    const { mount } = plan.cameras['C1'] ?? {};
    expect(mount?.kind).toBe('flush');
    expect(Object.keys(plan.structures)).toContain(mount && 'host' in mount ? mount.host : null);
    expect(plan.credits.join()).toContain(credit);
    const [coverage] = assessed(plan).cameras;
    expect(coverage?.areas.byBand.reduce((sum, { value }) => sum + value, 0)).toBeGreaterThan(10);

    await undo(page);
    expect(await row(page, 'C1').count()).toBe(0);
    expect(await toned(page)).toBe(0);
    await redo(page);
    expect(await savedText(page)).toBe(text);
  }),
);

test(
  'Esc while aiming takes the camera back, and once more puts the tool down',
  visiting(async (open) => {
    const page = await open();
    const before = await savedText(page);
    await model(page).press('c');
    await changing(page, async () => {
      const wall = await wallSpot(page);
      await page.mouse.click(wall.x, wall.y);
    });
    expect(await row(page, 'C4').count()).toBe(1);
    await changing(page, () => page.keyboard.press('Escape'));
    expect(await row(page, 'C4').count()).toBe(0);
    await page.keyboard.press('Escape');
    await frames(page);
    expect(await page.getByRole('button', { name: 'Add a camera' }).getAttribute('aria-pressed')).toBe(
      'false',
    );
    expect(await savedText(page)).toBe(before);
  }),
);
