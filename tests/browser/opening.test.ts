import { expect, test } from 'vitest';
import { visiting } from './driver.ts';
import { bandRows, figure, model, row } from './gestures.ts';
import { histogram, pictureOf } from './picture.ts';
import { assessed, demoText, isTenthOf, planFrom } from './demo.ts';
import { ink } from '../../src/draw/ink.ts';

const plan = planFrom(demoText);

test(
  'the app opens on the demo plan: Model, list of the Site, numbers',
  visiting(async (open) => {
    const page = await open();
    expect(await page.title()).toContain('Soffit');
    expect(await model(page).getAttribute('aria-label')).toBe('Model of Kiln Cottage, nothing selected');
    for (const { name } of [...Object.values(plan.structures), ...Object.values(plan.cameras)])
      expect(await row(page, name).count(), `${name}`).toBe(1);

    const { site, edition } = assessed(plan);
    const rows = await bandRows(page, 'Area by best band');
    expect([...rows.keys()]).toEqual(edition.bands.map(({ name }) => name).toReversed());
    edition.bands.forEach(({ name }, index) => {
      const [shown] = rows.get(name) ?? [];
      const area = site.byBand[index]?.value ?? -1;
      expect(isTenthOf(shown?.value, area), `${name}: ${shown?.value}, engine ${area}`).toBe(true);
    });
    const unseen = await figure(page, 'Seen by no camera');
    expect(isTenthOf(unseen?.value, site.unseen.value), `${unseen?.value}, engine ${site.unseen.value}`).toBe(
      true,
    );
  }),
);

test(
  'light and dark follow the system, on page and ground alike',
  visiting(async (open) => {
    const page = await open({ colorScheme: 'dark' });
    const dark = histogram(await pictureOf(page));
    const [, , recognise, identify] = ink.dark.fourBands;
    for (const colour of [recognise, identify, ink.dark.paper])
      expect(dark.get(colour ?? ''), `${colour}`).toBeGreaterThan(500);
    for (const colour of [...ink.light.fourBands, ink.light.paper])
      expect(dark.get(colour) ?? 0, `${colour}`).toBe(0);

    await page.getByRole('button', { name: 'Light theme' }).click();
    await page.getByRole('button', { name: 'Dark theme' }).waitFor();
    const light = histogram(await pictureOf(page));
    for (const colour of [ink.light.fourBands[2], ink.light.paper])
      expect(light.get(colour ?? ''), `${colour}`).toBeGreaterThan(500);
    for (const colour of ink.dark.fourBands) expect(light.get(colour) ?? 0, `${colour}`).toBe(0);

    // The choice outlives a reload, whatever the system says.
    await page.reload();
    await page.getByRole('button', { name: 'Dark theme' }).waitFor();
  }),
);
