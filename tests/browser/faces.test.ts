import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { ink } from '../../src/draw/ink.ts';
import type { Target } from '../../src/coverage/target.ts';
import { chanceFrom } from '../house/seeded.ts';
import { nearestBlocker } from '../oracle/bruteCaster.ts';
import { numericalDensity } from '../oracle/numericalDensity.ts';
import { rawTriangles } from '../oracle/rawTriangles.ts';
import { assessed, demoText, isTenthOf, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { bandRows, model, select } from './gestures.ts';
import { pictureOf, pixelAt } from './picture.ts';

const demo = planFrom(demoText);
const SOUTH: Target = { kind: 'surface', height: 0, surface: { of: 'wall', structure: 'house', face: 0 } };
const bands: readonly string[] = ink.light.fourBands;

/** What the app says of the spot under the pointer. */
async function saidOn(page: Page, x: number, y: number) {
  await page.mouse.move(x, y);
  await frames(page);
  const card = page.getByRole('region', { name: 'What is here' });
  if ((await card.count()) === 0) return null;
  const text = (await card.innerText()).replaceAll('−', '-').replace(/\s+/g, ' ');
  const place = /(-?[\d.]+) east, (-?[\d.]+) north, (-?[\d.]+) up/.exec(text);
  const best = /^(\w+) (\w+), (\d+) px\/m, (\d+) px\/m across the face/.exec(text);
  if (place === null) return null;
  const [, east, north, up] = place.map(Number);
  return {
    point: [east ?? 0, (north ?? 0) - 1e-4, up ?? 0] as const,
    best: best && { camera: best[1], word: best[2], density: Number(best[3]), across: Number(best[4]) },
  };
}

test(
  'a wall is asked for in its structure’s sheet, painted where it stands, and its numbers are its own',
  visiting(async (open) => {
    const page = await open();
    const assessment = assessed(demo, SOUTH);
    await select(page, 'House');
    await changing(page, () => page.getByRole('button', { name: 'South wall', exact: true }).click());
    await page.getByText('House, south wall').first().waitFor();
    await select(page, 'C1');
    const rows = [...(await bandRows(page, 'Area by band')).values()];
    const coverage = assessment.cameras.find(({ camera }) => camera.id === 'C1');
    expect(rows).toHaveLength(4);
    coverage?.areas.byBand.toReversed().forEach(({ value }, at) => {
      expect(isTenthOf(rows[at]?.[0]?.value, value), `${rows[at]?.[0]?.value}, engine ${value}`).toBe(true);
    });

    const picture = await pictureOf(page);
    const box = await model(page).boundingBox();
    if (box === null) throw new Error('the Model is not in view');
    const all = rawTriangles(assessment.scene.solids);
    const chance = chanceFrom(1790);
    const met = [0, 0, 0, 0];
    for (let shot = 0; shot < 30_000 && met.reduce((sum, count) => sum + count, 0) < 24; shot += 1) {
      const [x, y] = [chance.whole(0, picture.width - 1) + 0.5, chance.whole(0, picture.height - 1) + 0.5];
      const band = bands.indexOf(pixelAt(picture, x, y));
      if (band < 0 || (met[band] ?? 0) >= 12) continue;
      const said = await saidOn(page, box.x + x, box.y + y);
      // Nothing but the wall has a band's tone; what stands before it may be under the very pointer.
      if (said === null) continue;
      met[band] = (met[band] ?? 0) + 1;
      const { point, best } = said;
      expect(best?.word, `${point.join()}`).toBe(assessment.edition.bands[band]?.name.toLowerCase());
      const camera = assessment.scene.cameras.find(({ name }) => name === best?.camera);
      if (!camera || !best) throw new Error('no camera is named');
      expect(nearestBlocker(all, camera.eye, point)).toBeNull();
      const [dx, dy] = [point[0] - camera.eye[0], point[1] - camera.eye[1]];
      const over = Math.hypot(dx, dy);
      const density = numericalDensity(camera, [...point], [dy / over, -dx / over, 0]);
      const across = numericalDensity(camera, [...point], [1, 0, 0]);
      // The place is told to a centimetre and the figures to whole numbers.
      expect(Math.abs(best.density - density)).toBeLessThan(0.5 + density / 50);
      expect(Math.abs(best.across - across)).toBeLessThan(0.5 + across / 50);
    }
    expect(met[3], 'identify').toBeGreaterThan(3);
    expect(met[2], 'recognise').toBeGreaterThan(1);
  }),
);

test(
  'Shift E asks for the wall pointed at, Esc goes back to the ground',
  visiting(async (open) => {
    const page = await open();
    await model(page).press('p');
    await frames(page);
    const box = await model(page).boundingBox();
    if (box === null) throw new Error('the Model is not in view');
    await model(page).focus();
    await page.mouse.move(box.x + box.width / 2, box.y + 6);
    await page.keyboard.press('Shift+E');
    await page.getByText('Point at a wall or a roof').first().waitFor();
    // From above, the roof lies under the middle of the picture.
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 - 40);
    await changing(page, () => page.keyboard.press('Shift+E'));
    await page
      .getByText(/^House, (north|south) roof slope$/)
      .first()
      .waitFor();
    await changing(page, async () => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
    });
    expect(await page.getByText('Ground, 0.00 m').count()).toBe(1);
  }),
);
