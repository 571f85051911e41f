import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { changing, visiting } from './driver.ts';
import { bandRows, model, select, typeField } from './gestures.ts';
import { difference, pictureOf } from './picture.ts';
import { soffitJson } from '../cli/ran.ts';
import { z } from 'zod';

const cover = z.object({
  cameras: z.array(z.object({ byBand: z.array(z.object({ band: z.string(), value: z.number() })) })),
});

const choose = (page: Page, conditions: string): Promise<void> =>
  changing(page, () => page.getByLabel('Conditions').selectOption({ label: conditions }));

const areas = async (page: Page): Promise<(number | undefined)[]> =>
  [...(await bandRows(page, 'Area and reach by band')).values()].map(([area]) => area?.value);

test(
  'night shows what is too dark, in the numbers and on the ground, and day takes it away',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    const day = await pictureOf(page);
    expect(await page.getByText('Too dark').count()).toBe(0);
    await choose(page, 'Night');
    await typeField(page, 'Infrared to', '5');
    expect(await page.getByRole('listitem').filter({ hasText: 'Too dark' }).count()).toBeGreaterThan(1);
    expect(difference(day, await pictureOf(page))).toBeGreaterThan(1000);
    await choose(page, 'As drawn');
    expect(await page.getByText('Too dark').count()).toBe(0);
  }),
);

test(
  'a wall is asked for from its structure, painted where it stands, and its areas are those of the command line',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'House');
    const ground = await pictureOf(page);
    await changing(page, () => page.getByRole('button', { name: 'South wall', exact: true }).click());
    expect(difference(ground, await pictureOf(page))).toBeGreaterThan(1000);
    await expect.poll(() => page.getByText('House, south wall').count()).toBeGreaterThan(0);
    await select(page, 'C1');
    const told = cover.parse(
      soffitJson('cover', 'shared/plans/demo.plan.json', '--camera', 'C1', '--surface', 'house/wall/0'),
    );
    const bands = told.cameras[0]?.byBand.toReversed() ?? [];
    (await areas(page)).forEach((area, at) => {
      const exact = bands[at]?.value ?? Number.NaN;
      expect(Math.abs((area ?? Number.NaN) - exact), `${bands[at]?.band}`).toBeLessThan(0.06);
    });
    await changing(page, () => page.getByText('Ground', { exact: true }).last().click());
    expect(await model(page).count()).toBe(1);
  }),
);

test(
  'a face that looks one way counts for less where the camera is beside it',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'C1');
    await changing(page, () => page.getByText('Face 1.6 m', { exact: true }).click());
    const any = await areas(page);
    await changing(page, () => page.getByRole('button', { name: 'Looks anywhere' }).click());
    const [identify] = await areas(page);
    expect(identify).toBeLessThan(any[0] ?? Number.NaN);
    await expect.poll(() => page.getByText('Face seen from the side').count()).toBe(1);
  }),
);
